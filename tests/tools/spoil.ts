/** Good input, spoilt in one place at a time, everywhere: what the tests of nonsense are fed with. */
import { InputError } from '../../core/input-error.ts';

type Data = Readonly<Record<string, unknown>>;

/** Nothing, what is empty, of another type, beyond any limit, beside every list of names. */
const BAD: readonly unknown[] = [
  ...[undefined, null, '', 'x', '__proto__', '\ud800', 'x'.repeat(4001), true, 0, -1, 1e9, Number.NaN],
  ...[[], [0, 0, 0], [2, 1], ['x'], {}],
];
/** More than any list of a car may have. */
const MANY = 401;

/** The value with everything in it replaced by everything bad, one at a time, and a stranger put into every object. */
export function* spoilt(value: unknown): Generator<unknown> {
  yield* BAD;
  if (Array.isArray(value)) {
    for (const [i, one] of value.entries()) {
      for (const bad of spoilt(one)) yield value.map((other, k) => (k === i ? bad : other));
    }
    if (value.length > 0) yield* [[...value, value[0]], Array(MANY).fill(value[0])];
  } else if (typeof value === 'object' && value !== null) {
    yield { ...value, chamber: 1 };
    for (const [key, one] of Object.entries(value)) {
      for (const bad of spoilt(one)) yield { ...(value as Data), [key]: bad };
    }
  }
}

/** What is refused of all that; other errors are not caught. */
export function refusalsOf(value: unknown, work: (spoilt: never) => unknown): InputError[] {
  return [...spoilt(value)].flatMap((bad) => refusalOf(() => work(bad as never)));
}

/** What is refused of some work, if anything is. */
export function refusalOf(work: () => unknown): InputError[] {
  try {
    work();
    return [];
  } catch (error) {
    if (error instanceof InputError) return [error];
    throw error;
  }
}
