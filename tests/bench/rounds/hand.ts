/** One of the crew: a process of its own that plays the cars it is sent. */
import type { Batch } from './crew.ts';
import { playCar } from './play.ts';
import { playLearning } from './play-learning.ts';

process.on('message', ({ half, family, from, to, off }: Batch) => {
  const play = (car: number) => (off === undefined ? playCar(half, family, car) : playLearning(off, family, car));
  process.send?.(Array.from({ length: to - from }, (_, i) => play(from + i)));
});
