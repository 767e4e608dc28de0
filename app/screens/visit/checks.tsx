/** First load. Before you measure: ticked or noted, never in the way. */
import type { VisitRecord } from '../../../core/records/stored.ts';
import { marked, otherNotes } from '../../../core/records/visit-facts.ts';
import { keep, records } from '../../state/records.ts';
import { byId, now } from '../../store/index.ts';

export const CHECKS = [
  ['pressure', 'Tyre pressures set, tyres alike'],
  ['height', 'Ride height within the maker’s limits'],
  ['joints', 'Ball joints, rod ends and bushes sound'],
  ['bearing', 'Wheel bearings without play'],
  ['wheel', 'Steering wheel level and clamped'],
  ['pins', 'Turntable pins out'],
  ['load', 'Load and fuel as the maker asks'],
] as const;

export const checksDone = ({ checks }: VisitRecord): number => CHECKS.filter(([id]) => checks?.[id]).length;

export function ChecksBody({ visit }: { readonly visit: VisitRecord }) {
  const put = (check: string, text: string) => {
    const latest = byId(records.value.visits, visit.id) ?? visit;
    keep(['visits', marked(latest, { checks: { [check]: text } }, now())]);
  };
  return (
    <div class="ticks">
      {CHECKS.map(([id, label]) => {
        const state = visit.checks?.[id] ?? '';
        return (
          <div key={id} class="check">
            <label>
              <input
                type="checkbox"
                checked={state === 'ok'}
                disabled={Boolean(visit.closed)}
                onChange={(event) => put(id, event.currentTarget.checked ? 'ok' : '')}
              />
              <span>{label}</span>
            </label>
            <input
              type="text"
              aria-label={`Note: ${label}`}
              placeholder="or a note"
              maxLength={200}
              disabled={Boolean(visit.closed)}
              value={state === 'ok' ? '' : state}
              onInput={(event) => put(id, event.currentTarget.value)}
            />
            {otherNotes(visit, id).map((note) => (
              <p key={note} class="soft">
                Also noted on another phone: {note}
              </p>
            ))}
          </div>
        );
      })}
    </div>
  );
}
