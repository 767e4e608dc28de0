/** An empty phone on which backups are looked at and restored, one after another: emptied again, so that each finds it so. */
import { CANARY, STORES } from '../../../app/store/schema.ts';
import { createStore, type Store } from '../../../app/store/store.ts';
import type { Stores } from '../../../core/records/stored.ts';

export interface Phone {
  inspect: Store['inspect'];
  /** @returns what is on it then; after that it is empty again */
  restore(file: Blob): Promise<Stores>;
  /** Where a restore came to no good end. */
  throwAway(): void;
}

let phones = 0;

export function newPhone(): Phone {
  phones += 1;
  const name = `phone-${phones}`;
  const store = createStore(name);
  return {
    inspect: store.inspect,
    async restore(file) {
      await store.restore(file);
      const all = await store.load();
      await empty(name);
      return all;
    },
    throwAway() {
      store.close();
      indexedDB.deleteDatabase(name);
    },
  };
}

/** Without the app: but for its count of writes, which would take it for a browser that has lost the records. */
function empty(name: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open(name);
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const database = opening.result;
      const transaction = database.transaction(STORES, 'readwrite');
      for (const store of STORES) if (store !== 'preferences') transaction.objectStore(store).clear();
      const preferences = transaction.objectStore('preferences');
      preferences.delete(IDBKeyRange.upperBound(CANARY, true));
      preferences.delete(IDBKeyRange.lowerBound(CANARY, true));
      transaction.oncomplete = () => {
        database.close();
        resolve();
      };
      transaction.onabort = () => reject(transaction.error);
    };
  });
}
