import { describe, expect, it } from 'vitest';
import type { Adjuster, BareMove, Car, Settings, Suspension, Vec3 } from '../../../../core/contract.ts';
import { notesOf } from '../../../../core/plan/answer/notes.ts';
import { problemOf } from '../../../../core/plan/problem.ts';
import { wordsOf } from '../../../../core/words/catalogue.ts';
import { generalPose } from '../../../tools/general-pose.ts';
import { LAYOUTS } from '../../../tools/random-cars.ts';

/** A bracket that holds the inner end of the tie rod, up and down: what bump steer hangs on. */
const bracket: Adjuster = {
  ...{ id: 'bracket', kind: 'slide', at: 'tieInner', direction: [0, 0, 1], step: 1, range: [-20, 20], reference: 0 },
};
/** Where the bracket may be, mm. */
const HEIGHTS = Array.from({ length: 81 }, (_, i) => i / 2 - 20);

function wishbone(tieInner: Vec3): Suspension {
  const points = { ...(LAYOUTS['double-wishbone'] as Record<string, Vec3>), tieInner };
  return { kind: 'double-wishbone', points, camber: 0, toe: 0 };
}

/** What a plan says that moves the left bracket, the right one staying as it is. */
function notes(suspension: Suspension, from: number, to: number): string[] {
  const car: Car = {
    ...{ id: 'a', label: 'a', wheel: { rimDiameter: 420 } },
    front: { suspension, adjusters: [bracket], steered: true },
    rear: { suspension: { kind: 'unknown', points: {}, camber: 0, toe: 0 }, adjusters: [], steered: false },
  };
  const settings = (position: number): Settings => ({ bracket: position });
  const problem = problemOf({ car, spec: {}, reading: { LF: { toe: 0 } }, settings: { LF: settings(from) } });
  const act = { act: 'slide', by: to - from, from, to, goes: 'up' } as const;
  const moves: BareMove[] = [{ corner: 'LF', adjuster: 'bracket', from, to, act, expectAfter: {} }];
  return notesOf(problem, moves, { ...problem.now, LF: settings(to) }).map((one) => wordsOf().note(one));
}

/** Degrees that the wheel steers at 25 mm of bump and of droop, by a library that knows nothing of wheels. */
function bumpSteer(suspension: Suspension, height: number): [number, number] {
  const [x, y, z] = suspension.points.tieInner as Vec3;
  const toeAt = (travel: number) => generalPose(suspension, { moved: { tieInner: [x, y, z + height] }, travel }).toe;
  const still = toeAt(0);
  return [toeAt(25) - still, toeAt(-25) - still];
}

// A tenth of a degree is trade practice without a source.
describe.each([
  ['a long tie rod: the wheel turns one way in bump and the other in droop', 352, [-6, 0, 7]],
  ['a short tie rod: the wheel turns out in both', 560, [-2, 1, 3]],
] as const)('%s', (name, inner, stands) => {
  const suspension = wishbone([-138, inner, 235]);
  const steers = new Map(HEIGHTS.map((height) => [height, bumpSteer(suspension, height)]));
  const most = (height: number) => Math.max(...(steers.get(height) ?? [Number.NaN]).map(Math.abs));

  it.each(stands)('from a bracket at %d mm: told of where a plan makes it worse by a tenth of a degree', (from) => {
    const seen = { justUnder: 0, justOver: 0, better: 0 };
    const before = most(from);
    for (const to of HEIGHTS) {
      const after = most(to);
      const gained = after - before;
      const told = notes(suspension, from, to);
      if (gained < 0.1) expect(told, `at ${to} mm`).toEqual([]);
      else {
        expect(told, `at ${to} mm`).toEqual([
          expect.stringMatching(/^LF: bump steer gets worse, from .*° to .*° of toe over 25 mm of travel\.$/),
        ]);
        const figures = [...(told[0] ?? '').matchAll(/(\d+\.\d\d)°/g)].map(([, figure]) => Number(figure));
        expect(Math.abs((figures[0] ?? Number.NaN) - before)).toBeLessThan(0.0052);
        expect(Math.abs((figures[1] ?? Number.NaN) - after)).toBeLessThan(0.0052);
      }
      if (gained <= 0) seen.better++;
      if (gained > 0.075 && gained < 0.1) seen.justUnder++;
      if (gained >= 0.1 && gained < 0.125) seen.justOver++;
    }
    expect(Math.min(seen.justUnder, seen.justOver, seen.better)).toBeGreaterThan(0);
  });

  it('is such a wheel', () => {
    const [bump, droop] = steers.get(0) ?? [Number.NaN, Number.NaN];
    const [worse, better] = [Math.min(bump, droop), Math.max(bump, droop)];
    expect(worse).toBeLessThan(0);
    expect(better < 0).toBe(name.startsWith('a short'));
  });
});
