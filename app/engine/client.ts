/**
 * The page's side of the bridge to core: calls wait in a queue and run one at a time in a worker. Where that cannot start, or
 * dies, the same code runs in the page.
 */
import type { FunctionName, Functions } from './functions.ts';
import { pageRunner } from './in-page.ts';
import { type RunnerParts, workerRunner } from './in-worker.ts';
import type { Job } from './job.ts';
import type { Answer, Call } from './messages.ts';
import { createQueue } from './queue.ts';

export type { WorkerLike } from './worker-life.ts';

export interface CallOptions {
  /** Gives up the call: it rejects with an `AbortError`. */
  readonly signal?: AbortSignal;
  /** Latest wins: an earlier call under the same key that has not answered yet is given up. */
  readonly latest?: string;
}

export interface Engine {
  /** Any function of `functions.ts`, by name. @throws what the function throws; AbortError when given up; TookTooLong */
  call<K extends FunctionName>(
    name: K,
    args: Parameters<Functions[K]>,
    options?: CallOptions,
  ): Promise<ReturnType<Functions[K]>>;
  /**
   * Has a function run in the worker, one call after another, for what that leaves there: behind whatever is asked for in
   * earnest, and not at all where core runs in the page.
   */
  warm<K extends FunctionName>(name: K, calls: readonly Readonly<Parameters<Functions[K]>>[]): void;
}

/** Of the times those that are not given are as usual. */
interface EngineParts extends Partial<RunnerParts> {
  readonly startWorker: RunnerParts['startWorker'];
  /** Loads core into the page. */
  readonly inPage: () => Promise<(call: Call) => Answer>;
}

const USUAL = { patience: 8_000, idle: 600_000, runOut: 1_000, longest: 60_000 };

export function createEngine(parts: EngineParts): Engine {
  const queue = createQueue();
  // Once a worker has failed, core stays in the page.
  queue.use(workerRunner({ ...USUAL, ...parts }, () => queue.use(pageRunner(parts.inPage))));
  let lastId = 0;
  let warming = false;

  function call(
    name: string,
    args: readonly unknown[],
    { signal, ...rest }: CallOptions & { workerOnly?: boolean } = {},
  ): Promise<unknown> {
    return new Promise((resolve, reject) => {
      signal?.throwIfAborted();
      lastId += 1;
      const job: Job = { ...rest, id: lastId, name, args, resolve, reject };
      signal?.addEventListener('abort', () => queue.giveUp(job, 'given up'), { once: true });
      queue.add(job);
    });
  }

  async function warm(name: string, calls: readonly (readonly unknown[])[]): Promise<void> {
    if (warming) return;
    warming = true;
    try {
      for (const args of calls) await call(name, args, { workerOnly: true });
    } catch {
      // Nobody waits for it: whatever is wrong with it is said where it is asked for in earnest.
    }
    warming = false;
  }

  return {
    // The worker runs the function of that name, so its answer has that function's type.
    call: (name, args, options) => call(name, args, options) as Promise<never>,
    warm: (name, calls) => void warm(name, calls),
  };
}
