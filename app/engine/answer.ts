/** One call in, one answer out: the same in the worker and, where no worker runs, in the page. */
import { functions } from './functions.ts';
import { type Answer, type Call, toWire } from './messages.ts';

type Loose = Readonly<Record<string, (...args: readonly unknown[]) => unknown>>;

export function answer({ id, name, args }: Call): Answer {
  try {
    if (!Object.hasOwn(functions, name)) throw new Error(`the engine has no function "${name}"`);
    return { id, result: (functions as unknown as Loose)[name]?.(...args) };
  } catch (error) {
    return { id, error: toWire(error) };
  }
}
