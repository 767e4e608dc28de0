/** A call on its way, and whoever waits for it. */
import { InputError } from '../../core/input-error.ts';
import type { Answer, Call, WireError } from './messages.ts';

export interface Job extends Call {
  /** An earlier job under the same key is given up for this one. */
  readonly latest?: string | undefined;
  /** Worth nothing in the page. */
  readonly workerOnly?: boolean;
  readonly resolve: (result: unknown) => void;
  readonly reject: (error: Error) => void;
}

/** Where jobs run, one at a time: in the worker, or in the page. */
export interface Runner {
  /** @param over told once, when the job is settled or has run out */
  run(job: Job, over: () => void): void;
  /** Nobody waits any more for what runs. @returns whether it is over at once; if not, `over` is told when it is */
  abandon(): boolean;
  /** There is nothing to run for now. */
  rest(): void;
}

/** Hands an answer to whoever waits for it. */
export function settle(job: Job, answer: Answer): void {
  if ('error' in answer) job.reject(errorOf(answer.error));
  else if ('result' in answer) job.resolve(answer.result);
}

/** A call that was stopped as no answer came. */
export class TookTooLong extends Error {
  override readonly name = 'TookTooLong';
  constructor() {
    super(
      'This took too long and was stopped. Nothing that was saved is touched. Try again; where a plan takes so long, give its adjusters coarser steps.',
    );
  }
}

/** Whoever waits for it is told that no answer will come. */
export const refuse = (job: Job, why: string): void => job.reject(new DOMException(why, 'AbortError'));

/** What was thrown, from what of it could cross. The first load needs this half only: the other one goes with core. */
export function errorOf({ name, message, field = '', value, rule }: WireError): Error {
  if (rule) return new InputError(field, value, rule);
  return Object.assign(new Error(message), { name });
}
