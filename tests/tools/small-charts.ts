/** A car known by small printed charts alone, which add up: every combination of it is tried by plain sums. */

import type { Adjuster, Car, Corner, PlanRequest, Reading, Settings, WheelReading } from '../../core/contract.ts';
import { combinations, randomReading, randomSpec, score } from './brute-force.ts';
import { stream } from './random-cars.ts';

export const ALL: readonly Corner[] = ['LF', 'RF', 'LR', 'RR'];
export const ANGLES = ['camber', 'caster', 'toe'] as const;
export type Degrees = Readonly<Partial<Record<(typeof ANGLES)[number], number>>>;

const chart = (id: string, perStep: Degrees, [low, high]: readonly [number, number], effort: number): Adjuster => ({
  id,
  kind: 'effect-table',
  perStep,
  range: [low, high],
  reference: 0,
  effort,
});
const bare = { kind: 'unknown', points: {}, camber: 0, toe: 0 };
/** Two charts and toe by the step in front, toe alone in the rear. */
export const car: Car = {
  id: 'a',
  label: 'a',
  wheel: { rimDiameter: 420 },
  front: {
    suspension: bare,
    adjusters: [
      chart('lean', { camber: 0.3, toe: 0.04 }, [-1, 1], 8),
      chart('trail', { caster: 0.5, camber: -0.1 }, [0, 1], 10),
      chart('turn', { toe: 0.12 }, [-2, 2], 4),
    ],
    steered: true,
  },
  rear: { suspension: bare, adjusters: [chart('turn', { toe: 0.1 }, [-1, 1], 5)], steered: false },
};
export const OWN = Object.fromEntries(ALL.map((corner) => [corner, combinations(car, corner)])) as Record<
  Corner,
  Settings[]
>;

/** What the wheel reads with its charts at some steps, and the minutes that take it there from the reference. */
export function there(
  corner: Corner,
  read: WheelReading,
  settings: Settings,
): { wheel: WheelReading; minutes: number } {
  let minutes = 0;
  const wheel = { ...read } as Record<(typeof ANGLES)[number], number>;
  for (const { id, perStep, effort } of car[corner.endsWith('F') ? 'front' : 'rear'].adjusters) {
    const steps = settings[id] as number;
    if (steps !== 0) minutes += effort as number;
    for (const angle of ANGLES)
      if (read[angle] !== undefined) wheel[angle] += steps * ((perStep as Degrees)[angle] ?? 0);
  }
  return { wheel, minutes };
}

export interface Tried {
  readonly inWindow: boolean;
  readonly distance: number;
  readonly effort: number;
}
/** Every combination of the wheels of a spec: both of an axle, or all four. */
export function everything({ spec, reading }: PlanRequest): Tried[] {
  const lists = ALL.map((corner) => {
    const isAsked = spec[corner.endsWith('F') ? 'front' : 'rear'] !== undefined;
    const all = OWN[corner].map((settings) => there(corner, reading[corner] ?? {}, settings));
    return isAsked ? all : all.filter(({ minutes }) => minutes === 0);
  });
  const tried: Tried[] = [];
  for (const LF of lists[0] ?? [])
    for (const RF of lists[1] ?? [])
      for (const LR of lists[2] ?? [])
        for (const RR of lists[3] ?? []) {
          const after: Reading = { LF: LF.wheel, RF: RF.wheel, LR: LR.wheel, RR: RR.wheel };
          const effort = LF.minutes + RF.minutes + LR.minutes + RR.minutes;
          tried.push({ ...score(spec, againstThrust(reading, after)), effort });
        }
  return tried;
}

/** Front toe is read from where the rear wheels point: what that gains falls on the left and rises on the right. */
export function againstThrust({ toeReference, LR, RR }: Reading, after: Reading): Reading {
  if (toeReference !== 'thrust-line') return after;
  const gained = ((after.LR?.toe ?? 0) - (after.RR?.toe ?? 0) - ((LR?.toe ?? 0) - (RR?.toe ?? 0))) / 2;
  const turned = (wheel: WheelReading = {}, by: number) => ({ ...wheel, toe: (wheel.toe ?? Number.NaN) + by });
  return { ...after, LF: turned(after.LF, -gained), RF: turned(after.RF, gained) };
}

export const SEEDS = Array.from({ length: 9 }, (_, i) => i + 1);
export function request(seed: number): PlanRequest {
  const random = stream(seed * 41);
  const reading = randomReading(random, seed % 3 ? 0.4 : 0.9);
  return { car, spec: { front: randomSpec(random, true) }, reading, settings: {} };
}
export const nearest = (all: readonly Tried[]): number => Math.min(...all.map(({ distance }) => distance));
export const least = (all: readonly Tried[]): number => Math.min(...all.map(({ effort }) => effort));

/** Windows of a spec that this reading can judge: a wheel's angles, then those of both. */
export function countOf({ spec: { front = {} } }: PlanRequest): number {
  const wheels = (['camber', 'caster', 'toe'] as const).filter((angle) => front[angle] !== undefined).length * 2;
  const both = ['totalToe', 'crossCamber', 'crossCaster', 'thrustAngle'].filter((name) => name in front).length;
  return wheels + both;
}
