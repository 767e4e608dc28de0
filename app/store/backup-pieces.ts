/** The page's side of the reading of a backup: its worker, which is started for a file and ended with it. */
import type { InputError } from '../../core/input-error.ts';
import type { CheckedBackup } from '../../core/records/envelope.ts';
import { errorOf } from '../engine/job.ts';
import type { Asked, Told } from './backup-worker.ts';

/** How long the worker may take to say that it is ready, ms. */
const PATIENCE = 8_000;

type WorkerLike = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror' | 'onmessageerror'>;

const startWorker = (): WorkerLike => new Worker(new URL('./backup-worker.ts', import.meta.url), { type: 'module' });

/**
 * A backup piece by piece; the worker reads one ahead. Where no worker starts, it is read in the page.
 * @throws InputError, and then nothing of it is to be used, what came before it neither
 */
export async function* backupPieces(file: Blob, start: () => WorkerLike = startWorker): AsyncGenerator<CheckedBackup> {
  const worker = await ready(start);
  if (!worker) {
    const { readBackup } = await import('./read-backup.ts');
    yield* readBackup(file);
    return;
  }
  try {
    worker.postMessage({ file } satisfies Asked);
    for (let next = ask(worker); ; ) {
      const told = await next;
      if ('error' in told) throw errorOf(told.error);
      if (!('piece' in told)) return;
      next = ask(worker);
      // Nobody may ask for it any more.
      next.catch(() => undefined);
      // What is set aside is refused input, each of it.
      const aside = told.aside.map((one) => ({ ...one, error: errorOf(one.error) as InputError }));
      yield { ...told.piece, aside };
    }
  } finally {
    worker.terminate();
  }
}

/** The worker once it says that it is there; nothing where that fails. */
function ready(start: () => WorkerLike): Promise<WorkerLike | undefined> {
  return new Promise((resolve) => {
    let worker: WorkerLike;
    try {
      worker = start();
    } catch {
      resolve(undefined);
      return;
    }
    const fail = (): void => {
      clearTimeout(timer);
      worker.terminate();
      resolve(undefined);
    };
    const timer = setTimeout(fail, PATIENCE);
    worker.onmessage = () => {
      clearTimeout(timer);
      resolve(worker);
    };
    worker.onerror = fail;
  });
}

function ask(worker: WorkerLike): Promise<Told> {
  return new Promise((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<Told>) => resolve(data);
    const died = (): void => reject(new Error('The file could not be read to its end: the phone ran short of memory.'));
    worker.onerror = died;
    worker.onmessageerror = died;
    worker.postMessage({ more: true } satisfies Asked);
  });
}
