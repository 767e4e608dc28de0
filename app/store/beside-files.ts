/** Beside the database, in the page's own file system. */
import type { Beside } from './kept-beside.ts';

/** Nothing where the browser has none, or does not let a page write to it. */
export async function besideInFiles(folder: string): Promise<Beside | undefined> {
  const canWrite = typeof FileSystemFileHandle !== 'undefined' && 'createWritable' in FileSystemFileHandle.prototype;
  if (!canWrite) return undefined;
  try {
    const root = await navigator.storage.getDirectory();
    return filesIn(await root.getDirectoryHandle(folder, { create: true }));
  } catch {
    // Private windows.
    return undefined;
  }
}

function filesIn(folder: FileSystemDirectoryHandle): Beside {
  const isMissing = (error: unknown): boolean => error instanceof DOMException && error.name === 'NotFoundError';
  return {
    async keep(name, content) {
      // It is written elsewhere, and takes its place when it is closed.
      const file = await (await folder.getFileHandle(name, { create: true })).createWritable();
      try {
        await file.write(content);
      } catch (error) {
        await file.abort().catch(() => undefined);
        throw error;
      }
      await file.close();
    },
    async read(name) {
      try {
        const file = await (await folder.getFileHandle(name)).getFile();
        // One that was never closed is empty, and none of ours is.
        return file.size > 0 ? file : undefined;
      } catch (error) {
        if (isMissing(error)) return undefined;
        throw error;
      }
    },
    async names() {
      const names: string[] = [];
      for await (const name of folder.keys()) names.push(name);
      return names.sort();
    },
    async forget(name) {
      await folder.removeEntry(name).catch((error: unknown) => {
        if (!isMissing(error)) throw error;
      });
    },
    close: () => undefined,
  };
}
