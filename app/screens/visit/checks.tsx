/** Before you measure: ticked or noted, never in the way. */
import type { VisitRecord } from '../../../core/records/stored.ts';
import { marked, otherNotes } from '../../../core/records/visit-facts.ts';
import { keep, records } from '../../state/records.ts';
import { distanceIn, odometerOf, setOdometer, setTechnicianOf, technicianOf } from '../../state/visit-notes.ts';
import { byId, now } from '../../store/index.ts';
import { CHECKS } from './check-list.ts';

export function ChecksBody({ visit }: { readonly visit: VisitRecord }) {
  const put = (check: string, text: string) => {
    const latest = byId(records.value.visits, visit.id) ?? visit;
    keep(['visits', marked(latest, { checks: { [check]: text } }, now())]);
  };
  const open = CHECKS.map(([id]) => id).filter((id) => !visit.checks?.[id]);
  const all = () => {
    const latest = byId(records.value.visits, visit.id) ?? visit;
    keep(['visits', marked(latest, { checks: Object.fromEntries(open.map((id) => [id, 'ok'])) }, now())]);
  };
  return (
    <div class="ticks">
      <VisitNotes visit={visit} />
      {!visit.closed && open.length > 1 && (
        <button type="button" class="quiet wide" onClick={all}>
          {open.length === CHECKS.length ? `All ${open.length} are right` : `The other ${open.length} are right`}
        </button>
      )}
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

/** For the sheet, if wanted. */
function VisitNotes({ visit }: { readonly visit: VisitRecord }) {
  const { text, unit } = odometerOf(visit);
  const isClosed = Boolean(visit.closed);
  const isWrong = text !== '' && distanceIn(text) === undefined;
  return (
    <div class="visit-notes">
      <label class="field">
        <span>Odometer, {unit === 'mi' ? 'miles' : 'km'}</span>
        <input
          type="text"
          inputMode="numeric"
          maxLength={12}
          disabled={isClosed}
          value={text}
          aria-invalid={isWrong}
          onInput={(event) => setOdometer(visit, event.currentTarget.value)}
        />
        {isWrong && (
          <span class="wrong" role="alert">
            Odometer: up to 7 digits, as the dash shows them
          </span>
        )}
      </label>
      <label class="field">
        <span>Technician</span>
        <input
          type="text"
          maxLength={120}
          disabled={isClosed}
          value={technicianOf(visit)}
          onInput={(event) => setTechnicianOf(visit, event.currentTarget.value)}
        />
      </label>
      {(['odometer', 'technician'] as const).flatMap((name) =>
        otherNotes(visit, name).map((other) => (
          <p key={name + other} class="soft">
            Also noted on another phone: {other}
          </p>
        )),
      )}
    </div>
  );
}
