/** Asking the browser not to clear the records when the phone runs short of room. */
import { type ReadonlySignal, signal } from '@preact/signals';

/** `unknown` until first looked at; `refused` means that a backup matters sooner. */
export type Persistence = 'unknown' | 'granted' | 'refused' | 'unsupported';

const state = signal<Persistence>('unknown');
export const persistence: ReadonlySignal<Persistence> = state;

/** Whether the browser has promised to keep the records. Asks for nothing. */
export async function persisted(): Promise<boolean> {
  const storage = globalThis.navigator?.storage;
  if (!storage?.persisted) {
    state.value = 'unsupported';
    return false;
  }
  const granted = await storage.persisted();
  if (granted) state.value = 'granted';
  return granted;
}

/** Asks for that promise, after the first real record and again after installing. Never throws. */
export async function askToPersist(): Promise<boolean> {
  try {
    const storage = globalThis.navigator?.storage;
    if (!storage?.persist) {
      state.value = 'unsupported';
      return false;
    }
    const granted = (await storage.persisted()) || (await storage.persist());
    state.value = granted ? 'granted' : 'refused';
    return granted;
  } catch {
    state.value = 'refused';
    return false;
  }
}
