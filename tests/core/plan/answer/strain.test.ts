import { describe, expect, it } from 'vitest';
import type { BareMove, Car, Corner, Vec3 } from '../../../../core/contract.ts';
import { notesOf } from '../../../../core/plan/answer/notes.ts';
import { problemOf } from '../../../../core/plan/problem.ts';
import { rod } from '../../../tools/random-cars.ts';

/** Four links of which each pair is parallel: they agree while left and right are as long as one another. */
const points: Readonly<Record<string, Vec3>> = {
  lowerBody: [-2050, 440, 230],
  lowerAxle: [-2600, 440, 230],
  upperBody: [-2100, 440, 430],
  upperAxle: [-2600, 440, 430],
  rodBody: [-2600, -430, 330],
  rodAxle: [-2600, 450, 330],
  wheelCentre: [-2600, 780, 330],
};
const suspension = { kind: 'beam-linked', points, camber: 0, toe: 0 };
const car: Car = {
  id: 'a',
  label: 'a',
  wheel: { rimDiameter: 420 },
  front: { suspension: { kind: 'unknown', points: {}, camber: 0, toe: 0 }, adjusters: [], steered: true },
  rear: { suspension, adjusters: [rod('lower', 'lowerBody', 12), rod('upper', 'upperBody', 12)], steered: false },
};
type Turns = Readonly<Partial<Record<Corner, Readonly<Record<string, number>>>>>;

/** What is told of the bushes where a plan goes from some turns to others. */
function strains(from: Turns, to: Turns) {
  const problem = problemOf({ car, spec: {}, reading: { LR: { toe: 0 }, RR: { toe: 0 } }, settings: from });
  const then = { ...problem.now };
  const moves: BareMove[] = [];
  for (const [corner, settings] of Object.entries(to) as [Corner, Record<string, number>][]) {
    then[corner] = { ...then[corner], ...settings };
    const act = { act: 'turn-to-number', from: 0, to: 1 } as const;
    for (const adjuster of Object.keys(settings)) {
      moves.push({ corner, adjuster, from: 0, to: settings[adjuster] ?? 0, act, expectAfter: {} });
    }
  }
  return notesOf(problem, moves, then).filter(({ note }) => note === 'strain');
}

// One millimetre is trade practice without a source.
describe('links of an axle that no longer agree', () => {
  it('are told of where one is more than a little longer than the other of its pair', () => {
    const told = [0.25, 0.5, 1, 2, 4].map((turns) => strains({}, { LR: { lower: turns } }));
    expect(told.map(({ length }) => length)).toEqual([...told.map(({ length }) => length)].sort());
    expect(told[0]).toEqual([]);
    expect(told.at(-1)).toEqual([
      { note: 'strain', corners: ['LR', 'RR'], before: expect.closeTo(0, 6), after: expect.any(Number) },
    ]);
    for (const [note] of told) if (note?.note === 'strain') expect(note.after - note.before).toBeGreaterThanOrEqual(1);
  });

  it('are not where all of them grow together, nor where they agree again', () => {
    const all = { lower: 4, upper: 4 };
    expect(strains({}, { LR: all, RR: all })).toEqual([]);
    expect(strains({ LR: { lower: 4 } }, { LR: { lower: 0 } })).toEqual([]);
    expect(strains({ LR: { lower: 4 } }, { LR: { lower: 4.25 } })).toEqual([]);
  });

  it('grow by what they grew and are told as they stood before', () => {
    const [once] = strains({}, { LR: { lower: 4 } });
    const [more] = strains({ LR: { lower: 4 } }, { LR: { lower: 8 } });
    if (once?.note !== 'strain' || more?.note !== 'strain') throw new Error('both are told of');
    expect(more.before).toBeCloseTo(once.after, 6);
    expect(more.after).toBeGreaterThan(more.before + 1);
  });

  it('are of an axle that moves', () => {
    const problem = problemOf({ car, spec: {}, reading: { LR: { toe: 0 } }, settings: {} });
    expect(notesOf(problem, [], { ...problem.now, LR: { lower: 8, upper: 0 } })).toEqual([]);
  });
});
