/**
 * What else is refused beside the first: a form shows all at once. It is worked out when it is asked for alone, so that a
 * file from outside with a million wrong values costs no more than its first.
 */
import { InputError } from '../input-error.ts';

const MORE = new WeakMap<InputError, () => readonly InputError[]>();

/** The error, with more that are found beside it. */
export function withMore(error: InputError, more: () => readonly InputError[]): InputError {
  const before = MORE.get(error);
  MORE.set(error, () => [...(before?.() ?? []), ...more()]);
  return error;
}

/** Everything that some work refuses; nothing where it is done. */
export function refusalsOf(work: () => unknown): InputError[] {
  try {
    work();
    return [];
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return [error, ...(MORE.get(error)?.() ?? [])];
  }
}

/** All of some works, in their order. @throws InputError of the first that is refused, with those of the others */
export function each<T>(works: readonly (() => T)[]): T[] {
  return works.map((work, i) => beside(work, () => each(works.slice(i + 1))));
}

/** Some work; what the others would refuse is told with its refusal. @throws InputError */
export function beside<T>(work: () => T, ...others: readonly (() => unknown)[]): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw withMore(error, () => others.flatMap(refusalsOf));
  }
}
