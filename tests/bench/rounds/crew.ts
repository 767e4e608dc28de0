/** Plays cars on every core, a few at a time wherever a hand is free: nothing depends on who plays what, or when. */
import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import type { Played } from './play.ts';

/** Cars `from`…`to`−1 of a family. */
export interface Batch {
  readonly half: number;
  readonly family: number;
  readonly from: number;
  readonly to: number;
  /** mm that the true points are off by: played with learning and without; see play-learning.ts. */
  readonly off?: number;
}

interface Job {
  readonly batch: Batch;
  readonly done: (played: readonly unknown[]) => void;
}

const HAND = fileURLToPath(new URL('hand.ts', import.meta.url));

/** Outcomes of every batch's cars, a promise a batch, begun in that order. A hand that fails ends the whole run. */
export function playAll<T = Played>(batches: readonly Batch[]): Promise<readonly (T | undefined)[]>[] {
  const jobs: Job[] = [];
  const played = batches.map(
    (batch) =>
      new Promise<readonly (T | undefined)[]>(
        (done) => void jobs.push({ batch, done: (played) => done(played as readonly (T | undefined)[]) }),
      ),
  );
  for (let i = 0; i < Math.min(availableParallelism(), batches.length); i++) {
    const hand = fork(HAND, { serialization: 'advanced' });
    hand.once('exit', (code) => {
      if (code !== 0) process.exit(code ?? 1);
    });
    void work(hand, jobs);
  }
  return played;
}

async function work(hand: ChildProcess, jobs: Job[]): Promise<void> {
  for (let job = jobs.shift(); job; job = jobs.shift()) {
    hand.send(job.batch);
    const [played] = await once(hand, 'message');
    job.done(played);
  }
  hand.disconnect();
}
