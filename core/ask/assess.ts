import { validateReading, validateSpec } from '../check/spec.ts';
import type { Reading, Spec } from '../contract.ts';
import { type AssessOptions, type Assessment as Bare, assess as judged } from '../reading/assess.ts';
import type { Hint } from '../said.ts';
import { wordsOf } from '../words/catalogue.ts';

/** How a reading stands against a spec. */
export interface Assessment extends Omit<Bare, 'hints'> {
  /** What a camber and SAI pattern or a difference in caster points to, as data and as a sentence. */
  readonly hints: readonly (Hint & { readonly text: string })[];
}

/**
 * How a reading stands against a spec: every window with its value, whether it is in, near its edge or out and by how
 * much; cross, total and thrust of both axles; included angles; what the pattern points to. Degrees, signs as in the
 * contract.
 * @param options `kinds`: the suspension kind of each axle, for the hints that depend on it
 * @throws InputError naming the field, the value and what is allowed, such as `spec.front.camber.low`
 */
export function assess(reading: Reading, spec: Spec, options: AssessOptions = {}): Assessment {
  const words = wordsOf();
  const { hints, ...rest } = judged(validateReading(reading), validateSpec(spec), options);
  return { ...rest, hints: hints.map((hint) => ({ ...hint, text: words.hint(hint) })) };
}
