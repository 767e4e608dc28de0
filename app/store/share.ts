/** Gives a backup to the person: the share sheet on a phone that takes the file, a download elsewhere. */
import { now } from './clock.ts';
import type { Everything } from './schema.ts';
import type { Store } from './store.ts';

export type BackupWay = 'shared' | 'downloaded' | 'cancelled';

/**
 * Exports everything and hands it over. Once it is in a file, the preference `backup` says when.
 * @param inMemory what the screens hold, in case the database is out of reach
 * @throws StoreError when the records cannot be read and none were given
 */
export async function shareBackup(store: Store, inMemory?: Everything): Promise<BackupWay> {
  const at = now();
  const backup = await store.exportAll(inMemory);
  const way = await handOver(backup, `cornerwright-${at.slice(0, 10)}`);
  // Not awaited: the file is out, whether or not the phone can write this note at present.
  if (way !== 'cancelled') void store.put('preferences', { id: 'backup', value: { at }, changed: at });
  return way;
}

/** Not every browser shares JSON by its own name; the same text with another ending restores as well. */
async function handOver(backup: Blob, name: string): Promise<BackupWay> {
  const files = [
    new File([backup], `${name}.json`, { type: 'application/json' }),
    new File([backup], `${name}.txt`, { type: 'text/plain' }),
  ];
  const file = isHandHeld() ? files.find((one) => navigator.canShare?.({ files: [one] })) : undefined;
  if (!file) return download(files[0] as File);
  try {
    await navigator.share({ files: [file], title: file.name });
    return 'shared';
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return 'cancelled';
    return download(files[0] as File);
  }
}

function isHandHeld(): boolean {
  return matchMedia('(pointer: coarse)').matches;
}

function download(file: File): BackupWay {
  const url = URL.createObjectURL(file);
  const link = Object.assign(document.createElement('a'), { href: url, download: file.name });
  document.body.append(link);
  link.click();
  link.remove();
  // The download starts on its own time; its address must outlive this function.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
  return 'downloaded';
}
