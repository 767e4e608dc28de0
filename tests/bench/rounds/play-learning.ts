/** One simulated car, planned blind and with what its own rounds have taught: how often all is in its windows, and when. */

import { jobsOf } from '../../../core/adjuster/job.ts';
import type {
  AxleSpec,
  Car,
  CarFile,
  CarSettings,
  Corner,
  Move,
  Moved,
  PlanRequest,
  Reading,
  Round,
} from '../../../core/contract.ts';
import { learn, measureBetween, planMoves, planRequest } from '../../../core/index.ts';
import { stream } from '../../tools/random-cars.ts';
import { carOf, type Family, LEARNERS } from './families.ts';
import { ALL, canReach, isIn } from './play.ts';
import { GAUGE, scattered, TrueCorner } from './truth.ts';
import { windowsTurnedTo } from './turned-to.ts';

/** Re-measures that are played. */
export const MEASURES = 3;
/** How much the cars of a family differ from one another, mm, where each was measured. */
const VARIETY = 15;
/** Half windows, degrees. */
const HALF = { camber: 0.25, caster: 0.4, toe: 0.08 } as const;

/** What became of one way: for each re-measure whether all was in by then, and what the plan before it had said. */
export interface Way {
  readonly in: readonly boolean[];
  readonly plans: readonly { readonly chance: number; readonly came: boolean }[];
}
/**
 * Planned from the car as entered or as learned, its moves made by their marks or as the rack shows; the last reads once more
 * on the way to a re-measure, after the first moves, wherever `measureBetween` says that it pays. What nobody can better is `live`
 * with every point of the car known.
 */
export const WAYS = ['blind', 'live', 'learning', 'live, learning', 'and in between', 'points known'] as const;
export type PlayedWays = Readonly<Record<(typeof WAYS)[number], Way>>;
/** What a usual rack shows while something is turned. */
const LIVE = ['camber', 'toe'] as const;

const specOf = ({ aim }: Family): AxleSpec => {
  const window = (angle: keyof typeof HALF, middle: number) => ({
    [angle]: { low: middle - HALF[angle], aim: middle, high: middle + HALF[angle] },
  });
  return {
    ...window('camber', aim.camber),
    ...(aim.caster === undefined ? {} : window('caster', aim.caster)),
    ...window('toe', aim.toe),
  };
};

/** @param off mm that each true coordinate is off by at the most, which the car says of its own */
export function playLearning(off: number, number: number, seedOfCar: number): PlayedWays | undefined {
  const family = LEARNERS[number] as Family;
  const spec = specOf(family);
  const [left, right] = family.corners;
  const seed = 1 + number * 100_000 + seedOfCar;
  const random = stream(seed);
  const entered = [0, 1].map(() => ({
    ...scattered(family.suspension, random, off > 5 ? 0 : VARIETY),
    tolerance: off,
  }));
  const [l, r] = entered as [(typeof entered)[0], (typeof entered)[0]];
  // Both ways meet the same car with the same gauge.
  const truth = () => {
    const own = stream(seed + 50_000_000);
    return { [left]: new TrueCorner(family, l, own, off), [right]: new TrueCorner(family, r, own, off) };
  };
  const once = truth();
  const reaches = (corner: Corner): boolean =>
    family.adjusters[2]
      ? canReach(family, spec, once[corner]!, { camber: 0, caster: 0 })
      : windowsTurnedTo(family, spec, once[corner]!);
  if (!stands(() => family.corners.every(reaches))) return undefined;
  const car = carOf(family, l, r);
  const taught = (rounds: readonly Round[]) => learn(car, rounds, GAUGE);
  const known = () =>
    carOf(family, { ...once[left]!.suspension, tolerance: 0 }, { ...once[right]!.suspension, tolerance: 0 });
  const blind = play(family, spec, truth(), () => car);
  return (
    blind && {
      blind,
      live: play(family, spec, truth(), () => car, LIVE)!,
      learning: play(family, spec, truth(), taught)!,
      'live, learning': play(family, spec, truth(), taught, LIVE)!,
      'and in between': play(family, spec, truth(), taught, LIVE, true)!,
      'points known': play(family, spec, truth(), known, LIVE)!,
    }
  );
}

/** Nothing of a car that is in its windows as it was found. @param between reads after the first moves where that pays */
function play(
  family: Family,
  spec: AxleSpec,
  truth: Readonly<Record<string, TrueCorner>>,
  known: (rounds: readonly Round[]) => Car,
  live?: PlanRequest['live'],
  between = false,
): Way | undefined {
  const axle = family.corners[0] === 'LF' ? 'front' : 'rear';
  const read = (at: CarSettings): Reading =>
    Object.fromEntries(family.corners.map((corner) => [corner, truth[corner]!.read(at[corner] ?? {})]));
  const rounds: Round[] = [{ id: 'found', at: '2026-01-01T08:00:00Z', reading: read({}), settings: {} }];
  if (isIn(spec, rounds[0]!.reading, family.corners, ALL)) return undefined;
  const options = { style: 'practical', gauge: GAUGE, ...(live && { live }) } as const;
  const fileNow = (): CarFile => {
    const car = known(rounds);
    const visit = { id: 'visit', carId: car.id, opened: '2026-01-01T08:00:00Z', rounds: rounds.slice(-1) };
    return { format: 'cornerwright', version: 1, car, spec: { [axle]: spec }, visits: [visit] };
  };
  /** Makes moves and reads what they led to. */
  const makeAndRead = (moves: readonly Move[]): void => {
    let settings: CarSettings = rounds.at(-1)!.settings;
    const moved = moves.map((move): Moved => {
      const { corner, adjuster, from, to, setBy } = move;
      const stands = live ? truth[corner]!.make(move) : to;
      settings = { ...settings, [corner]: { ...settings[corner], [adjuster]: stands } };
      return { corner, adjuster, from, to: stands, outcome: 'done', ...(setBy && { setBy }) };
    });
    rounds.push({ ...rounds.pop()!, moved });
    const at = `2026-01-01T08:${10 + rounds.length}:00Z`;
    rounds.push({ id: `round-${rounds.length}`, at, reading: read(settings), settings });
  };
  const done: boolean[] = [];
  const plans: Way['plans'][number][] = [];
  for (let n = 1; n <= MEASURES && !done.includes(true); n++) {
    let file = fileNow();
    let { moves, chance } = planMoves(planRequest(file, options));
    const pays = between ? measureBetween(file, options).first : undefined;
    if (pays) {
      makeAndRead(jobsOf(moves).slice(0, pays.jobs).flat());
      file = fileNow();
      ({ moves, chance } = planMoves(planRequest(file, options)));
    }
    makeAndRead(moves);
    const came = isIn(spec, rounds.at(-1)!.reading, family.corners, ALL);
    plans.push({ chance, came });
    done.push(came);
  }
  return { in: Array.from({ length: MEASURES }, (_, n) => done.slice(0, n + 1).includes(true)), plans };
}

/** Points so far off may make a car whose adjusters do not go all the way: it is none of those that come to a rack. */
function stands(reached: () => boolean): boolean {
  try {
    return reached();
  } catch {
    return false;
  }
}
