/** First load. The count of writes in a file of the page's own: see below. Where there are none, nothing is kept. */

/** The database that a write went to, and how many it had then. */
export interface Mark {
  readonly database: string;
  readonly writes: number;
}

/** Where a count reaches the disk with the write it counts; in localStorage it does seconds later. */
export interface MarkFile {
  read(): Promise<Mark | undefined>;
  /** Ends when this count, or a later one, is kept; none: nothing is. Never throws. */
  keep(mark: Mark | undefined): Promise<void>;
}

/** Longer than that no write waits for it, ms. */
const PATIENCE = 1_000;

export function markFile(name: string, is: (value: unknown) => value is Mark): MarkFile {
  let opening: Promise<FileSystemFileHandle> | undefined;
  let newest: { readonly mark: Mark | undefined } | undefined;
  let writing: Promise<void> | undefined;
  const canWrite = typeof FileSystemFileHandle !== 'undefined' && 'createWritable' in FileSystemFileHandle.prototype;
  const file = (): Promise<FileSystemFileHandle> => {
    opening ??= navigator.storage.getDirectory().then((root) => root.getFileHandle(name, { create: true }));
    return opening;
  };

  /** Of those that wait, the newest is written for all. */
  async function write(): Promise<void> {
    const text = JSON.stringify(newest?.mark ?? null);
    newest = undefined;
    // It takes the place of the one before when it is closed.
    const writable = await (await file()).createWritable();
    await writable.write(text);
    await writable.close();
  }
  async function writeInTurn(before: Promise<void> | undefined): Promise<void> {
    await before;
    // What cannot be remembered here is only a check less.
    if (newest) await write().catch(() => undefined);
  }

  return {
    async read() {
      if (!canWrite) return undefined;
      try {
        const value: unknown = JSON.parse(await (await (await file()).getFile()).text());
        return is(value) ? value : undefined;
      } catch {
        return undefined;
      }
    },
    async keep(mark) {
      if (!canWrite) return;
      newest = { mark };
      writing = writeInTurn(writing);
      await Promise.race([writing, new Promise<void>((done) => setTimeout(done, PATIENCE))]);
    },
  };
}
