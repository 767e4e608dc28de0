/** "Don't know" where an adjuster stands: what goes evenly is planned all the same, a cam is left alone until it is set. */
import { describe, expect, it } from 'vitest';
import { questionOf } from '../../app/state/planning.ts';
import { standingKey, UNKNOWN } from '../../app/state/standing.ts';
import type { RoundView, VisitView } from '../../app/state/visits.ts';
import type { Adjuster } from '../../core/contract.ts';
import { adjusterKinds, planOfFile } from '../../core/index.ts';
import { carFile } from '../core/records/fixture.ts';
import { eccentric, randomSuspension, stream } from '../tools/random-cars.ts';

const file = carFile('tarn-gt.json');
const { car, spec = {} } = file;
const [first] = file.visits?.at(-1)?.rounds ?? [];
const cars = { id: car.id, car, spec, changed: '2026-01-01' };
const isEven = (one: Adjuster): boolean => adjusterKinds[one.kind]?.even?.(one) ?? false;

function viewOf(typed: Readonly<Record<string, string>>, moves: RoundView['moves'] = []): [VisitView, RoundView] {
  const record = { ...first!, id: 'r', visitId: 'v', at: '2026-01-01', settings: {}, typed };
  const last = moves.map(({ outcome }) => outcome !== 'done').lastIndexOf(true);
  const round = { record, moves, base: moves.slice(0, last + 1), done: moves.slice(last + 1) };
  return [{ visit: { id: 'v', carId: car.id, opened: '2026-01-01' }, car: cars, rounds: [round] }, round];
}
const plan = (...[view, round]: [VisitView, RoundView]) => {
  const { file, options } = questionOf(view, round);
  return planOfFile(file, options);
};
const movedIn = (...asked: [VisitView, RoundView]) =>
  plan(...asked).moves.map(({ corner, adjuster }) => `${corner}/${adjuster}`);

describe('an adjuster of which nobody knows where it stands', () => {
  const known = movedIn(...viewOf({}));
  const uneven = known.filter((ref) => {
    const [corner, id] = ref.split('/') as [string, string];
    const one = car[corner.endsWith('F') ? 'front' : 'rear'].adjusters.find((other) => other.id === id);
    return one && !isEven(one);
  });
  const even = known.filter((ref) => !uneven.includes(ref));

  it('is tried with a car that has both sorts to move', () => {
    expect(uneven.length).toBeGreaterThan(0);
    expect(even.length).toBeGreaterThan(0);
  });

  it('is not planned with where its effect hangs on its place', () => {
    const typed = Object.fromEntries(uneven.map((ref) => [`at:${ref}`, UNKNOWN]));
    const moved = movedIn(...viewOf(typed));
    expect(moved.filter((ref) => uneven.includes(ref))).toEqual([]);
    expect(moved.length).toBeGreaterThan(0);
  });

  it('is planned as ever where a change does the same wherever it begins', () => {
    const typed = Object.fromEntries(even.map((ref) => [`at:${ref}`, UNKNOWN]));
    expect(movedIn(...viewOf(typed))).toEqual(known);
  });

  it('is planned with again once it was set to a mark that can be read', () => {
    const [corner, adjuster] = uneven[0]!.split('/') as ['LF', string];
    const one = car[corner.endsWith('F') ? 'front' : 'rear'].adjusters.find(({ id }) => id === adjuster)!;
    const set = { id: 'm', visitId: 'v', readingId: 'r', at: '2026-01-02', corner, adjuster };
    const asked = viewOf({ [standingKey(corner, adjuster)]: UNKNOWN }, [
      { ...set, from: one.reference, to: one.reference, outcome: 'set-to' },
    ]);
    expect(questionOf(...asked).options.locked).toEqual([]);
  });

  it('is a cam for the reason that turning it on may do nothing: three marks from one end of its travel to its middle', () => {
    const random = stream(3);
    const { at, direction } = eccentric(random, 'cam', 'upperFront');
    const cam = {
      id: 'cam',
      kind: 'eccentric-cam',
      at,
      direction,
      eccentricity: 4,
      marks: 24,
      reference: 0,
    } as Adjuster;
    const suspension = randomSuspension(random, 'double-wishbone');
    const gone = (from: number, to: number): number => {
      const shift = (position: number) => adjusterKinds['eccentric-cam']!.effect(cam, position, suspension).shift![at]!;
      return Math.hypot(...shift(to).map((x, i) => x - shift(from)[i]!));
    };
    expect(gone(0, 45)).toBeGreaterThan(2.8);
    expect(gone(67.5, 112.5)).toBeLessThan(1e-9);
    expect([isEven(cam), isEven({ ...cam, kind: 'threaded-rod' })]).toEqual([false, true]);
  });
});
