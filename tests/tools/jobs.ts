/** The jobs of a plan as they are told: one sentence each, whatever moves they are. */
import { jobsOf } from '../../core/adjuster/job.ts';
import type { Move, Plan } from '../../core/contract.ts';
import { wordsOf } from '../../core/words/catalogue.ts';

export const jobsIn = ({ moves }: Pick<Plan, 'moves'>): readonly (readonly Move[])[] => jobsOf(moves);

export function sentence(job: readonly Move[]): string {
  const [first] = job as readonly [Move];
  if (job.length === 1 || job.some(({ setBy }) => setBy)) return job.map(({ instruction }) => instruction).join(' ');
  return wordsOf().job(
    job.map(({ job: part, act }) => ({ end: part!.end, act })),
    first.job?.arm,
  );
}
