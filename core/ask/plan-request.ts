import { adjustersOf } from '../adjuster/of-corner.ts';
import { validateRequestOptions } from '../check/request.ts';
import type { AdjusterRef, Car, CarFile, CarSettings, PlanRequest, Reading, Round } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { asMeasured } from '../plan/as-measured.ts';
import { withAxleKept } from '../plan/axle-kept.ts';
import { predictWith } from '../plan/predict.ts';
import { further, seenBeyond } from '../plan/read-on.ts';
import { straightness } from '../plan/straight-wheel.ts';
import { compileCar } from '../pose/car-model.ts';
import { levelled } from '../reading/steering-wheel.ts';
import { validateCarFile } from '../records/car-file.ts';
import { current, guessedIn, seized } from '../records/rounds.ts';
import { readingInWords } from './in-words.ts';
import { lastRound, withoutLost } from './last-round.ts';

/**
 * What may be asked beside what a car file says; as in a request. `locked`: beside those that would not move in the visit;
 * `done`: beside those that were moved in its last round.
 */
export type PlanRequestOptions = Pick<
  PlanRequest,
  'style' | 'maxEffort' | 'gauge' | 'live' | 'locked' | 'done' | 'leave' | 'drawer' | 'language'
>;

/**
 * What to plan for a car file: the last round that holds of the last visit, its settings moved on by what was done after
 * it, and its reading predicted on by the same moves. The car is as its readings up to this one have shown it (see
 * known-car.ts), and the one that was found: its wheels lean as they were read (see as-measured.ts). An adjuster of unknown
 * place stands where they have told that it does; one of which that counts and nothing tells is locked. What would not move in that visit is locked; what was moved since the reading is done. A spec that gives total toe alone gets a wish for
 * steer-ahead and thrust beside it, which is no window (see straight-wheel.ts). A rigid axle on links gets the windows of
 * change that its spec leaves open (see axle-kept.ts). A steering wheel that did not stand level while toe was read stays
 * in the reading: the plan counts it in. What was seen as the rack led a move is a reading of that wheel, and where such a move
 * was left at a guess the place is `unsure`. What is in a pack is known where the round or a move of it says so.
 * @param file a car file, all fields in mm, degrees and turns; a field that is not known is kept and passed over
 * @returns a request for `planMoves`, checked
 * @throws InputError naming the field, the value and what is allowed, such as `spec` or `visits` where there is none
 */
export function planRequest(file: CarFile, options: PlanRequestOptions = {}): PlanRequest {
  const checked = validateCarFile(file);
  const { spec } = checked;
  if (!spec) throw new InputError('spec', spec, { is: 'windows' });
  const { locked = [], done = [], ...asked } = validateRequestOptions(options, checked.car);
  const { car, visit, round, from, settings, packs, lost } = lastRound(checked, asked.gauge);
  const found = asMeasured(car, levelled(round.reading, car), from);
  // A corner with no pose there has lost its angles: the plan lists them as unmeasured.
  const { unreachable: _, ...predicted } = round.moved?.length ? moved(found, round, from, settings) : round.reading;
  // What it was measured with is measured with again.
  const { methods } = round.reading;
  const reading = { ...predicted, ...(methods && { methods }) };
  const made = [...done, ...movedIn(round)];
  const fitted = (ref: AdjusterRef) => adjustersOf(car, ref.corner).some(({ id }) => id === ref.adjuster);
  const unsure = guessedIn(visit).filter(fitted);
  const wish = straightness(spec, reading);
  return {
    car: found,
    spec: withAxleKept(spec, car, reading),
    ...(wish && { wish }),
    reading,
    settings,
    packs,
    locked: [...locked, ...seized(visit), ...lost],
    ...(made.length > 0 && { done: made }),
    ...(unsure.length > 0 && { unsure }),
    ...asked,
  };
}

/**
 * What the rack should read, degrees, after all that was done in the last round that holds of the last visit: as
 * `expectReading`. Without moves it is what was read. Front toe is with the steering wheel level, where it was read with
 * it off and the steering ratio is on file.
 * @param file a car file
 * @param options of the gauge, by which earlier readings teach
 * @throws InputError naming the field, the value and what is allowed
 */
export function expectationOfFile(file: CarFile, options: Pick<PlanRequestOptions, 'gauge'> = {}): Reading {
  const checked = validateCarFile(file);
  const last = lastRound(checked, validateRequestOptions(options, checked.car).gauge);
  const { car, round, from, settings } = last;
  const read = withoutLost(levelled(round.reading, car), last);
  return readingInWords(moved(asMeasured(car, read, from), { ...round, reading: read }, from, settings));
}

/** What the rack reads after a round's moves, by the model and by what was seen as it led one of them. @param car as it was found */
function moved(car: Car, { reading, moved = [] }: Round, from: CarSettings, settings: CarSettings): Reading {
  const model = compileCar(car);
  const told = predictWith(model, reading, from, settings);
  if (moved.every(({ setBy }) => !setBy)) return told;
  return further(told, seenBeyond(model, levelled(reading, car), from, moved));
}

/** A car file's car, windows and last reading that holds, with where the adjusters stood at it. @throws InputError */
export function lastRoundOf(file: CarFile): Pick<CarFile, 'car' | 'spec'> & Pick<Round, 'reading' | 'settings'> {
  const checked = validateCarFile(file);
  const { round, from } = lastRound(checked);
  const { car, spec } = checked;
  return { car, ...(spec && { spec }), reading: round.reading, settings: from };
}

/** Adjusters that were moved in a round, and stand elsewhere by it. */
function movedIn({ moved = [] }: Round): readonly AdjusterRef[] {
  const made = current(moved).filter(({ outcome, from, to }) => outcome !== 'wont-move' && from !== to);
  return [
    ...new Map(made.map(({ corner, adjuster }) => [`${corner}/${adjuster}`, { corner, adjuster }] as const)).values(),
  ];
}
