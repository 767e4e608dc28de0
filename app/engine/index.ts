/** First load: small. Core itself comes with the worker, or as its own chunk where there is none. */
import type { Car, LiveAngle, Spec } from '../../core/contract.ts';
import { createEngine, type Engine } from './client.ts';
import { REHEARSALS } from './rehearsals.ts';

export type { CallOptions, Engine } from './client.ts';

export const engine: Engine = createEngine({
  startWorker: () => new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }),
  inPage: async () => (await import('./answer.ts')).answer,
});

/**
 * Has the worker rehearse plans of a car, so that the one that is waited for comes at once.
 * @param live what the rack shows while something is turned
 */
export function warmUp(car: Car, spec: Spec, live: readonly LiveAngle[]): void {
  engine.warm(
    'rehearse',
    REHEARSALS.map((off) => [car, spec, off, live] as const),
  );
}
