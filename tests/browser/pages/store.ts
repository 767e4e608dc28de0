/** A page with nothing but the app's store and engine, for the tests that need the real thing in a real browser. */
import { engine } from '../../../app/engine/index.ts';
import { createStore, type Store } from '../../../app/store/store.ts';

declare global {
  interface Window {
    createStore: (name?: string) => Store;
    engine: typeof engine;
  }
}

window.createStore = createStore;
window.engine = engine;
