/**
 * First load. A new log for each start. Where the browser is killed while it appends to the log of its databases, half an
 * entry stays at the end; the next start goes on behind it, and the one after that cannot read past it and throws all away
 * (seen of Chromium 156; `tests/browser/torn-log.spec.ts`). A database that is deleted is compacted, and for that the log is
 * begun anew: so an empty one is made and deleted before anything is written.
 */
import { deleteDB, openDB } from 'idb';

/** Longer than that nothing waits for a precaution, ms. */
const PATIENCE = 2_000;

/** Never throws. @param name of the database that is to be kept */
export async function freshLog(name: string): Promise<void> {
  const patience = new Promise<void>((done) => setTimeout(done, PATIENCE));
  // No room, or no database: then nothing is being written either.
  await Promise.race([makeAndDelete(`${name}-log`), patience]).catch(() => undefined);
}

async function makeAndDelete(name: string): Promise<void> {
  const empty = await openDB(name, 1, { upgrade: (database) => void database.createObjectStore('empty') });
  empty.close();
  await deleteDB(name);
}
