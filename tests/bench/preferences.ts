/**
 * `npm run bench:preferences [-- CARS]`: what each preference of a careful hand costs of the chance that a plan states, over
 * simulated cars: each alone beside none of them, and all together. That a stated chance comes true `bench:rounds` shows.
 */
import type { Adjuster, AxleSpec, Car, CarFile, Corner, Suspension } from '../../core/contract.ts';
import { planMoves, planRequest } from '../../core/index.ts';
import { MOVE_PREFERENCES, PAIR_PREFERENCES, WHEEL_PREFERENCES } from '../../core/plan/preferences.ts';
import { between, type Random, randomSuspension, stream } from '../tools/random-cars.ts';
import { FAMILIES } from './rounds/families.ts';
import { GAUGE, normal, scattered } from './rounds/truth.ts';

const CARS = Number(process.argv[2] ?? 500);
/** One standard deviation of how far off a car comes in, degrees. */
const OFF = { camber: 0.6, caster: 0.6, toe: 0.4 } as const;
const HALF = { camber: 0.4, caster: 0.5, toe: 0.1 } as const;
type Angle = keyof typeof OFF;

interface Kind {
  readonly name: string;
  readonly corners: readonly [Corner, Corner];
  readonly suspension: Suspension;
  readonly adjusters: readonly Adjuster[];
  readonly aim: Readonly<Partial<Record<Angle, number>>>;
}

const lowerRod: Adjuster = {
  ...{ id: 'lower', kind: 'threaded-rod', links: ['lowerBody'], lead: 2 },
  ...{ stepTurns: 1 / 6, range: [-4, 4], reference: 0 },
};
const tapers: Adjuster = { id: 'hub', kind: 'wedge-shim', degrees: [0.25, 0.5, 1], marks: 24, reference: 'none' };
/** Cams that have to be turned far, so that dead centre is near. */
const weaker = (one: Adjuster): Adjuster => (one.kind === 'eccentric-cam' ? { ...one, eccentricity: 4 } : one);
const KINDS: readonly Kind[] = [
  ...FAMILIES.map((family) => ({ ...family, adjusters: family.adjusters.map(weaker) })),
  {
    ...{ name: 'axle on links, a rod a side', corners: ['LR', 'RR'], adjusters: [lowerRod], aim: { toe: 0.05 } },
    suspension: randomSuspension(stream(3), 'beam-linked'),
  },
  {
    ...{ name: 'rigid axle, hub shims', corners: ['LR', 'RR'], adjusters: [tapers], aim: { camber: -0.5, toe: 0.05 } },
    suspension: { kind: 'beam-rear', camber: 0, toe: 0, points: { wheelCentre: [-2600, 780, 340] } },
  },
];

function fileOf({ corners, suspension, adjusters, aim }: Kind, random: Random): CarFile {
  const rear = corners[0] === 'LR';
  const own = { suspension: scattered(suspension, random, 15), adjusters };
  const other = {
    suspension: { kind: 'beam-rear', camber: 0, toe: 0, points: { wheelCentre: [0, 700, 300] as const } },
    adjusters: [],
  };
  const car: Car = {
    ...{ id: 'simulated', label: 'Simulated', wheel: { rimDiameter: 420 } },
    front: { ...(rear ? other : own), steered: true },
    rear: { ...(rear ? own : other), steered: false },
  };
  const angles = Object.entries(aim) as [Angle, number][];
  const wide = between(random, 0.7, 1.3);
  const spec: AxleSpec = Object.fromEntries(
    angles.map(([angle, middle]) => [
      angle,
      { low: middle - wide * HALF[angle], aim: middle, high: middle + wide * HALF[angle] },
    ]),
  );
  const wheel = () =>
    Object.fromEntries(angles.map(([angle, middle]) => [angle, middle + OFF[angle] * normal(random)]));
  const reading = Object.fromEntries(corners.map((corner) => [corner, wheel()]));
  const visit = { id: 'visit', carId: car.id, opened: '2026-01-01T08:00:00Z', rounds: [{ reading, settings: {} }] };
  return { format: 'cornerwright', version: 1, car, spec: { [rear ? 'rear' : 'front']: spec }, visits: [visit] };
}

/** The lists that the planner reads: here they are emptied and filled again. */
const LISTS = [MOVE_PREFERENCES, PAIR_PREFERENCES, WHEEL_PREFERENCES] as unknown as { readonly id: string }[][];
const WHOLE = LISTS.map((list) => [...list]);
const ALL = WHOLE.flat().map(({ id }) => id);

function plan(file: CarFile, liked: readonly string[]) {
  LISTS.forEach((list, i) => {
    list.splice(0, list.length, ...WHOLE[i]!.filter(({ id }) => liked.includes(id)));
  });
  const { chance, positions, effort } = planMoves(planRequest(file, { style: 'practical', gauge: GAUGE }));
  return { chance, effort, where: JSON.stringify(positions) };
}

interface Cost {
  points: number[];
  changed: number;
  minutes: number;
}
const costs = new Map<string, Cost>(['all together', ...ALL].map((id) => [id, { points: [], changed: 0, minutes: 0 }]));
for (let n = 0; n < CARS; n++) {
  const file = fileOf(KINDS[n % KINDS.length]!, stream(70_000 + n));
  const plain = plan(file, []);
  for (const [id, cost] of costs) {
    const liked = plan(file, id === 'all together' ? ALL : [id]);
    cost.points.push(100 * (plain.chance - liked.chance));
    cost.minutes += liked.effort - plain.effort;
    if (liked.where !== plain.where) cost.changed++;
  }
}
console.log(`${CARS} cars: ${KINDS.map(({ name }) => name).join('; ')}`);
console.log('                    points of chance: mean     most    plans changed   minutes a car');
for (const [id, { points, changed, minutes }] of costs) {
  const mean = points.reduce((sum, x) => sum + x, 0) / points.length;
  const cells = [
    mean.toFixed(2).padStart(10),
    Math.max(...points)
      .toFixed(1)
      .padStart(9),
  ];
  const share = `${((100 * changed) / CARS).toFixed(0)} %`.padStart(17);
  console.log(`  ${id.padEnd(34)}${cells.join('')}${share}${(minutes / CARS).toFixed(2).padStart(16)}`);
}
