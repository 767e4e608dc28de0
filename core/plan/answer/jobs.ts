/** Moves that are one job, side by side in the working order. */
import { jobOf } from '../../adjuster/job.ts';
import type { Adjuster, Car, Corner } from '../../contract.ts';
import type { JobEnd, JobPart } from '../../said.ts';

interface Step {
  readonly corner: Corner;
  readonly adjuster: Adjuster;
  /** Less is earlier. */
  readonly rank: number;
  readonly byRack?: boolean;
}

/** Which of a job is made first. */
const ENDS: readonly JobEnd[] = ['left', 'right', 'front', 'rear'];

/**
 * Steps in working order, job by job: a job stands where the earliest of its steps does, and what goes by the rack comes
 * last in it. One alone has no mark.
 */
export function inJobs<T extends Step>(car: Car, steps: readonly T[]): (readonly (T & { readonly job?: JobPart })[])[] {
  const jobs = new Map<string, (T & { readonly job?: JobPart })[]>();
  for (const step of [...steps].sort((a, b) => a.rank - b.rank)) {
    const job = jobOf(car, { corner: step.corner, adjuster: step.adjuster.id });
    const key = job?.id ?? `${step.corner} ${step.adjuster.id}`;
    jobs.set(key, [...(jobs.get(key) ?? []), { ...step, ...(job && { job }) }]);
  }
  const place = ({ job, byRack = false }: Pick<Step, 'byRack'> & { readonly job?: JobPart }): number =>
    (job ? ENDS.indexOf(job.end) : 0) + (byRack ? ENDS.length : 0);
  return [...jobs.values()].map((all) =>
    all.length > 1 ? all.sort((a, b) => place(a) - place(b)) : all.map(({ job: _, ...alone }) => alone as unknown as T),
  );
}
