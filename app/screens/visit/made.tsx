/** Moves that were made, the last one open to being taken back. */
import type { MoveRecord } from '../../../core/records/stored.ts';
import { CornerMark } from '../../parts/corner-mark.tsx';
import { adjusterOf, wayText } from '../../state/move-words.ts';
import { dropDraft, keep } from '../../state/records.ts';
import { entryDraft } from '../../state/stage.ts';
import { positionText } from '../../state/standing.ts';
import type { VisitView } from '../../state/visits.ts';
import { newId, now } from '../../store/index.ts';

/** What is made already: the last move open to being taken back, the ones before it folded away. */
export function Made({ view, moves }: { readonly view: VisitView; readonly moves: readonly MoveRecord[] }) {
  const last = moves.at(-1);
  const before = moves.slice(0, -1);
  return (
    <>
      {before.length > 0 && (
        <details class="made">
          <summary>{before.length} made before</summary>
          {before.map((move) => (
            <MadeRow key={move.id} view={view} move={move} last={false} />
          ))}
        </details>
      )}
      {last && <MadeRow view={view} move={last} last />}
    </>
  );
}

const OUTCOME = { done: 'done', 'wont-move': 'won’t move', 'set-to': 'set' } as const;

/** A move that was made, with the last one open to being taken back. */
export function MadeRow({
  view,
  move,
  last,
}: {
  readonly view: VisitView;
  readonly move: MoveRecord;
  readonly last: boolean;
}) {
  const adjuster = adjusterOf(view.car.car, move);
  const stays = adjuster && move.outcome === 'wont-move';
  const way = stays
    ? positionText(adjuster, move.from)
    : adjuster
      ? wayText(adjuster, move)
      : `${move.from} → ${move.to}`;
  return (
    <p class="move-row move-made">
      <CornerMark corner={move.corner} />
      <span>
        {adjuster?.name ?? move.adjuster}
        <span class="soft move-way">
          {way}, {OUTCOME[move.outcome]}
        </span>
      </span>
      {last && (
        <button type="button" class="quiet" onClick={() => takeBack(move)}>
          Undo
        </button>
      )}
    </p>
  );
}

/** A mark taken back is a record that replaces it and moves nothing. */
function takeBack(move: MoveRecord): void {
  // The re-measure that opened by itself when all was marked closes again; it offers no undo once a digit is typed.
  dropDraft(entryDraft(move.visitId));
  keep(['moves', { ...move, id: newId(), at: now(), to: move.from, outcome: 'done', replaces: move.id }]);
}
