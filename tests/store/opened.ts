/** Stores that a test opens; each is closed after it, behind what the test itself cleans up. */
import { afterEach } from 'vitest';
import { createStore, type Store } from '../../app/store/store.ts';
import { freshName } from './records.ts';

const opened: Store[] = [];

/** @param name of the database; without one it is a new one */
export function open(name = freshName()): Store {
  const store = createStore(name);
  opened.push(store);
  return store;
}

/** As a phone is put away in the middle of a test. */
export function closeAll(): void {
  for (const store of opened.splice(0)) store.close();
}

afterEach(closeAll);
