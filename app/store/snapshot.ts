/**
 * A copy of all records beside the database, as they were before the last restore or undo, or a day ago at the most: offered
 * where the database is lost.
 */
import type { Canary } from './canary.ts';
import { databaseSlices, exportFile } from './export.ts';
import type { Ground } from './ground.ts';
import type { Beside } from './kept-beside.ts';
import { STORES } from './schema.ts';

const PREFIX = 'snapshot-';
const LONGEST_FIRST = 1000;

/** The newest is offered; beside it stays the largest of those before, should the newest be of what a loss has left. */
export async function keepSnapshot({ connection, canary, beside, now }: Omit<Ground, 'progress'>): Promise<void> {
  const isEmpty = await connection.withStore(STORES, 'readonly', async (transaction) => {
    const keys = ['cars', 'visits', 'drafts'] as const;
    const found = await Promise.all(keys.map((store) => transaction.objectStore(store).getAllKeys(undefined, 1)));
    return found.flat().length === 0;
  });
  if (isEmpty) return;
  const old = await namesIn(beside);
  const at = now();
  const name = `${PREFIX}${at.replace(/\W/g, '-')}${writesOf(canary)}`;
  await beside.keep(name, await exportFile(databaseSlices(connection, canary.look, []), at));
  const largest = await largestOf(beside, old);
  for (const one of old) if (one !== name && one !== largest) await beside.forget(one);
}

async function largestOf(beside: Beside, names: readonly string[]): Promise<string | undefined> {
  let largest: { readonly name: string; readonly size: number } | undefined;
  for (const name of names) {
    const size = (await beside.read(name))?.size ?? 0;
    if (size > (largest?.size ?? 0)) largest = { name, size };
  }
  return largest?.name;
}

/** Of which database and after how many writes. */
function writesOf(canary: Canary): string {
  const { database, writes } = canary.last();
  return `-of-${database}-${writes}`;
}
/** Less than a day, as a shop does not open at the same minute, ms. */
const A_DAY = 20 * 3_600_000;

/** A new copy, where the last is of a day ago and something was written since; none of what a loss or a restore has left. */
export async function keepDaily(ground: Omit<Ground, 'progress'>): Promise<void> {
  const { canary, beside, way, now } = ground;
  if (canary.loss.value || (await way.underWay())) return;
  if ((await namesIn(beside)).at(-1)?.endsWith(writesOf(canary))) return;
  const last = await snapshotIn(beside);
  if (last && Date.parse(now()) - Date.parse(last.made) < A_DAY) return;
  await keepSnapshot(ground);
}

/** @returns the copy and when it was made, ISO 8601 */
export async function snapshotIn(beside: Beside): Promise<{ file: Blob; made: string } | undefined> {
  const name = (await namesIn(beside)).at(-1);
  const file = name === undefined ? undefined : await beside.read(name);
  if (!file) return undefined;
  const start = await file.slice(0, LONGEST_FIRST).text();
  return { file, made: String(JSON.parse(start.split('\n', 1)[0]!).made) };
}

const namesIn = async (beside: Beside): Promise<readonly string[]> =>
  (await beside.names()).filter((name) => name.startsWith(PREFIX));
