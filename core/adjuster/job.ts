/** Which moves are one job: the same bolts are loosened once for all of them, and nothing is read before all are made. */
import type { Adjuster, AdjusterRef, Car } from '../contract.ts';
import { axleOf, isLeft } from '../corners.ts';
import type { JobPart } from '../said.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { adjusterKinds } from './catalogue.ts';
import { adjustersOf, sideOf } from './of-corner.ts';

/** The job that moving an adjuster of a validated car is a part of; nothing where it is always one of its own. */
export function jobOf(car: Car, ref: AdjusterRef): JobPart | undefined {
  const adjuster = adjustersOf(car, ref.corner).find(({ id }) => id === ref.adjuster);
  return adjuster && (axleJob(car, ref, adjuster) ?? armJob(car, ref, adjuster));
}

function axleJob(car: Car, { corner }: AdjusterRef, { id, kind }: Adjuster): JobPart | undefined {
  const axle = axleOf(corner);
  const { wholeAxle, job } = adjusterKinds[kind] ?? {};
  const onLinks = suspensionKinds[car[axle].suspension.kind]?.rigidAxle?.onLinks;
  if (!wholeAxle && !(job === 'axle' && onLinks)) return undefined;
  return { id: `${axle}/${id}`, end: isLeft(corner) ? 'left' : 'right' };
}

function armJob(car: Car, { corner }: AdjusterRef, adjuster: Adjuster): JobPart | undefined {
  const { job, touches } = adjusterKinds[adjuster.kind] ?? {};
  if (job !== 'arm') return undefined;
  const { arms = [] } = suspensionKinds[sideOf(car, corner).suspension.kind] ?? {};
  for (const { name, ends } of arms) {
    const point = touches?.(adjuster).points?.find((one) => Object.hasOwn(ends, one));
    if (point) return { id: `${corner}/${name}`, end: ends[point]!, arm: name };
  }
  return undefined;
}

/** Neighbours of the same job as one, in the order in which they stand; what is a job of its own alone. */
export function jobsOf<T extends { readonly job?: JobPart }>(moves: readonly T[]): (readonly T[])[] {
  const jobs: T[][] = [];
  for (const move of moves) {
    const last = jobs.at(-1);
    if (last && move.job && last[0]!.job?.id === move.job.id) last.push(move);
    else jobs.push([move]);
  }
  return jobs;
}
