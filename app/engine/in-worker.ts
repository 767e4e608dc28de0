/**
 * Jobs run in a worker. One that nobody waits for any more is let run out, as a worker that has run for a while has
 * compiled code, which is worth more than the moment that a call mostly takes; what takes longer is stopped by ending its
 * worker. So is what is waited for and has no end: whoever waits is told, and the next call gets a fresh worker.
 */
import { type Job, type Runner, settle, TookTooLong } from './job.ts';
import { type WorkerParts, workerLife } from './worker-life.ts';

export interface RunnerParts extends WorkerParts {
  /** How long a call that nobody waits for any more may go on, ms. */
  readonly runOut: number;
  /** How long a call may take, ms. */
  readonly longest: number;
}

/** @param failed told when the worker has failed: then this runner is of no more use */
export function workerRunner(parts: RunnerParts, failed: () => void): Runner {
  let running: Job | undefined;
  let over: () => void;
  let runOutTimer: ReturnType<typeof setTimeout> | undefined;
  let longestTimer: ReturnType<typeof setTimeout> | undefined;

  const life = workerLife(parts, {
    ready() {
      if (!running) return;
      const { id, name, args } = running;
      try {
        life.post({ id, name, args });
        longestTimer = setTimeout(stop, parts.longest);
      } catch (error) {
        // The arguments cannot cross.
        running.reject(error as Error);
        finish();
      }
    },
    answered(answer) {
      if (answer.id !== running?.id) return;
      settle(running, answer);
      finish();
    },
    failed() {
      clearTimeout(runOutTimer);
      clearTimeout(longestTimer);
      failed();
    },
  });

  function finish(): void {
    running = undefined;
    clearTimeout(runOutTimer);
    clearTimeout(longestTimer);
    over();
  }

  function stop(): void {
    life.end();
    running?.reject(new TookTooLong());
    finish();
  }

  return {
    run(job, whenOver) {
      running = job;
      over = whenOver;
      life.wake();
    },
    abandon() {
      if (life.isReady()) {
        clearTimeout(longestTimer);
        runOutTimer = setTimeout(() => {
          life.end();
          finish();
        }, parts.runOut);
        return false;
      }
      // One that has not begun yet leaves its worker to the next call.
      running = undefined;
      return true;
    },
    rest: life.rest,
  };
}
