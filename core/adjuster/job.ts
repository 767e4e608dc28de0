/** Which moves are one job: the same bolts are loosened once for all of them, and nothing is read before all are made. */
import type { Adjuster, AdjusterRef, Car, Suspension } from '../contract.ts';
import { axleOf, isLeft } from '../corners.ts';
import type { JobEnd, JobPart } from '../said.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { linksOf } from '../suspension/joints.ts';
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
  for (const bolt of touches?.(adjuster).points ?? []) {
    const arm = armAt(sideOf(car, corner).suspension, bolt);
    if (arm) return { id: `${corner}/${arm.name}`, end: arm.end, arm: arm.name };
  }
  return undefined;
}

/** The arm that a bolt holds: two links that meet at one joint of the upright are one, called as its points are. */
function armAt({ kind, points }: Suspension, bolt: string): { name: string; end: JobEnd } | undefined {
  const links = linksOf(suspensionKinds[kind] ?? NONE, points);
  const joint = links.find(([body]) => body === bolt)?.[1];
  const bolts = links.filter(([, outer]) => outer === joint).map(([body]) => body);
  const other = bolts.find((one) => one !== bolt);
  if (!other || bolts.length !== 2) return undefined;
  const end = points[bolt]![0] > points[other]![0] ? 'front' : 'rear';
  const alike = [...bolt].findIndex((letter, i) => letter !== other[i]);
  return { name: `${bolt.slice(0, alike)} arm`.trim(), end };
}
const NONE = { kind: '', name: '', points: [], height: false };

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

/** How many jobs it is to move so many adjusters. */
export const jobCount = (car: Car, refs: readonly AdjusterRef[]): number =>
  new Set(refs.map((ref) => jobOf(car, ref)?.id ?? `${ref.corner} ${ref.adjuster}`)).size;
