/** Jobs run in the page, where there is no worker to run them. */
import { type Job, type Runner, refuse, settle } from './job.ts';
import type { Answer, Call } from './messages.ts';

/** @param load loads core into the page */
export function pageRunner(load: () => Promise<(call: Call) => Answer>): Runner {
  let running: Job | undefined;

  return {
    async run(job, over) {
      running = job;
      try {
        if (job.workerOnly) refuse(job, 'no worker');
        else {
          const answer = await load();
          if (running === job) settle(job, answer(job));
        }
      } catch (error) {
        job.reject(error as Error);
      }
      if (running === job) over();
    },
    abandon() {
      running = undefined;
      return true;
    },
    rest() {},
  };
}
