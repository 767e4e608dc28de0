import * as v from 'valibot';
import { base, number, positive, range, text } from './fields.ts';
import type { AdjusterKind } from './kind.ts';
import { multiples, say, within } from './steps.ts';

const schema = v.object({
  ...base('threaded-rod'),
  links: v.pipe(
    v.array(text('the name of a point on the body'), 'a list of links, named by their inner point'),
    v.minLength(1, 'at least one link, named by its inner point'),
    v.maxLength(5, 'up to five links'),
    v.readonly(),
  ),
  lead: positive(20, 'mm a turn'),
  stepTurns: positive(10, 'turns'),
  range: range(60, 'turns'),
  reference: number(-60, 60, 'turns'),
});

const FLATS = 6;

/** "1 turn 2 flats", as hands count on a six-sided nut. */
export function turnsAndFlats(turns: number): string {
  let whole = Math.floor(Math.abs(turns) + 1e-9);
  let flats = Math.round((Math.abs(turns) - whole) * FLATS * 100) / 100;
  if (flats >= FLATS) {
    whole += 1;
    flats = 0;
  }
  const words: string[] = [];
  if (whole > 0 || flats === 0) words.push(`${whole} turn${whole === 1 ? '' : 's'}`);
  if (flats > 0) words.push(`${say(flats, 2)} flat${flats === 1 ? '' : 's'}`);
  return words.join(' ');
}

/** A rod with a thread, or a left/right-hand sleeve (`lead` = both pitches): its links grow by turns·lead. */
export const threadedRod: AdjusterKind = {
  kind: 'threaded-rod',
  name: 'Threaded rod',
  schema,
  touches: (rod) => ({ links: rod.links }),
  positions: (rod) => multiples(rod.stepTurns, rod.range[0], rod.range[1]),
  allowed: (rod) => `turns from ${say(rod.range[0])} to ${say(rod.range[1])}`,
  accepts: (rod, position) => within(position, rod.range[0], rod.range[1]),
  effect: (rod, position) => ({
    lengthen: Object.fromEntries(rod.links.map((link: string) => [link, (position as number) * rod.lead])),
  }),
  instruction: (rod, from, to) => {
    const change = (to as number) - (from as number);
    const way = change > 0 ? 'longer' : 'shorter';
    const mm = say(Math.abs(change) * rod.lead, 2);
    return `Free the lock nut, turn the rod ${turnsAndFlats(change)} ${way} (${mm} mm); lock it again.`;
  },
  show: (_, position) => `${(position as number) > 0 ? '+' : ''}${say(position as number, 3)} turns`,
  step: (rod) => {
    const [low, high] = rod.range as [number, number];
    const from = rod.reference as number;
    const one = Math.min(1, high - low);
    return from + one <= high
      ? { from, to: from + one, name: `${say(one)} turn longer` }
      : { from: from - one, to: from, name: `${say(one)} turn longer` };
  },
  effort: 4,
};
