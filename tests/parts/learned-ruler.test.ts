/** What a step does by the layout and as it was learned, on one ruler: each at its place, with twice its deviation either way. */
import { expect, it } from 'vitest';
import { LearnedRuler } from '../../app/parts/learned-ruler.tsx';
import { markup } from './markup.ts';

const format = (degrees: number): string => degrees.toFixed(2);
const at = (drawn: string, pattern: RegExp): number => Number.parseFloat(pattern.exec(drawn)?.[1] ?? 'nowhere');

it('has the layout’s mark and the learned one in their proportion from 0', () => {
  const entered = { by: 0.4, deviation: 0.05 };
  const learned = { by: 0.6, deviation: 0.01 };
  const drawn = markup(LearnedRuler({ entered, learned, format }));
  expect(drawn).toContain('learned 0.60 ± 0.02, the layout said 0.40 ± 0.10');
  const zero = at(drawn, /class="ruler-end" x1="([^"]+)%"/);
  const was = at(drawn, /class="ruler-found" cx="([^"]+)%"/);
  const is = at(drawn, /<svg x="([^"]+)%"/);
  expect((is - zero) / (was - zero)).toBeCloseTo(1.5, 2);
  const [from, to] = [/learned-ruler-before" x1="([^"]+)%"/, /learned-ruler-before" x1="[^"]+" x2="([^"]+)%"/].map(
    (one) => at(drawn, one),
  );
  expect((to! - from!) / (was - zero)).toBeCloseTo(0.5, 2);
});
