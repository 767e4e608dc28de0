import { adjustersOf } from '../adjuster/of-corner.ts';
import { validateCarSettings } from '../check/adjusters.ts';
import { validateCar } from '../check/car.ts';
import { validateRefs } from '../check/request.ts';
import { validateReading, validateSpec } from '../check/spec.ts';
import {
  type AdjusterRef,
  type AxleName,
  type Car,
  type CarFile,
  type CarSettings,
  CORNERS,
  type Reading,
  type Spec,
} from '../contract.ts';
import { adjustersShare } from '../plan/adjusters-share.ts';
import type { AdjustersShare } from '../reading/adjusters-share.ts';
import { type Assessment as Bare, assess as judged } from '../reading/assess.ts';
import { hints } from '../reading/diagnosis.ts';
import { outside, windowFor } from '../reading/spec-terms.ts';
import type { Hint } from '../said.ts';
import { wordsOf } from '../words/catalogue.ts';
import { lastRoundOf } from './plan-request.ts';

/** A hint as data and as a sentence. */
export type ToldHint = Hint & { readonly text: string };

/** How a reading stands against a spec. */
export interface Assessment extends Bare {
  /** What a camber and SAI pattern or a difference in caster points to, as data and as a sentence. */
  readonly hints: readonly ToldHint[];
}

/** What the hints are to know beside the reading. */
export interface AssessOptions {
  /** The suspension kind of each axle, where there is no car. */
  readonly kinds?: Readonly<Partial<Record<AxleName, string>>>;
  /** The car: what its adjusters do is taken off before one side is held against the other. */
  readonly car?: Car;
  /** Where its adjusters stood at the reading; one that is absent at its reference. Absent as a whole: nobody knows. */
  readonly settings?: CarSettings;
  /** Adjusters of which nobody knows where they stood. */
  readonly unknown?: readonly AdjusterRef[];
}

/**
 * How a reading stands against a spec: every window with its value, whether it is in, near its edge or out and by how
 * much; cross, total and thrust of both axles; included angles; what the pattern points to. Degrees, signs as in the
 * contract. With a car the two sides are held against each other as they would read with their adjusters standing alike;
 * where one of unknown place may be why they differ, the hint is to look at that first.
 * @throws InputError naming the field, the value and what is allowed, such as `spec.front.camber.low`
 */
export function assess(reading: Reading, spec: Spec, options: AssessOptions = {}): Assessment {
  const [read, wanted] = [validateReading(reading), validateSpec(spec)];
  const { kinds = {}, car: given } = options;
  if (!given) return { ...judged(read, wanted), hints: told(read, wanted, kinds) };
  const car = validateCar(given);
  const settings = validateCarSettings(options.settings ?? {}, car);
  const unknown = options.settings ? validateRefs(options.unknown ?? [], car, 'unknown') : allOf(car);
  return { ...judged(read, wanted), hints: ofCar(car, read, wanted, settings, unknown) };
}

/**
 * What the last round of a car file points to, with what its adjusters do taken off: as the hints of `assess`.
 * @param unknown adjusters of which nobody knows where they stood at its reading
 * @throws InputError naming the field, the value and what is allowed
 */
export function hintsOfFile(file: CarFile, unknown: readonly AdjusterRef[] = []): readonly ToldHint[] {
  const { car, spec = {}, reading, settings } = lastRoundOf(file);
  return ofCar(car, reading, spec, settings, validateRefs(unknown, car, 'unknown'));
}

function ofCar(car: Car, reading: Reading, spec: Spec, settings: CarSettings, unknown: readonly AdjusterRef[]) {
  const kinds = { front: car.front.suspension.kind, rear: car.rear.suspension.kind };
  return told(reading, spec, kinds, adjustersShare(car, reading, settings, unknown));
}

const allOf = (car: Car): AdjusterRef[] =>
  CORNERS.flatMap((corner) => adjustersOf(car, corner).map(({ id }) => ({ corner, adjuster: id })));

function told(
  reading: Reading,
  spec: Spec,
  kinds: NonNullable<AssessOptions['kinds']>,
  share?: AdjustersShare,
): readonly ToldHint[] {
  const words = wordsOf();
  const found = hints(
    reading,
    (read, corner) => {
      const [value, window] = [read[corner]?.camber, windowFor(spec, corner, 'camber')];
      return value === undefined || !window ? undefined : outside(value, window);
    },
    kinds,
    share,
  );
  return found.map((hint) => ({ ...hint, text: words.hint(hint) }));
}
