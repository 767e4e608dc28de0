/** Faults of storage as the platform shows each of them, for as long as they last; and whatever mends itself. */
import { vi } from 'vitest';
import { asked, clear } from './app.ts';

export interface Fault {
  /** From here on it is so. */
  begin(name: string): Promise<void>;
  /** No longer. */
  end(): void;
  /** Nothing reaches the disk while it lasts. Otherwise the app gets over it by itself. */
  readonly lasts: boolean;
  /** What the save state has to hold of it. */
  readonly says: RegExp;
}

type Strike = (transaction: IDBTransaction, nth: number) => void;
let onPut: Strike | undefined;
let onTransaction: (() => void) | undefined;
/** By how much the schema is newer than the code knows: for an upgrade that has to wait. */
let ahead = 0;

/** Lays the faults under the platform. `restoreAllMocks` takes them out. */
export function arm(): void {
  const { put, delete: remove } = IDBObjectStore.prototype;
  const { transaction } = IDBDatabase.prototype;
  const { open } = IDBFactory.prototype;
  const asked = new WeakMap<IDBTransaction, number>();
  const struck = (target: IDBObjectStore): void => {
    // Those of the app: another hand's are left alone.
    if (target.transaction.durability !== 'strict') return;
    const nth = (asked.get(target.transaction) ?? 0) + 1;
    asked.set(target.transaction, nth);
    onPut?.(target.transaction, nth);
  };
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
    struck(this);
    return put.apply(this, args);
  });
  vi.spyOn(IDBObjectStore.prototype, 'delete').mockImplementation(function (this: IDBObjectStore, ...args) {
    struck(this);
    return remove.apply(this, args);
  });
  vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (this: IDBDatabase, ...args) {
    if (args[2]) onTransaction?.();
    return transaction.apply(this, args);
  });
  vi.spyOn(IDBFactory.prototype, 'open').mockImplementation(function (this: IDBFactory, name, version) {
    return open.call(this, name, version === undefined ? undefined : version + ahead);
  });
}

/** Aborts as the browser does it: after all is asked for, when it comes to the disk. */
function abortWith(error: string | null): Strike {
  return (transaction, nth) => {
    if (nth > 1) return;
    transaction.commit = () => undefined;
    // fake-indexeddb's own way of it, for a cause that no script can give.
    queueMicrotask(() => (transaction as unknown as { _abort(error: string | null): void })._abort(error));
  };
}
const putFault = (strike: Strike, says: RegExp): Fault => ({
  async begin() {
    onPut = strike;
  },
  end() {
    onPut = undefined;
  },
  lasts: true,
  says,
});
const isDead = (): never => {
  throw new DOMException('The database connection is closing.', 'InvalidStateError');
};

/** The other tab's connection. */
let holder: IDBDatabase | undefined;
/** For a look at the disk: nobody else gets a connection while it is held. */
export const heldOpen = (): IDBDatabase | undefined => holder;
export const FAULTS: Readonly<Record<string, Fault>> = {
  'no room': putFault(abortWith('QuotaExceededError'), /There is no room left/),
  'an abort': putFault(abortWith(null), /could not reach its records/),
  'a throw at the first record': putFault(() => {
    throw new DOMException('as the phone says', 'DataError');
  }, /DataError/),
  'a throw in the middle': putFault((_, nth) => {
    if (nth > 1) throw new DOMException('as the phone says', 'UnknownError');
  }, /UnknownError/),
  'a closed connection': {
    async begin() {
      onTransaction = isDead;
    },
    end() {
      onTransaction = undefined;
    },
    lasts: true,
    says: /InvalidStateError/,
  },
  'an upgrade that is blocked': {
    // The connection dies; a new one has to bring the schema up to date, which another tab does not let it.
    async begin(name) {
      holder = await asked(indexedDB.open(name));
      ahead += 1;
      onTransaction = () => {
        onTransaction = undefined;
        isDead();
      };
    },
    end() {
      onTransaction = undefined;
      holder?.close();
      holder = undefined;
    },
    lasts: true,
    says: /Another tab still runs an older Cornerwright/,
  },
  'a database that was cleared': { begin: clear, end: () => undefined, lasts: false, says: /has cleared the records/ },
  'a database that vanishes': {
    // Under the write: nobody waits for it to be gone.
    async begin(name) {
      indexedDB.deleteDatabase(name);
    },
    end: () => undefined,
    lasts: false,
    says: /has cleared the records/,
  },
};
