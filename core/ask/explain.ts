import { validateCar } from '../check/car.ts';
import { check } from '../check/refuse.ts';
import * as schema from '../check/schema.ts';
import type { Car, CarFile, Explanation, Gauge, Round } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { explained } from '../learn/explain/explain.ts';
import { DEFAULT_GAUGE } from '../reading/gauge.ts';
import { validateCarFile } from '../records/car-file.ts';
import { family, latestRound, latestVisit } from '../records/rounds.ts';
import { wordsOf } from '../words/catalogue.ts';
import { lastRound, sameScale, withoutLost } from './last-round.ts';
import { settingsOf } from './settled.ts';

/** What an explanation may be told beside. */
export interface ExplainOptions {
  /** The round whose reading the new one is held against. Absent: the newest that the car has learned of. */
  readonly before?: Round;
  /** One standard deviation of a reading, degrees. */
  readonly gauge?: Gauge;
  /** Of the sentences; default `en`. */
  readonly language?: string;
}

/**
 * Why a reading is not as predicted: plain causes with their probability, the likeliest first, each with the facts behind it
 * as data, in a sentence, and with what the records would say by it. `noise` first: it is as predicted, within what the
 * gauge, the dimensions and the hand leave open. What was moved is where adjusters stand otherwise than before. One cause
 * at a time; degrees, signs as in the contract.
 * @param car as it was known before this reading: a `CarModel` that learned of it already expects it
 * @param round the reading, with where the adjusters stood at it by the records
 * @throws InputError naming the field, the value and what is allowed; `before` where nothing was read before it
 */
export function explain(car: Car, round: Round, options: ExplainOptions = {}): Explanation[] {
  const checked = validateCar(car);
  const given = options.before ?? checked.learned?.last;
  if (!given) throw new InputError('before', given, { is: 'round' });
  const gauge = check(schema.gauge, options.gauge ?? DEFAULT_GAUGE, 'gauge') as Gauge;
  const words = wordsOf(options.language);
  const [before, after] = [settled(checked, given, 'before'), settled(checked, round, 'round')];
  return explained(checked, before, after, gauge).map((one) => ({ ...one, text: words.explanation(one) }));
}

/**
 * Why the last reading of a car file's last visit is not as predicted: as `explain`, by the car as it was known before it,
 * against the reading before it in that visit. A wheel on which an adjuster was turned that stood nobody knows where is left
 * out: nothing was to be expected of it.
 * @returns none where there was no reading before it
 * @throws InputError naming the field, the value and what is allowed
 */
export function explanationOfFile(file: CarFile, options: Omit<ExplainOptions, 'before'> = {}): Explanation[] {
  const checked = validateCarFile(file);
  const gauge = check(schema.gauge, options.gauge ?? DEFAULT_GAUGE, 'gauge') as Gauge;
  const visit = latestVisit(checked.visits ?? []);
  const round = visit && latestRound(visit);
  if (!visit || !round) throw new InputError('visits', checked.visits, { is: 'round' });
  const own = family(visit.rounds, round);
  const rounds = visit.rounds.filter((one) => !own.includes(one));
  if (rounds.length === 0) return [];
  const before = lastRound(
    { ...checked, visits: checked.visits!.map((one) => (one === visit ? { ...visit, rounds } : one)) },
    gauge,
  );
  const stands = settingsOf(round, before.car, 'round.settings');
  const words = wordsOf(options.language);
  return explained(
    before.car,
    { ...before.round, settings: before.from },
    {
      ...round,
      reading: withoutLost(round.reading, before, stands),
      settings: sameScale(before, stands, round.unknown),
    },
    gauge,
  ).map((one) => ({ ...one, text: words.explanation(one) }));
}

function settled(car: Car, round: Round, field: string): Round {
  const checked = check(schema.round, round, field) as Round;
  return { ...checked, settings: settingsOf(checked, car, `${field}.settings`) };
}
