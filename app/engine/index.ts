/** First load: small. Core itself comes with the worker, or as its own chunk where there is none. */
import { createEngine, type Engine } from './client.ts';

export type { CallOptions, Engine } from './client.ts';

export const engine: Engine = createEngine({
  startWorker: () => new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }),
  inPage: async () => (await import('./answer.ts')).answer,
});
