import { validateCarSettings } from '../check/adjusters.ts';
import { validatePacks } from '../check/packs.ts';
import { validateRequestOptions } from '../check/request.ts';
import type { AdjusterRef, CarFile, CarPacks, CarSettings, PlanRequest, Reading, Round, Visit } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { asMeasured, expected } from '../plan/as-measured.ts';
import { withAxleKept } from '../plan/axle-kept.ts';
import { predictWith } from '../plan/predict.ts';
import { straightness } from '../plan/straight-wheel.ts';
import { compileCar } from '../pose/car-model.ts';
import { levelled } from '../reading/steering-wheel.ts';
import { validateCarFile } from '../records/car-file.ts';
import { current, latestRound, latestVisit, movedOn, packsAfter, seized } from '../records/rounds.ts';
import { readingInWords } from './in-words.ts';

/**
 * What may be asked beside what a car file says; as in a request. `locked`: beside those that would not move in the visit;
 * `done`: beside those that were moved in its last round.
 */
export type PlanRequestOptions = Pick<
  PlanRequest,
  'style' | 'maxEffort' | 'gauge' | 'locked' | 'done' | 'leave' | 'drawer' | 'language'
>;

/**
 * What to plan for a car file: the last round that holds of the last visit, its settings moved on by what was done after
 * it, and its reading predicted on by the same moves. The car is the one that was found: its wheels lean as they were read
 * (see as-measured.ts). What would not move in that visit is locked; what was moved since the reading is done. A spec that gives total toe alone gets a wish for
 * steer-ahead and thrust beside it, which is no window (see straight-wheel.ts). A rigid axle on links gets the windows of
 * change that its spec leaves open (see axle-kept.ts). A steering wheel that did not stand level while toe was read stays
 * in the reading: the plan counts it in. What is in a pack is known where the round or a move of it says so.
 * @param file a car file, all fields in mm, degrees and turns; a field that is not known is kept and passed over
 * @returns a request for `planMoves`, checked
 * @throws InputError naming the field, the value and what is allowed, such as `spec` or `visits` where there is none
 */
export function planRequest(file: CarFile, options: PlanRequestOptions = {}): PlanRequest {
  const checked = validateCarFile(file);
  const { car, spec } = checked;
  if (!spec) throw new InputError('spec', spec, { is: 'windows' });
  const { locked = [], done = [], ...asked } = validateRequestOptions(options, car);
  const { visit, round, from, settings, packs } = lastRound(checked);
  const found = asMeasured(car, levelled(round.reading, car), from);
  // A corner with no pose there has lost its angles: the plan lists them as unmeasured.
  const { unreachable: _, ...reading } = round.moved?.length
    ? predictWith(compileCar(found), round.reading, from, settings)
    : round.reading;
  const moved = [...done, ...movedIn(round)];
  const wish = straightness(spec, reading);
  return {
    car: found,
    spec: withAxleKept(spec, car, reading),
    ...(wish && { wish }),
    reading,
    settings,
    packs,
    locked: [...locked, ...seized(visit)],
    ...(moved.length > 0 && { done: moved }),
    ...asked,
  };
}

/**
 * What the rack should read, degrees, after all that was done in the last round that holds of the last visit: as
 * `expectReading`. Without moves it is what was read. Front toe is with the steering wheel level, where it was read with
 * it off and the steering ratio is on file.
 * @param file a car file
 * @throws InputError naming the field, the value and what is allowed
 */
export function expectationOfFile(file: CarFile): Reading {
  const checked = validateCarFile(file);
  const { round, from, settings } = lastRound(checked);
  return readingInWords(expected(checked.car, levelled(round.reading, checked.car), from, settings));
}

/** A car file's car, windows and last reading that holds, with where the adjusters stood at it. @throws InputError */
export function lastRoundOf(file: CarFile): Pick<CarFile, 'car' | 'spec'> & Pick<Round, 'reading' | 'settings'> {
  const checked = validateCarFile(file);
  const { round, from } = lastRound(checked);
  const { car, spec } = checked;
  return { car, ...(spec && { spec }), reading: round.reading, settings: from };
}

interface LastRound {
  readonly visit: Visit;
  readonly round: Round;
  /** Where the adjusters stood at its reading, and where they stand after its moves. */
  readonly from: CarSettings;
  readonly settings: CarSettings;
  /** What is in packs after its moves, as far as it is known. */
  readonly packs: CarPacks;
}

function lastRound({ car, visits = [] }: CarFile): LastRound {
  const visit = latestVisit(visits);
  const round = visit && latestRound(visit);
  if (!visit || !round) throw new InputError('visits', visits, { is: 'round' });
  const field = `visits[${visits.indexOf(visit)}].rounds[${visit.rounds.indexOf(round)}]`;
  const from = validateCarSettings(round.settings, car, `${field}.settings`);
  const settings = validateCarSettings(movedOn(from, round.moved ?? []), car, `${field}.moved`);
  const packs = validatePacks(round.packs ?? {}, car, from, `${field}.packs`);
  const built = validatePacks(packsAfter(packs, round.moved ?? []), car, settings, `${field}.moved`);
  return { visit, round, from, settings, packs: built };
}

/** Adjusters that were moved in a round, and stand elsewhere by it. */
function movedIn({ moved = [] }: Round): readonly AdjusterRef[] {
  const made = current(moved).filter(({ outcome, from, to }) => outcome !== 'wont-move' && from !== to);
  return [
    ...new Map(made.map(({ corner, adjuster }) => [`${corner}/${adjuster}`, { corner, adjuster }] as const)).values(),
  ];
}
