/** First load. The store of this device and what the screens may know of it. */
import { createStore, type Store } from './store.ts';

export type { CutOff, Preview } from './backup.ts';
export { breather } from './breath.ts';
export { ClearedError } from './canary.ts';
export { newId, now } from './clock.ts';
export { StoreError } from './failure.ts';
export { byId, ownedBy, withRecords } from './lists.ts';
export { type Hold, holdAlone, inTurn } from './one-window.ts';
export type { Loss } from './outside.ts';
export { askToPersist, type Persistence, persistence } from './persistence.ts';
export type { Wanted } from './read-parts.ts';
export type { Entry, Everything, RecordOf, StoreName } from './schema.ts';
export { type BackupWay, shareBackup } from './share.ts';
export type { Store } from './store.ts';
export type { SaveState } from './writer.ts';

/** Opens its database when it is first used. */
export const store: Store = createStore();
