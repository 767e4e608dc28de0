import * as v from 'valibot';
import { number } from '../adjuster/fields.ts';
import { adjustersOf } from '../adjuster/of-corner.ts';
import { ruleText } from '../adjuster/rule-text.ts';
import { validateCarSettings } from '../check/adjusters.ts';
import { validateCar } from '../check/car.ts';
import { object } from '../check/object.ts';
import { check } from '../check/refuse.ts';
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
import { AXLES } from '../corners.ts';
import { type BentMeasures, bentHints } from '../measure/bent.ts';
import { sideHints } from '../measure/bent-sides.ts';
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

/**
 * What may be bent: the hints of `assess`, and what a tape, the turn plates and the maker's SAI add to them, and what the
 * cambers and the rear toe say by themselves, with what the adjusters do taken off first.
 * @param measures mm and degrees; what was not measured is absent
 * @throws InputError naming the field, the value and what is allowed
 */
export function whatIsBent(
  given: Reading,
  wanted: Spec,
  measures: BentMeasures = {},
  options: AssessOptions = {},
): readonly ToldHint[] {
  const [reading, spec] = [validateReading(given), validateSpec(wanted)];
  const maker = measures.sai && check(makersSai, measures.sai, 'sai');
  const asked = { ...measures, ...(maker && { sai: maker }) };
  const words = wordsOf();
  const withSides = (hints: readonly ToldHint[], kinds: Kinds, toeIsSet: boolean, share?: AdjustersShare) => {
    const more = bentHints(reading, spec, kinds, asked, share);
    const front = [...hints, ...more].some(({ where, kind }) => where !== 'rear' && ABOUT_THE_AXIS.includes(kind));
    const sides = sideHints(reading, spec, kinds, { toeIsSet, front, ...(share && { share }) });
    return [...hints, ...[...more, ...sides].map((hint) => ({ ...hint, text: words.hint(hint) }))];
  };
  if (!options.car) {
    const { kinds = {} } = options;
    return withSides(told(reading, spec, kinds), kinds, true);
  }
  const car = validateCar(options.car);
  const settings = validateCarSettings(options.settings ?? {}, car);
  const unknown = options.settings ? validateRefs(options.unknown ?? [], car, 'unknown') : allOf(car);
  const share = adjustersShare(car, reading, settings, unknown);
  const toeIsSet = AXLES.rear.some((corner) => adjustersOf(car, corner).length > 0);
  return withSides(ofCar(car, reading, spec, settings, unknown), kindsOf(car), toeIsSet, share);
}

/** Of the front wheels these say already what a camber points to. */
const ABOUT_THE_AXIS: readonly Hint['kind'][] = ['pattern', 'included', 'against-maker', 'shifted', 'places-first'];

const makersSai = v.pipe(
  object({ low: number(-45, 45, 'degrees'), high: number(-45, 45, 'degrees') }),
  v.check(({ low, high }) => low < high, ruleText({ is: 'range', unit: 'degrees', limit: 45 })),
);

const kindsOf = (car: Car): Kinds => ({ front: car.front.suspension.kind, rear: car.rear.suspension.kind });
type Kinds = NonNullable<AssessOptions['kinds']>;

function ofCar(car: Car, reading: Reading, spec: Spec, settings: CarSettings, unknown: readonly AdjusterRef[]) {
  return told(reading, spec, kindsOf(car), adjustersShare(car, reading, settings, unknown));
}

const allOf = (car: Car): AdjusterRef[] =>
  CORNERS.flatMap((corner) => adjustersOf(car, corner).map(({ id }) => ({ corner, adjuster: id })));

function told(reading: Reading, spec: Spec, kinds: Kinds, share?: AdjustersShare): readonly ToldHint[] {
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
