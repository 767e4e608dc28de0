/** A visit is live in one window at a time: another one shows it, follows it, and can take it over. */
import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { type Hold, holdAlone, store } from '../store/index.ts';
import { reloadRecords } from './records.ts';

/** The visit of this window is live in another one: nothing is written here. */
export const alongside = signal(false);
let hold: Hold | undefined;

/** Has the visit in hand while its screen is open. */
export function useOneWindow(visitId: string): void {
  useEffect(() => {
    const mine = holdAlone(`cornerwright-visit:${visitId}`, (has) => void follow(has));
    hold = mine;
    return () => {
      mine.end();
      alongside.value = false;
    };
  }, [visitId]);
}

export const takeOver = (): void => hold?.take();

/** What the other window wrote is read before anything is written here. */
async function follow(has: boolean): Promise<void> {
  if (has && alongside.value) await reloadRecords().catch(() => undefined);
  else if (!has) void store.flush().catch(() => undefined);
  alongside.value = !has;
}
