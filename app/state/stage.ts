/** First load. Which step of a visit is live, from its records and the few choices kept in its draft. */
import type { AdjusterRef } from '../../core/contract.ts';
import { draft, dropDraft, keepDraft, records } from './records.ts';
import { refKey, type VisitView } from './visits.ts';

export type Stage = 'entry' | 'standing' | 'moves' | 'compare' | 'sign-off' | 'closed';

export const entryDraft = (visitId: string): string => `reading:${visitId}`;
export const visitDraft = (visitId: string): string => `visit:${visitId}`;

/** Keys in the entry draft that are not fields. */
export const ENTRY_STEP = '@step';
/** The reading that the entry corrects. */
export const ENTRY_REPLACES = '@replaces';

/**
 * The live step as far as records tell. `moves` with nothing left to do passes into the next entry: only the plan
 * knows, so the strip decides that.
 */
export function stageOf(view: VisitView): Stage {
  if (view.visit.closed) return 'closed';
  const entry = draft(entryDraft(view.visit.id));
  if (entry) return entry.texts[ENTRY_STEP] === 'standing' ? 'standing' : 'entry';
  const last = view.rounds.at(-1);
  if (!last) return 'entry';
  const choices = draft(visitDraft(view.visit.id))?.texts ?? {};
  if (choices.signOff === last.record.id) return 'sign-off';
  if (view.rounds.length === 1 || choices.goOn === last.record.id || last.moves.length > 0) return 'moves';
  return 'compare';
}

/** Keeps a choice made in this visit: what is ticked, whether to go another round, whether to sign off. */
export function choose(visitId: string, change: Readonly<Record<string, string>>): void {
  const id = visitDraft(visitId);
  keepDraft(id, { ...draft(id)?.texts, ...change }, undefined);
}

export function choice(visitId: string, key: string): string {
  return draft(visitDraft(visitId))?.texts[key] ?? '';
}

/** The tick that a move of this round was torqued: the same adjuster moved again in a later round is ticked again. */
export const torqueKey = (roundId: string, ref: AdjusterRef): string => `torque:${roundId}:${refKey(ref)}`;

/** Closing a visit ends its drafts: what they held is in its records. */
export function dropVisitDrafts(visitId: string): void {
  for (const { id } of records.value.drafts) {
    if (id === entryDraft(visitId) || id === visitDraft(visitId)) dropDraft(id);
  }
}
