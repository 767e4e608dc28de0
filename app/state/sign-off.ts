/** A visit signed off and opened again, and what was ticked in it. */
import type { VisitRecord } from '../../core/records/stored.ts';
import { marked } from '../../core/records/visit-facts.ts';
import { byId, now } from '../store/index.ts';
import { draft, keep, keepDraft, records } from './records.ts';
import { choice, dropVisitDrafts, visitDraft } from './stage.ts';
import { unsignedKey } from './unsigned.ts';
import type { VisitView } from './visits.ts';

/** What a visit's checks say of a move that was signed off without its tick. */
export const UNTORQUED = 'not ticked';

/**
 * Signed off: what was ticked goes into the visit, its drafts end.
 * @param untorqued the torque ticks that are missing, as somebody was told
 */
export function signOff(view: VisitView, untorqued: readonly string[] = []): void {
  const ticks = Object.entries(draft(visitDraft(view.visit.id))?.texts ?? {}).filter(
    ([key, text]) => text === 'yes' && isTick(key),
  );
  const checks = Object.fromEntries([
    ...untorqued.map((key) => [key, UNTORQUED] as const),
    ...ticks.map(([key]) => [key, 'ok'] as const),
  ]);
  const at = now();
  keep(['visits', marked(view.visit, { closed: at, checks }, at)]);
  dropVisitDrafts(view.visit.id);
}

/**
 * Closed as it stands, signed off by nobody. What is half typed stays as it is, so that its undo brings back all.
 * @param untorqued the torque ticks that are missing: the sheet says it, as nobody was asked
 */
export function leaveAsItStands(view: VisitView, untorqued: readonly string[]): void {
  const at = now();
  const checks = Object.fromEntries([
    ...untorqued.map((key) => [key, UNTORQUED] as const),
    [unsignedKey(at), 'ok'] as const,
  ]);
  keep(['visits', marked(view.visit, { closed: at, checks }, at)]);
}

/** The undo of that. */
export function standsOpen({ id }: Pick<VisitRecord, 'id'>): void {
  const visit = byId(records.value.visits, id);
  if (visit) keep(['visits', marked(visit, { closed: '' }, now())]);
}

const isTick = (key: string): boolean => /^(left|torque):/.test(key);

/** The undo of signing off; its ticks come back too. */
export function openAgain(view: VisitView): void {
  const visit = marked(view.visit, { closed: '' }, now());
  const ticks = Object.entries(visit.checks ?? {}).filter(([key, text]) => text === 'ok' && isTick(key));
  const last = view.rounds.at(-1)?.record.id ?? '';
  keep(['visits', visit]);
  keepDraft(
    visitDraft(visit.id),
    { ...Object.fromEntries(ticks.map(([key]) => [key, 'yes'])), signOff: last },
    undefined,
  );
}

/** Whether something was ticked, in the draft of an open visit or in a closed one. */
export const isTicked = ({ visit }: VisitView, key: string): boolean =>
  choice(visit.id, key) === 'yes' || (Boolean(visit.closed) && visit.checks?.[key] === 'ok');
