/** One of the crew: a process of its own that plays the cars it is sent. */
import type { Batch } from './crew.ts';
import { playCar } from './play.ts';

process.on('message', ({ half, family, from, to }: Batch) => {
  process.send?.(Array.from({ length: to - from }, (_, i) => playCar(half, family, from + i)));
});
