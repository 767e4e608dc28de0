/** A technician's line on a job that was done. It is one of the visit's marks, so that two phones' notes are both kept. */
import type { MoveRecord } from '../../core/records/stored.ts';
import { marked } from '../../core/records/visit-facts.ts';
import { byId, now } from '../store/index.ts';
import { keep, records } from './records.ts';
import type { VisitView } from './visits.ts';

/** Moves never change; the note goes by the first of them. */
const keyOf = ([first]: readonly MoveRecord[]): string => `note:${first?.id}`;

export const noteOf = ({ visit }: VisitView, job: readonly MoveRecord[]): string => visit.checks?.[keyOf(job)] ?? '';

export function setNote({ visit }: VisitView, job: readonly MoveRecord[], text: string): void {
  const latest = byId(records.value.visits, visit.id) ?? visit;
  keep(['visits', marked(latest, { checks: { [keyOf(job)]: text } }, now())]);
}
