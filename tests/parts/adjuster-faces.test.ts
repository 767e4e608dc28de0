/** Where an adjuster stands, touched on its drawing: the nearest mark is taken, and its sides are the core's. */
import { h } from 'preact';
import { describe, expect, it } from 'vitest';
import { adjusterPictures } from '../../app/parts/drawings/catalogue.ts';
import { type FaceProps, nearest } from '../../app/parts/drawings/faces/face.ts';
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import { type Adjuster, CORNERS, type Corner, type Position, type Suspension } from '../../core/contract.ts';
import { adjusterPositions } from '../../core/index.ts';
import { markup, sampleOf } from './markup.ts';

const named = (kind: string, fields = {}) => sampleOf(kind, { id: kind, name: kind, ...fields });
/** One of each, and those of which there are two sorts. */
const ALL: readonly Adjuster[] = [
  ...Object.keys(adjusterPictures).map((kind) => named(kind)),
  named('eccentric-cam', { turns: 'clockwise', stepMarks: 0.5 }),
  named('eccentric-cam', { turns: 'anticlockwise', range: [-360, 360] }),
  named('eccentric-cam', { zero: 'end', range: [0, 180] }),
  named('offset-sleeve', { degrees: [0, 0.5, 1], reference: 'plain' }),
  named('slide', { direction: [0, 1, 0] }),
  named('clamp-bolt', { eccentricity: 2, spacing: 60, step: 15, range: [-90, 90] }),
];

const faceOf = (adjuster: Adjuster) => {
  const face = adjusterPictures[adjuster.kind]?.face?.(adjuster);
  const props = (position: Position, corner: Corner): FaceProps => ({
    ...{ adjuster, corner, position, positions: adjusterPositions(adjuster) },
  });
  return { face, props };
};
const withFace = ALL.filter((adjuster) => faceOf(adjuster).face);
/** Clockwise from the top, degrees, of a mark about the middle of its drawing's ring. */
function clockOf(adjuster: Adjuster, position: Position, corner: Corner, middle: readonly [number, number]): number {
  const { face, props } = faceOf(adjuster);
  const mark = face?.marks(props(position, corner)).find((one) => one.position === position);
  return (Math.atan2((mark?.x ?? 0) - middle[0], middle[1] - (mark?.y ?? 0)) * 180) / Math.PI;
}
/** Where the marks of a full turn have their middle. */
function middleOf(adjuster: Adjuster, among: (position: Position) => boolean = () => true): [number, number] {
  const { face, props } = faceOf(adjuster);
  const marks = face?.marks(props(adjuster.reference, 'LF')).filter(({ position }) => among(position)) ?? [];
  return [
    marks.reduce((sum, { x }) => sum + x, 0) / marks.length,
    marks.reduce((sum, { y }) => sum + y, 0) / marks.length,
  ];
}

it('all but packs, which are counted, and charts, which are read, have one', () => {
  const typed = Object.keys(adjusterKinds).filter((kind) => !adjusterPictures[kind]?.face);
  expect(typed.sort()).toEqual(['effect-table', 'shim-pack']);
});

describe.each(withFace.map((adjuster, i) => [`${adjuster.kind} ${i}`, adjuster] as const))('%s', (_, adjuster) => {
  const { face, props } = faceOf(adjuster);
  const all = adjusterPositions(adjuster);

  it('takes each position by at most four touches on marks, from any', () => {
    for (const corner of CORNERS)
      for (const from of [all[0], all.at(-1), adjuster.reference] as Position[]) {
        const seen = new Set<Position>([from]);
        let last: Position[] = [from];
        for (let touches = 0; touches < 4 && seen.size < all.length; touches += 1) {
          last = last.flatMap((at) => {
            const marks = face?.marks(props(at, corner)) ?? [];
            return marks.flatMap(({ x, y }) => {
              const next = nearest(marks, x, y, at);
              if (next === undefined || seen.has(next)) return [];
              seen.add(next);
              return [next];
            });
          });
        }
        expect(all.filter((one) => !seen.has(one))).toEqual([]);
      }
  });

  it('takes one from anywhere on it, and every mark lies on it', () => {
    const marks = face?.marks(props(adjuster.reference, 'LF')) ?? [];
    for (const { x, y } of marks) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(face?.width ?? 0);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y).toBeLessThanOrEqual(face?.height ?? 0);
    }
    for (const x of [0, 150, 300]) for (const y of [0, 100, 200]) expect(all).toContain(nearest(marks, x, y, all[0]!));
  });

  it('draws no number that is none, known or not', () => {
    for (const corner of CORNERS)
      for (const unknown of [true, false]) {
        const drawn = markup(h(face!.Drawing, { ...props(adjuster.reference, corner), unknown }));
        expect(drawn).not.toMatch(/NaN|undefined|Infinity/);
      }
  });
});

describe('sides', () => {
  it('of a cam: + is where the core’s sense turns it, on both sides of the car', () => {
    for (const turns of ['clockwise', 'anticlockwise'] as const)
      for (const corner of ['LF', 'RF'] as const) {
        const cam = named('eccentric-cam', { turns });
        const act = adjusterKinds['eccentric-cam']!.act(cam, 0, 45, { corner });
        const angle = clockOf(cam, 45, corner, [150, 118]);
        expect(angle > 0 ? 'clockwise' : 'anticlockwise').toBe(act.act === 'turn-marks' && act.sense);
        expect(Math.abs(angle)).toBeCloseTo(45, 6);
      }
  });

  it('of a cam whose direction is not on file: none is drawn, its point’s place is', () => {
    const { face, props } = faceOf(named('eccentric-cam'));
    const drawn = markup(h(face!.Drawing, props(0, 'LF')));
    expect(drawn).not.toMatch(/>[+−]</);
    // The sample moves its point outboard as its angle grows.
    expect(drawn).toMatch(/inboard.*outboard/);
    const marks = face!.marks(props(0, 'LF'));
    expect(marks.at(-1)!.x).toBeGreaterThan(marks[0]!.x);
    expect(adjusterKinds['eccentric-cam']!.effect(named('eccentric-cam'), 45, {} as Suspension).shift).toMatchObject({
      undefined: [0, expect.closeTo(4 * Math.SQRT1_2, 9), 0],
    });
  });

  it('of a numbered cam: the number where it stands is up', () => {
    const cam = named('indexed-cam');
    for (const position of adjusterPositions(cam)) {
      expect(clockOf(cam, position, 'LF', middleOf(cam))).toBeCloseTo(0, 6);
    }
  });

  it('of a tapered shim, seen from outside: up where it adds camber, to the rear where it adds toe-in', () => {
    const shim = named('wedge-shim', { degrees: [0.5] });
    for (const position of adjusterPositions(shim).filter((one) => one !== 'none')) {
      const { camber = 0, toe = 0 } = adjusterKinds['wedge-shim']!.effect(shim, position, {} as Suspension).spin ?? {};
      const clock = (Math.atan2(toe, camber) * 180) / Math.PI;
      const turned = (corner: Corner) =>
        clockOf(
          shim,
          position,
          corner,
          middleOf(shim, (one) => one !== 'none'),
        );
      // The rear is to the right of one who looks at a left wheel, to the left at a right one.
      expect(Math.cos(((turned('LR') - clock) * Math.PI) / 180)).toBeCloseTo(1, 6);
      expect(Math.cos(((turned('RR') + clock) * Math.PI) / 180)).toBeCloseTo(1, 6);
    }
  });

  it('of a sleeve from above: 0° is outboard, 90° to the rear', () => {
    const sleeve = named('offset-sleeve');
    const at = (angle: number, corner: Corner) => clockOf(sleeve, angle, corner, middleOf(sleeve));
    expect(at(0, 'LF')).toBeCloseTo(-90, 6);
    expect(at(0, 'RF')).toBeCloseTo(90, 6);
    expect(Math.abs(at(90, 'LF'))).toBeCloseTo(180, 6);
    expect(Math.abs(at(90, 'RF'))).toBeCloseTo(180, 6);
  });
});
