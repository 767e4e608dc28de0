/** What was moved in a visit and has to be torqued before the car goes: at ride height, after the re-measure. */
import type { AdjusterRef } from '../../core/contract.ts';
import { headingOf, inJobs } from './jobs.ts';
import { adjusterOf } from './move-words.ts';
import { UNTORQUED } from './sign-off.ts';
import { choice, torqueKey } from './stage.ts';
import { refKey, type VisitView } from './visits.ts';

export interface Torque {
  /** "LF Upper arm, front and rear" */
  readonly name: string;
  /** Its ticks: of the last round in which each of it was moved. */
  readonly keys: readonly string[];
  /** The user's own figures, as typed; none is made up. */
  readonly figures: readonly string[];
}

/** Job by job. */
export function torquesOf(view: VisitView): readonly Torque[] {
  const { car } = view.car;
  const moved = new Map<string, AdjusterRef & { readonly key: string }>();
  for (const { record, moves } of view.rounds) {
    for (const move of moves) {
      if (move.from === move.to) continue;
      const { corner, adjuster } = move;
      moved.set(refKey(move), { corner, adjuster, key: torqueKey(record.id, move) });
    }
  }
  return inJobs(car, [...moved.values()]).map((job) => {
    const { where, title } = headingOf(car, job);
    return {
      name: `${where} ${title}`,
      keys: job.map((ref) => moved.get(refKey(ref))?.key ?? ''),
      figures: [...new Set(job.flatMap((ref) => adjusterOf(car, ref)?.torque ?? []))],
    };
  });
}

/** Those without a tick: of an open visit in its draft, of a closed one as it was signed off. */
export function untorquedOf(view: VisitView): readonly Torque[] {
  const { visit } = view;
  return torquesOf(view).filter(({ keys }) =>
    keys.some((key) => (visit.closed ? visit.checks?.[key] === UNTORQUED : choice(visit.id, key) !== 'yes')),
  );
}
