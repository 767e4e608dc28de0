/**
 * A first rough toe for a car on stands or in a yard, so that it can be driven to a rack: two distances across the front
 * wheels and where the steering wheel stands, to so many turns of each rod. Half of what total toe lacks goes to each wheel;
 * what the steering wheel stands off is taken out of both, equal and opposite, so that total toe stays. A turn of a rod
 * turns its wheel by asin(lead/arm) (Hyundai Santa Fe 2004, as restated: 0.86° a turn, a 99.9 mm arm at a 1.5 mm lead).
 */
import type { Corner } from '../contract.ts';
import { asin, degrees } from '../geometry/angle.ts';
import { InputError } from '../input-error.ts';
import { type RimDistances, sharedToe, totalToeAcross } from './distances.ts';
import { USUAL_SCATTER } from './instruments.ts';
import { type Measured, spreadOf } from './spread.ts';
import { given, within } from './within.ts';

/** What is measured and known of a car's front wheels and rods. */
export interface RoughToe {
  readonly distances: RimDistances;
  /** Total toe that is wanted, degrees. */
  readonly aim: number;
  /** mm that a rod grows by one turn: of a left and right-hand sleeve both pitches. */
  readonly lead: number;
  /** mm from the steering axis to the outer joint of the rod, square to the rod. */
  readonly arm: number;
  /** Which side of the axle the rods are on: ahead of it they shorten for toe-in, behind it they lengthen. */
  readonly rods: 'ahead' | 'behind';
  /** Degrees that the steering wheel stands off with both front wheels pointing alike; + turned to the right. Absent: 0. */
  readonly wheelOff?: number;
  /** Degrees of the steering wheel for one of the road wheels; absent: 16. */
  readonly ratio?: number;
}

/** What to do, for the drive to a rack and no further. */
export interface RoughTurns {
  /** Total toe as it is, degrees. */
  readonly totalToe: Measured;
  /** Turns of each rod, + lengthens it. */
  readonly turns: Readonly<Record<Extract<Corner, 'LF' | 'RF'>, Measured>>;
  /** Degrees that a turn of one rod turns its wheel. */
  readonly perTurn: number;
}

/** Of a car's rack where nobody knows it; it counts only where the steering wheel is off. Trade practice, no source. */
const USUAL_RATIO = 16;
/** How well an arm is measured between its joints under a car, mm. Trade practice, no source. */
const ARM_SD = 3;

/**
 * Turns of each front rod.
 * @param scatter one standard deviation: of the tape across the car, mm
 * @throws InputError naming the field
 */
export function roughToe(input: RoughToe, scatter: { readonly tape: number } = USUAL_SCATTER): RoughTurns {
  const { distances, lead, arm, rods, wheelOff = 0, ratio = USUAL_RATIO } = given('input', input);
  const totalToe = totalToeAcross(distances, scatter.tape);
  within('aim', input.aim, -10, 10, 'degrees');
  within('lead', lead, 0.5, 6, 'mm');
  within('arm', arm, 40, 400, 'mm');
  within('wheelOff', wheelOff, -360, 360, 'degrees');
  if (rods !== 'ahead' && rods !== 'behind') {
    throw new InputError('rods', rods, { is: 'choice', of: ['ahead', 'behind'] });
  }
  if (!(typeof ratio === 'number' && ratio >= 4 && ratio <= 40))
    throw new InputError('ratio', ratio, { is: 'number', low: 4, high: 40, unit: 'to 1' });
  const way = rods === 'behind' ? 1 : -1;
  const { front, rear, diameter } = distances;
  const turns = spreadOf(
    {
      front: { value: front, sd: scatter.tape },
      rear: { value: rear, sd: scatter.tape },
      arm: { value: arm, sd: ARM_SD },
      // As well as an eye sees a spoke stand level.
      wheel: { value: wheelOff, sd: 3 },
    },
    (read) => {
      const lacks = input.aim - sharedToe(read.rear - read.front, diameter);
      // With the steering wheel turned level, the road wheels point to the left by this: the left one needs toe-in.
      const right = read.wheel / ratio;
      const each = way / degrees(asin(lead / read.arm));
      return { LF: (lacks / 2 + right) * each, RF: (lacks / 2 - right) * each };
    },
  );
  return { totalToe, turns, perTurn: degrees(asin(lead / arm)) };
}
