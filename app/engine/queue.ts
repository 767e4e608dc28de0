/**
 * Jobs in the order in which they were asked for. One runs and the others wait here, so that what is no longer wanted is
 * simply not run.
 */
import { type Job, type Runner, refuse } from './job.ts';

export interface Queue {
  add(job: Job): void;
  /** Nothing happens to a job that has its answer. */
  giveUp(job: Job, why: string): void;
  /** Goes on with another runner, which takes over what the one before has left. */
  use(runner: Runner): void;
}

export function createQueue(): Queue {
  const waiting: Job[] = [];
  /** What runs and is waited for. */
  let running: Job | undefined;
  /** Whether something runs, be it waited for or not. */
  let busy = false;
  let runner: Runner;

  function next(): void {
    if (busy) return;
    running = waiting.shift();
    busy = !!running;
    if (running) runner.run(running, over);
    else runner.rest();
  }

  function over(): void {
    busy = false;
    next();
  }

  function giveUp(job: Job, why: string): void {
    const place = waiting.indexOf(job);
    if (place >= 0) waiting.splice(place, 1);
    else if (running !== job) return;
    refuse(job, why);
    if (place >= 0) return;
    running = undefined;
    if (runner.abandon()) over();
  }

  return {
    add(job) {
      if (job.latest !== undefined) {
        for (const one of [running, ...waiting]) {
          if (one?.latest === job.latest) giveUp(one, 'a newer call took its place');
        }
      }
      waiting.push(job);
      next();
    },
    giveUp,
    use(other) {
      runner = other;
      if (running) runner.run(running, over);
      else if (busy) over();
    },
  };
}
