/** A restore or an undo that was cut off: how far it came, and what can be done. */
import { useState } from 'preact/hooks';
import { hashOf } from '../routes.ts';
import { fullTime } from '../state/days.ts';
import { type CutOff, store } from '../store/index.ts';

export function CutOffNote() {
  const [problem, setProblem] = useState('');
  const cut = store.cutOff.value;
  if (!cut) return null;
  const tell = (work: () => Promise<unknown>) => {
    setProblem('');
    work().catch((error: unknown) => setProblem(error instanceof Error ? error.message : String(error)));
  };
  const isUndo = cut.kind === 'undo';
  return (
    <div class="note-bar note-bad note-tall" role="alert">
      <span>
        {textOf(cut)} {problem}
      </span>
      <span class="note-ways note-column">
        {isUndo ? (
          <button type="button" class="quiet" onClick={() => tell(store.undoRestore)}>
            Finish it
          </button>
        ) : (
          <>
            <a class="quiet" href={hashOf({ screen: 'settings' })}>
              Finish: restore the same file again
            </a>
            <button type="button" class="quiet" onClick={() => tell(store.undoRestore)}>
              Take back what it brought
            </button>
          </>
        )}
        <button type="button" class="quiet" onClick={() => tell(store.leaveCutOff)}>
          Leave it as it is
        </button>
      </span>
    </div>
  );
}

function textOf({ kind, made, through, all }: CutOff): string {
  const count = new Intl.NumberFormat('en-GB');
  const far = `after about ${count.format(through)} of ${count.format(all)} records`;
  if (kind === 'undo') return `The undo of a restore was cut off ${far}. The rest is still as it was.`;
  const of = made ? ` of the backup of ${fullTime(made)}` : '';
  return `The restore${of} was cut off ${far}. What came in is whole, the rest is not here, and nothing was deleted.`;
}
