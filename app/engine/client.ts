/**
 * The page's side of the bridge to core. One call runs at a time and the others wait here, so that what is no longer
 * wanted is simply not sent. What is already running is let run out, as a worker that has run for a while has compiled
 * code, which is worth more than the moment that a call mostly takes; what takes longer is stopped by ending its worker.
 * The worker starts with the first call and ends after a while without any. Where it cannot start, or dies, the same code
 * runs in the page.
 */
import type { FunctionName, Functions } from './functions.ts';
import { type Answer, type Call, fromWire } from './messages.ts';

export interface CallOptions {
  /** Gives up the call: it rejects with an `AbortError`. */
  readonly signal?: AbortSignal;
  /** Latest wins: an earlier call under the same key that has not answered yet is given up. */
  readonly latest?: string;
}

export interface Engine {
  /** Any function of `functions.ts`, by name. @throws what the function throws; AbortError when given up */
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

/** The part of `Worker` that is used. */
export type WorkerLike = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror' | 'onmessageerror'>;

interface EngineParts {
  readonly startWorker: () => WorkerLike;
  /** Loads core into the page. */
  readonly inPage: () => Promise<(call: Call) => Answer>;
  /** How long the worker may take to say that it is ready, ms. */
  readonly patience?: number;
  /** How long the worker is kept without work, ms. */
  readonly idle?: number;
  /** How long a call that nobody waits for any more may go on, ms. */
  readonly runOut?: number;
}

interface Job extends Call {
  readonly latest?: string | undefined;
  /** Worth nothing in the page. */
  readonly workerOnly?: boolean;
  readonly resolve: (result: unknown) => void;
  readonly reject: (error: Error) => void;
}

export function createEngine({
  startWorker,
  inPage,
  patience = 8_000,
  idle = 600_000,
  runOut = 1_000,
}: EngineParts): Engine {
  const waiting: Job[] = [];
  let running: Job | undefined;
  /** Set while what is running is not wanted any more. */
  let runOutTimer: ReturnType<typeof setTimeout> | undefined;
  let worker: WorkerLike | undefined;
  let ready = false;
  /** Once a worker has failed, core stays in the page. */
  let workerFailed = false;
  let readyTimer: ReturnType<typeof setTimeout> | undefined;
  let idleTimer: ReturnType<typeof setTimeout> | undefined;
  let lastId = 0;
  let warming = false;

  function next(): void {
    if (running) return;
    running = waiting.shift();
    clearTimeout(idleTimer);
    if (!running) idleTimer = setTimeout(stopWorker, idle);
    else if (workerFailed) void runInPage(running);
    else if (ready) send(running);
    else start();
  }

  function start(): void {
    if (worker) return;
    try {
      worker = startWorker();
    } catch {
      fallBack();
      return;
    }
    worker.onmessage = ({ data }: MessageEvent<Answer>) => {
      if (!('ready' in data)) {
        settle(data);
        return;
      }
      ready = true;
      clearTimeout(readyTimer);
      if (running) send(running);
    };
    worker.onerror = fallBack;
    worker.onmessageerror = fallBack;
    readyTimer = setTimeout(fallBack, patience);
  }

  function send({ id, name, args }: Job): void {
    try {
      worker?.postMessage({ id, name, args } satisfies Call);
    } catch (error) {
      // The arguments cannot cross.
      finish((job) => job.reject(error as Error));
    }
  }

  async function runInPage(job: Job): Promise<void> {
    if (job.workerOnly) {
      finish(() => job.reject(new DOMException('no worker', 'AbortError')));
      return;
    }
    try {
      const answer = await inPage();
      if (running === job) settle(answer(job));
    } catch (error) {
      if (running === job) finish(() => job.reject(error as Error));
    }
  }

  function settle(data: Answer): void {
    if ('ready' in data || data.id !== running?.id) return;
    finish((job) => ('error' in data ? job.reject(fromWire(data.error)) : job.resolve(data.result)));
  }

  function finish(how: (job: Job) => void): void {
    const job = running;
    running = undefined;
    clearTimeout(runOutTimer);
    runOutTimer = undefined;
    if (job) how(job);
    next();
  }

  function fallBack(): void {
    stopWorker();
    workerFailed = true;
    if (runOutTimer) finish(() => undefined);
    else if (running) void runInPage(running);
  }

  function stopWorker(): void {
    clearTimeout(readyTimer);
    clearTimeout(idleTimer);
    worker?.terminate();
    worker = undefined;
    ready = false;
  }

  function giveUp(job: Job, why: string): void {
    const place = waiting.indexOf(job);
    if (place >= 0) waiting.splice(place, 1);
    else if (running !== job || runOutTimer) return;
    job.reject(new DOMException(why, 'AbortError'));
    if (place >= 0) return;
    if (ready) {
      runOutTimer = setTimeout(() => {
        stopWorker();
        finish(() => undefined);
      }, runOut);
      return;
    }
    // One that has not begun yet leaves its worker to the next call.
    running = undefined;
    next();
  }

  function call(
    name: string,
    args: readonly unknown[],
    { signal, latest, workerOnly = false }: CallOptions & { workerOnly?: boolean } = {},
  ): Promise<unknown> {
    return new Promise((resolve, reject) => {
      signal?.throwIfAborted();
      if (latest !== undefined) {
        for (const job of [running, ...waiting]) if (job?.latest === latest) giveUp(job, 'a newer call took its place');
      }
      lastId += 1;
      const job: Job = { id: lastId, name, args, latest, workerOnly, resolve, reject };
      signal?.addEventListener('abort', () => giveUp(job, 'given up'), { once: true });
      waiting.push(job);
      next();
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
