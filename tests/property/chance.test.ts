/**
 * How sure a plan is, against a Monte Carlo of the full model: cars built a little otherwise than entered, moves made a
 * little otherwise than asked, a gauge that does not repeat; each draw solved in full by `predictReading`.
 */
import { describe, expect, it } from 'vitest';
import type { Adjuster, Car, CarSettings, Corner, Position, Reading, Suspension, Vec3 } from '../../core/contract.ts';
import { planMoves, predictReading } from '../../core/index.ts';
import { startersFor } from '../../core/starters/catalogue.ts';
import { type Starter, suspensionFromStarter } from '../../core/starters/starter.ts';
import { score } from '../tools/brute-force.ts';
import { between, type Random, stream } from '../tools/random-cars.ts';
import { shortOrLong } from '../tools/seeds.ts';

const GAUGE = { camber: 0.03, caster: 0.08, toe: 0.015 };
/** Degrees, turns and mm at 95 %. */
const MADE = { 'eccentric-cam': 4, 'threaded-rod': 0.1, 'shim-pack': 0.3, slide: 1, 'clamp-bolt': 0.2 } as const;

const rod = (link: string): Adjuster => ({
  id: 'rod',
  kind: 'threaded-rod',
  links: [link],
  tolerance: MADE['threaded-rod'],
  lead: 1.5,
  stepTurns: 1 / 12,
  range: [-8, 8],
  reference: 0,
});
const cam = (id: string, at: string): Adjuster => ({
  id,
  kind: 'eccentric-cam',
  at,
  direction: [0, 1, 0],
  tolerance: MADE['eccentric-cam'],
  eccentricity: 6,
  marks: 24,
  range: [-90, 90],
  zero: 'middle',
  reference: 0,
});
const pack = (id: string, at: string): Adjuster => ({
  id,
  kind: 'shim-pack',
  at,
  direction: [0, 1, 0],
  tolerance: MADE['shim-pack'],
  sizes: [0.5, 1],
  max: 14,
  reference: 7,
});
const plate = (id: string, direction: Vec3): Adjuster => ({
  id,
  kind: 'slide',
  at: 'strutTop',
  direction,
  tolerance: MADE.slide,
  step: 1,
  range: [-20, 20],
  reference: 0,
});
const tilt: Adjuster = {
  id: 'tilt',
  kind: 'clamp-bolt',
  tolerance: MADE['clamp-bolt'],
  step: 0.1,
  range: [-1.5, 1.5],
  reference: 0,
};
/** The chart of a kit, known to ± 20 %. */
const chart = (id: string, degrees: Readonly<Record<string, number>>): Adjuster => ({
  id,
  kind: 'effect-table',
  tolerance: 20,
  perStep: degrees,
  range: [-10, 10],
  reference: 0,
});

const CASES: readonly (readonly [kind: string, adjusters: readonly Adjuster[]])[] = [
  ['double-wishbone', [pack('front', 'upperFront'), pack('rear', 'upperRear'), rod('tieInner')]],
  ['strut', [plate('along', [-1, 0, 0]), tilt, rod('tieInner')]],
  ['five-link', [cam('upper', 'inner1'), cam('lower', 'inner4'), rod('inner5')]],
  ['unknown', [chart('lean', { camber: 0.15, toe: 0.05 }), chart('turn', { toe: 0.08, camber: -0.01 })]],
];

const normal = (next: Random): number => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
const window = (aim: number, half: number) => ({ low: aim - half, aim, high: aim + half });
const DRAWS = shortOrLong(600, 1200);

describe.each(CASES)('%s', (kind, adjusters) => {
  const bare: Suspension = { kind, points: {}, camber: 0, toe: 0 };
  const [starter] = startersFor(kind, 'front');
  const given = starter ? suspensionFromStarter(starter as Starter, 'front') : bare;
  const suspension: Suspension = { ...given, tolerance: 5 };
  const steers = kind === 'double-wishbone' || kind === 'strut';
  const car: Car = {
    id: 'chance',
    label: 'Chance',
    wheel: { rimDiameter: 420 },
    front: { suspension, rightSuspension: suspension, adjusters, steered: true },
    rear: { suspension: { ...bare, kind: 'unknown' }, adjusters: [], steered: false },
  };
  const wheel = (camber: number, toe: number) => ({ camber, toe, ...(steers ? { caster: 3 } : {}) });
  const reading: Reading = { LF: wheel(0.3, 0.5), RF: wheel(-1.2, -0.3) };
  const caster = steers ? { caster: window(3.4, 0.3) } : {};
  const front = { camber: window(-0.5, 0.15), toe: window(0.05, 0.06), crossCamber: window(0, 0.25), ...caster };
  const plan = planMoves({ car, spec: { front }, reading, settings: {}, gauge: GAUGE, style: 'surest' });
  const next = stream(4021);

  const built = (): Suspension => ({
    ...suspension,
    points: Object.fromEntries(
      Object.entries(suspension.points).map(([name, point]) => [
        name,
        point.map((x) => x + between(next, -5, 5)) as unknown as Vec3,
      ]),
    ),
  });
  const made = (): CarSettings => {
    const at = structuredClone(plan.positions) as Record<Corner, Record<string, Position>>;
    for (const { corner, adjuster, to } of plan.moves) {
      const { kind: one, tolerance } = adjusters.find(({ id }) => id === adjuster) as Adjuster;
      if (one !== 'effect-table') at[corner][adjuster] = Number(to) + (tolerance / 2) * normal(next);
    }
    return at;
  };
  /**
   * Each angle of each chart is off by a tenth of what it changes and by a tenth of the largest change, of 0.3° at the
   * least, for each corner: another table for every draw.
   */
  const printed = (corner: Corner): readonly Adjuster[] =>
    adjusters.map((one) => {
      const steps = Number(plan.positions[corner][one.id]);
      if (one.kind !== 'effect-table' || steps === 0) return one;
      const told = (angle: string): number => (one.perStep as Record<string, number>)[angle] ?? 0;
      const angles = ['camber', 'caster', 'toe'];
      const largest = Math.max(0.3 / Math.abs(steps), ...angles.map((angle) => Math.abs(told(angle))));
      const drawn = (angle: string) => told(angle) * (1 + 0.1 * normal(next)) + 0.1 * largest * normal(next);
      return { ...one, perStep: Object.fromEntries(angles.map((angle) => [angle, drawn(angle)])) };
    });
  /** A move to the end of the travel may be made beyond it. */
  const roomy = (one: Adjuster): Adjuster =>
    one.range && one.kind !== 'effect-table' ? { ...one, range: [one.range[0] - 9, one.range[1] + 9] } : one;
  const once = (corner: Corner) => {
    const own = { suspension: built(), rightSuspension: built(), adjusters: printed(corner).map(roomy), steered: true };
    return predictReading({ ...car, front: own }, { [corner]: reading[corner] }, {}, made())[corner];
  };

  it('each deviation is the spread of the draws, and the chance their share in the windows', () => {
    expect(plan.moves.length).toBeGreaterThan(2);
    const squares: Record<string, number> = {};
    let hits = 0;
    for (let draw = 0; draw < DRAWS; draw++) {
      const read: Record<string, Record<string, number>> = {};
      for (const corner of ['LF', 'RF'] as const) {
        const after = once(corner);
        read[corner] = {};
        for (const angle of ['camber', 'caster', 'toe'] as const) {
          const told = plan.predicted[corner]?.[angle];
          if (told === undefined) continue;
          const shown = (after?.[angle] ?? Number.NaN) + Math.SQRT2 * GAUGE[angle] * normal(next);
          read[corner][angle] = shown;
          squares[`${corner} ${angle}`] = (squares[`${corner} ${angle}`] ?? 0) + (shown - told) ** 2;
        }
      }
      if (score({ front }, read as Reading).inWindow) hits++;
    }
    for (const [place, sum] of Object.entries(squares)) {
      const [corner, angle] = place.split(' ') as ['LF', 'camber'];
      const told = plan.deviation[corner]?.[angle] ?? Number.NaN;
      // 600 draws know a standard deviation to 3 % (one sigma), 1200 to 2 %; what is not linear in a coordinate adds to that.
      expect(Math.sqrt(sum / DRAWS) / told, place).toBeGreaterThan(0.92);
      expect(Math.sqrt(sum / DRAWS) / told, place).toBeLessThan(1.08);
    }
    expect(plan.chance).toBeGreaterThan(0.1);
    expect(plan.chance).toBeLessThan(0.995);
    expect(Math.abs(plan.chance - hits / DRAWS)).toBeLessThan(0.045);
  });
});
