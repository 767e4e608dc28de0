import { check } from '../check/refuse.ts';
import * as schema from '../check/schema.ts';
import type { AxleName, CarFile, Gauge } from '../contract.ts';
import { axleOf } from '../corners.ts';
import { startOf } from '../learn/start.ts';
import { type Taught, taughtIn } from '../learn/taught.ts';
import { DEFAULT_GAUGE } from '../reading/gauge.ts';
import { validateCarFile } from '../records/car-file.ts';
import { wordsOf } from '../words/catalogue.ts';
import { knownCar } from './known-car.ts';

/** The same with its step in words, e.g. "1 turn longer". */
export type ToldTaught = Taught & { readonly step: string };
/** What a car's readings have taught. */
export interface TaughtOfFile {
  readonly steps: readonly ToldTaught[];
  /** Readings that taught, of visits with two or more. */
  readonly readings: number;
  /** Readings of a wheel that were left out, as no such car could have given them. */
  readonly leftOut: number;
  /** What another car of the same build can start from, axle by axle; see `Axle.start`. */
  readonly start: Readonly<Partial<Record<AxleName, NonNullable<CarFile['car']['front']['start']>>>>;
}

/**
 * What the readings of all visits of a car file have taught of what its adjusters do, against what was entered, degrees
 * for one step of each, with one standard deviation; those of which nothing was learned are left out.
 * @throws InputError naming the field, the value and what is allowed
 */
export function taughtOfFile(
  file: CarFile,
  options: { readonly gauge?: Gauge | undefined; readonly language?: string } = {},
): TaughtOfFile {
  const checked = validateCarFile(file);
  const gauge = check(schema.gauge, options.gauge ?? DEFAULT_GAUGE, 'gauge') as Gauge;
  const { car, visits = [] } = checked;
  const model = knownCar(checked, gauge);
  const words = wordsOf(options.language);
  const readings = visits.reduce((sum, { rounds }) => sum + (rounds.length > 1 ? rounds.length : 0), 0);
  const steps = taughtIn(car, model);
  // What taught nothing is no start.
  const start = Object.entries(startOf(car, model, readings)).filter(([axle]) =>
    steps.some(({ corner }) => axleOf(corner) === axle),
  );
  return {
    steps: steps.map((one) => ({ ...one, step: words.step(one.said) })),
    readings,
    leftOut: model.learned?.leftOut.length ?? 0,
    start: Object.fromEntries(start),
  };
}
