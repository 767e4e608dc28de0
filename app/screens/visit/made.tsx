/** Jobs that were done, the last one open to being taken back. */

import { useState } from 'preact/hooks';
import type { MoveRecord } from '../../../core/records/stored.ts';
import { CornerMark } from '../../parts/corner-mark.tsx';
import { headingOf, jobStands, jobsMade, jobWay } from '../../state/jobs.ts';
import { noteOf, setNote } from '../../state/move-note.ts';
import { dropDraft, keep, records } from '../../state/records.ts';
import { moveId } from '../../state/same-id.ts';
import { entryDraft } from '../../state/stage.ts';
import type { VisitView } from '../../state/visits.ts';
import { now } from '../../store/index.ts';

/** What is made already: the last job open to being taken back, the ones before it folded away. */
export function Made({ view, moves }: { readonly view: VisitView; readonly moves: readonly MoveRecord[] }) {
  const jobs = jobsMade(view.car.car, moves);
  const last = jobs.at(-1);
  const before = jobs.slice(0, -1);
  return (
    <>
      {before.length > 0 && (
        <details class="made">
          <summary>{before.length} made before</summary>
          {before.map((job) => (
            <MadeRow key={job[0]?.id} view={view} job={job} last={false} />
          ))}
        </details>
      )}
      {last && <MadeRow view={view} job={last} last />}
    </>
  );
}

const OUTCOME = { done: 'done', 'wont-move': 'won’t move', 'set-to': 'set' } as const;

interface RowProps {
  readonly view: VisitView;
  /** Marked with one touch; never empty. */
  readonly job: readonly MoveRecord[];
  readonly last: boolean;
}

/** A job that was done, with the last one open to being taken back. */
export function MadeRow({ view, job, last }: RowProps) {
  const { car } = view.car;
  const { where, title } = headingOf(car, job);
  const { outcome } = job[0]!;
  const way = outcome === 'wont-move' ? jobStands(car, job) : jobWay(car, job);
  return (
    <>
      <p class="move-row move-made">
        <CornerMark corner={where} />
        <span>
          {title}
          <span class="soft move-way">
            {way}, {OUTCOME[outcome]}
          </span>
        </span>
        {last && (
          <button type="button" class="quiet" onClick={() => takeBack(job)}>
            Undo
          </button>
        )}
      </p>
      <MoveNote view={view} job={job} name={`${where} ${title}`} />
    </>
  );
}

/** A line of the technician's own on a job: kept with the visit, printed on its sheet. */
function MoveNote({ view, job, name }: Omit<RowProps, 'last'> & { readonly name: string }) {
  const note = noteOf(view, job);
  const [open, setOpen] = useState(false);
  if (view.visit.closed) return note ? <p class="soft">{note}</p> : null;
  if (!open && !note) {
    return (
      <button type="button" class="move-leave" aria-label={`Note: ${name}`} onClick={() => setOpen(true)}>
        Add a note
      </button>
    );
  }
  return (
    <input
      type="text"
      aria-label={`Note: ${name}`}
      maxLength={200}
      value={note}
      onInput={(event) => setNote(view, job, event.currentTarget.value)}
    />
  );
}

/** A mark taken back is a record that replaces it and moves nothing. */
function takeBack(job: readonly MoveRecord[]): void {
  // The re-measure that opened by itself when all was marked closes again; it offers no undo once a digit is typed.
  dropDraft(entryDraft(job[0]!.visitId));
  const at = now();
  const back = job.map((move): MoveRecord => {
    const { setBy: _, ...rest } = move;
    const record = { ...rest, at, to: move.from, outcome: 'done' as const, replaces: move.id };
    return { ...record, id: moveId(records.value.moves, record) };
  });
  keep(...back.map((record) => ['moves', record] as const));
}
