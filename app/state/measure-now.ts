/** A re-measure before all moves of a round are made: what was made stays booked, and the rest is planned from what it reads. */
import { draft, keepDraft } from './records.ts';
import { entryDraft } from './stage.ts';
import { beginEntry } from './visit-actions.ts';
import type { VisitView } from './visits.ts';

/** Key in the entry draft that is no field: there are moves to go back to. */
const EARLY = '@early';

export function measureNow(view: VisitView): void {
  beginEntry(view);
  const id = entryDraft(view.visit.id);
  const { texts = {}, cursor } = draft(id) ?? {};
  keepDraft(id, { ...texts, [EARLY]: 'yes' }, cursor);
}

export const isEarly = ({ visit }: VisitView): boolean => draft(entryDraft(visit.id))?.texts[EARLY] === 'yes';
