/** Why a reading is not as predicted, in words: every cause that there is. */
import { describe, expect, it } from 'vitest';
import { GUESSES } from '../../../core/learn/explain/guesses.ts';
import type { Cause, Explained } from '../../../core/said.ts';
import { en } from '../../../core/words/en/index.ts';

const CAUSES = Object.keys(GUESSES) as readonly Cause[];
const about: Omit<Explained, 'cause'> = {
  corner: 'RF',
  adjuster: { corner: 'RF', adjuster: 'cam', name: 'Rear cam' },
  asked: { as: 'mark', marks: 4, degrees: 60 },
  stands: { as: 'mark', marks: -2, degrees: -30 },
  angle: 'camber',
  reading: 'before',
  read: -1.24,
  meant: 1.24,
};

describe('a cause', () => {
  it.each(CAUSES)('%s is one or two plain sentences, unlike any other', (cause) => {
    const text = en.explanation({ cause, ...about });
    expect(text).toMatch(/^[A-Z][^\n]*\.$/);
    expect(text).not.toMatch(/undefined|NaN|null|\s\s/);
    expect(CAUSES.filter((other) => en.explanation({ cause: other, ...about }) === text)).toEqual([cause]);
  });

  it.each<[Cause, string]>([
    ['not-made', 'RF Rear cam seems not to have been moved, and still to be at mark −2 (−30°): look at its mark.'],
    [
      'sign',
      'RF camber in the reading before the moves seems to have the wrong sign: −1.24° for 1.24°. Read it again.',
    ],
    [
      'swapped',
      'Camber left and right in front seem to be noted for one another, in the reading before the moves: read them again.',
    ],
    ['bent', 'Nothing that was done explains RF: look for a bent or worn part, and for what is loose.'],
  ])('%s', (cause, text) => {
    expect(en.explanation({ cause, ...about })).toBe(text);
  });

  it('of all angles says so', () => {
    const { angle: _, ...all } = about;
    expect(en.explanation({ cause: 'swapped', ...all, corner: 'LR', reading: 'after' })).toBe(
      'All left and right in the rear seem to be noted for one another, in the reading after the moves: read them again.',
    );
  });

  it('names lengths in the unit of the shop', () => {
    const shims = { ...about, stands: { as: 'thickness', mm: 3.175 } as const };
    expect(en.explanation({ cause: 'half-made', ...shims }, { length: 'inch' })).toContain('to 1/8 in');
  });
});
