/**
 * The car of a file as its own readings have shown it by its last round: what every answer about a visit's file goes by, so
 * that what was expected in a round is judged with what was known then. Worked out again wherever it is asked for; the few
 * that were asked for last are remembered, as one screen asks many things of one car.
 */
import type { Car, CarFile, CarModel, Gauge, Round, Visit } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { learned } from '../learn/learn.ts';
import { type Sitting, sittingOf } from '../learn/sittings.ts';
import { started } from '../learn/start.ts';
import { DEFAULT_GAUGE } from '../reading/gauge.ts';
import { current } from '../records/rounds.ts';
import { settled } from './settled.ts';

/** The newest rounds that teach: of a car that comes every month what was read years ago says little more. */
const MOST_ROUNDS = 40;
/** Cars that are remembered. */
const MOST_KNOWN = 6;
const known = new Map<string, CarModel>();

/**
 * @param file validated; one whose car has learned of its own rounds already is taken as it is
 * @param gauge one standard deviation of a reading, degrees
 * @returns the car itself where nothing can be learned, as no visit has two readings, and it starts from no other's
 */
export function knownCar(
  { car: entered, visits = [] }: Pick<CarFile, 'car' | 'visits'>,
  gauge: Gauge = DEFAULT_GAUGE,
): CarModel {
  if (entered.learned?.last) return entered;
  const car = started(entered);
  const sittings = newest(visits).flatMap(({ rounds }): Sitting[] => {
    const fit = current(rounds).flatMap((round) => asFitted(round, car));
    return fit.length > 0 ? [sittingOf(fit)] : [];
  });
  if (!sittings.some(({ rounds }) => rounds.length > 1)) return car;
  const key = JSON.stringify([car, sittings, gauge]);
  const found = known.get(key) ?? learned(car, sittings, gauge);
  known.delete(key);
  known.set(key, found);
  if (known.size > MOST_KNOWN) known.delete([...known.keys()][0]!);
  return found;
}

/** Visits from the oldest on, those whose rounds are among the newest. */
function newest(visits: readonly Visit[]): readonly Visit[] {
  const inTime = visits
    .filter(({ rounds }) => rounds.length > 0)
    .sort((a, b) => (a.opened < b.opened ? -1 : a.opened > b.opened ? 1 : 0));
  let count = 0;
  const from = inTime.findLastIndex(({ rounds }) => {
    count += rounds.length;
    return count > MOST_ROUNDS;
  });
  // The last visit teaches however long it is.
  return inTime.slice(Math.min(from + 1, inTime.length - 1));
}

/** Nothing of a round of before the car was built as it is: positions that its adjusters do not have tell nothing of them. */
function asFitted(round: Round, car: Car): readonly Round[] {
  try {
    return settled([round], car, 'rounds');
  } catch (error) {
    if (error instanceof InputError) return [];
    throw error;
  }
}
