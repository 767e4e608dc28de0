/**
 * The worker that reads backups, kept from one file to the next: to start one takes longer than to read most files. What is
 * read and how is the app's; of the worker's own state there is but the file at which it is.
 */
import type { Asked, Told } from '../../../app/store/backup-worker.ts';

type Handler<E> = ((event: E) => void) | null;

const Started = globalThis.Worker;
let idle: Worker | undefined;

/** The least that a worker took to be ready, ms: what a file would have waited for if it had had a worker of its own. */
export let readerStart = Number.POSITIVE_INFINITY;

/** The next file has a new one. */
export function endReader(): void {
  idle?.terminate();
  idle = undefined;
}

/** As `Worker`, for one file. */
class Reader {
  onmessage: Handler<MessageEvent<Told>> = null;
  onerror: Handler<ErrorEvent> = null;
  onmessageerror: Handler<MessageEvent> = null;
  private readonly worker: Worker;
  /** Answers that are still to come. */
  private open = 0;
  private isEnded = false;

  constructor(url: string | URL, options?: WorkerOptions) {
    const kept = idle;
    idle = undefined;
    const start = performance.now();
    this.worker = kept ?? new Started(url, options);
    this.worker.onmessage = (event: MessageEvent<Told>) => {
      if ('ready' in event.data) readerStart = Math.min(readerStart, performance.now() - start);
      else this.open -= 1;
      if (!this.isEnded) this.onmessage?.(event);
      else this.giveBack();
    };
    const broken = (pass: () => void) => () => {
      this.isEnded = true;
      this.worker.terminate();
      pass();
    };
    this.worker.onerror = (event) => broken(() => this.onerror?.(event))();
    this.worker.onmessageerror = (event) => broken(() => this.onmessageerror?.(event))();
    if (kept) queueMicrotask(() => this.onmessage?.(new MessageEvent('message', { data: { ready: true } as const })));
  }

  postMessage(asked: Asked): void {
    if ('more' in asked) this.open += 1;
    this.worker.postMessage(asked);
  }

  terminate(): void {
    if (this.isEnded) return;
    this.isEnded = true;
    this.giveBack();
  }

  /** Once nothing of this file can come any more. */
  private giveBack(): void {
    if (this.open > 0) return;
    if (idle) this.worker.terminate();
    else idle = this.worker;
  }
}

globalThis.Worker = new Proxy(Started, {
  construct: (_, [url, options]) =>
    String(url).includes('backup-worker') ? new Reader(url, options) : new Started(url, options),
});
