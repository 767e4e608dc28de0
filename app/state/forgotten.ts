/** First load. A visit that stands open and that nobody has touched for a day: forgotten on the rack. */
import type { VisitRecord } from '../../core/records/stored.ts';
import { ownedBy } from '../store/index.ts';
import { shortDay } from './days.ts';
import { workOn } from './gone.ts';
import type { Records } from './records.ts';

const DAY = 24 * 60 * 60 * 1000;

/** Since when it stands open, `3 Nov`; nothing of one that is closed, or was touched in the last day. @param now ms */
export function openSince(all: Records, visit: VisitRecord, now = Date.now()): string | undefined {
  if (visit.closed) return undefined;
  const written = [...ownedBy(all.readings, visit.id), ...ownedBy(all.moves, visit.id)].map(({ at }) => at);
  const times = [visit.opened, workOn(all, visit).latest, ...written].map((time) => Date.parse(time ?? ''));
  const latest = Math.max(...times.filter((time) => !Number.isNaN(time)));
  return now - latest < DAY ? undefined : shortDay(visit.opened);
}
