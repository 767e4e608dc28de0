import { validateCar } from '../check/car.ts';
import { check } from '../check/refuse.ts';
import * as schema from '../check/schema.ts';
import type { Car, CarFile, CarModel, Gauge, Round } from '../contract.ts';
import { learned } from '../learn/learn.ts';
import { sittingOf, sittingsOf } from '../learn/sittings.ts';
import { started } from '../learn/start.ts';
import { DEFAULT_GAUGE } from '../reading/gauge.ts';
import { validateCarFile } from '../records/car-file.ts';
import { settled } from './settled.ts';

/**
 * The car as its readings have shown it: the likeliest points and charts (maximum a posteriori), and in `learned` how well
 * they are known after them. It is a car: every function that takes one takes it, and then predicts, plans and states its
 * chance with what was learned. Known before is what the tape's or the layout's tolerance and the chart's say; the error
 * of each move and the gauge count as they do in a plan.
 *
 * A reading may be of one wheel or two angles only, taken between two moves; SAI is passed over. What an angle stood at in
 * a sitting is taken for unknown: differences within a sitting teach (see learn/sittings.ts). A wheel's reading that no
 * such car could have given is left out and told in `learned.leftOut` (see learn/misfits.ts). Where adjusters of which a
 * round says that their place was `unknown` stood is learned too, and how well it is known: one move of a cam may fit two
 * places. The order of the rounds and
 * a record that is there twice make no difference; a correction stands in the place of what it replaces.
 * @param rounds of this car: readings, degrees, with where the adjusters stood; one that is absent stood at its reference
 * @param gauge one standard deviation of a reading, degrees
 * @returns without rounds the car itself; one that starts from what another of its build has shown, with that
 * @throws InputError naming the field, the value and what is allowed, such as `rounds[0].settings.LF.rod`
 */
export function learn(car: Car, rounds: readonly Round[], gauge: Gauge = DEFAULT_GAUGE): CarModel {
  const checked = validateCar(car);
  const given = check(schema.rounds, rounds, 'rounds') as readonly Round[];
  const repeats = check(schema.gauge, gauge, 'gauge') as Gauge;
  if (given.length === 0) return checked.front.start || checked.rear.start ? started(checked) : car;
  return learned(started(checked), sittingsOf(settled(given, checked, 'rounds')), repeats);
}

/**
 * The car of a file as all its visits have shown it: as `learn`, each visit a sitting of its own, its rounds in their
 * order.
 * @throws InputError naming the field, the value and what is allowed
 */
export function learnOfFile(file: CarFile, gauge: Gauge = DEFAULT_GAUGE): CarModel {
  const { car, visits = [] } = validateCarFile(file);
  const repeats = check(schema.gauge, gauge, 'gauge') as Gauge;
  const sittings = visits.flatMap(({ rounds }, i) =>
    rounds.length > 0 ? [sittingOf(settled(rounds, car, `visits[${i}].rounds`))] : [],
  );
  return learned(started(car), sittings, repeats);
}
