/** A worker from its start, when it is first needed, to its end, after a while without work or when it fails. */
import type { Answer, Call } from './messages.ts';

/** The part of `Worker` that is used. */
export type WorkerLike = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror' | 'onmessageerror'>;

export interface WorkerParts {
  readonly startWorker: () => WorkerLike;
  /** How long the worker may take to say that it is ready, ms. */
  readonly patience: number;
  /** How long the worker is kept without work, ms. */
  readonly idle: number;
}

/** Who is told what becomes of it. */
interface Owner {
  ready(): void;
  answered(answer: Exclude<Answer, { ready: true }>): void;
  /** It could not start, was not ready in time, or died: it has ended. */
  failed(): void;
}

export interface WorkerLife {
  isReady(): boolean;
  /** It is needed: its owner is told when it is ready, at once if it is so already. */
  wake(): void;
  /** @throws where the arguments cannot cross */
  post(call: Call): void;
  /** It is not needed for now. */
  rest(): void;
  end(): void;
}

export function workerLife({ startWorker, patience, idle }: WorkerParts, owner: Owner): WorkerLife {
  let worker: WorkerLike | undefined;
  let ready = false;
  let readyTimer: ReturnType<typeof setTimeout> | undefined;
  let idleTimer: ReturnType<typeof setTimeout> | undefined;

  function start(): void {
    try {
      worker = startWorker();
    } catch {
      fail();
      return;
    }
    worker.onmessage = ({ data }: MessageEvent<Answer>) => {
      if (!('ready' in data)) {
        owner.answered(data);
        return;
      }
      ready = true;
      clearTimeout(readyTimer);
      owner.ready();
    };
    worker.onerror = fail;
    worker.onmessageerror = fail;
    readyTimer = setTimeout(fail, patience);
  }

  function end(): void {
    clearTimeout(readyTimer);
    clearTimeout(idleTimer);
    worker?.terminate();
    worker = undefined;
    ready = false;
  }

  function fail(): void {
    end();
    owner.failed();
  }

  return {
    isReady: () => ready,
    wake() {
      clearTimeout(idleTimer);
      if (ready) owner.ready();
      else if (!worker) start();
    },
    post: (call) => worker?.postMessage(call),
    rest() {
      idleTimer = setTimeout(end, idle);
    },
    end,
  };
}
