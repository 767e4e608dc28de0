/** What a rack would show of a known car at some settings: the model's own poses with a gauge that does not repeat. */
import type { Adjuster, Car, Corner, Round, Settings, Suspension, Vec3, WheelReading } from '../../core/contract.ts';
import { solveCorner } from '../../core/index.ts';
import { between, type Random } from './random-cars.ts';

export const GAUGE = { camber: 0.03, caster: 0.08, toe: 0.015 } as const;

export const normal = (random: Random): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** The same corner with every coordinate off by up to `by` mm. */
export const builtWithin = (suspension: Suspension, by: number, random: Random): Suspension => ({
  ...suspension,
  points: Object.fromEntries(
    Object.entries(suspension.points).map(([name, point]) => [
      name,
      point.map((x) => x + between(random, -by, by)) as unknown as Vec3,
    ]),
  ),
});

/** One wheel as a rack shows it. @param noise how many standard deviations of the gauge count */
export function shown(
  suspension: Suspension,
  adjusters: readonly Adjuster[],
  settings: Settings,
  random: Random,
  noise = 1,
): WheelReading {
  const pose = solveCorner(suspension, adjusters, settings);
  if (!pose.reachable) throw new Error('no pose there');
  const off = (angle: keyof typeof GAUGE): number => noise * GAUGE[angle] * normal(random);
  return {
    camber: pose.camber + off('camber'),
    ...(pose.caster !== undefined && { caster: pose.caster + off('caster') }),
    toe: pose.toe + off('toe'),
  };
}

/** Rounds of one corner, a minute after one another. */
export const roundsOf = (corner: Corner, list: readonly (readonly [Settings, WheelReading])[]): Round[] =>
  list.map(([settings, reading], i) => ({
    id: `round-${i}`,
    at: `2026-03-02T08:${10 + i}:00Z`,
    settings: { [corner]: settings },
    reading: { [corner]: reading },
  }));

/** A car with one suspension and its adjusters in front, and a plain axle behind. */
export const frontCar = (suspension: Suspension, adjusters: readonly Adjuster[]): Car => ({
  id: 'learns',
  label: 'Learns',
  wheel: { rimDiameter: 420 },
  front: { suspension, adjusters, steered: true },
  rear: {
    suspension: { kind: 'beam-rear', camber: 0, toe: 0, points: { wheelCentre: [-2600, 700, 300] }, tolerance: 0 },
    adjusters: [],
    steered: false,
  },
});
