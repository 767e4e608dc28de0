/** Everything to a file, and back from one: counts first, and an undo after. */
import { useEffect, useState } from 'preact/hooks';
import { fullTime } from '../../state/days.ts';
import { records } from '../../state/records.ts';
import { why } from '../../state/why.ts';
import { type Preview, shareBackup, store } from '../../store/index.ts';
import { Counts } from './restore-counts.tsx';
import { type Undo, UndoCounts } from './undo.tsx';

/** A large file takes a while to be made, or read. */
const WORKING = 'Working…';
const UNDOES = { restore: 'Undo the last restore', undo: 'Bring back what the restore brought' } as const;
const WAYS = { shared: 'Handed over.', downloaded: 'Saved to a file.', cancelled: 'Not saved: cancelled.' } as const;

export function RecordSettings() {
  const [message, setMessage] = useState('');
  const [waiting, setWaiting] = useState<{ file: File; preview: Preview } | undefined>();
  const [undoes, setUndoes] = useState<keyof typeof UNDOES | undefined>();
  const [undoing, setUndoing] = useState<Undo | undefined>();
  const lookForUndo = () => void store.undoes().then(setUndoes, () => setUndoes(undefined));
  // One that was cut off is another thing to undo, and so is none.
  useEffect(lookForUndo, [store.cutOff.value]);
  const tell = (work: () => Promise<string>) => {
    setMessage(WORKING);
    work().then(setMessage, (error: unknown) => setMessage(why(error)));
  };
  const backup = records.value.preferences.find(({ id }) => id === 'backup')?.value;
  const at = typeof backup === 'object' && backup !== null && 'at' in backup ? String(backup.at) : '';
  const choose = (file: File | undefined) => {
    setWaiting(undefined);
    if (!file) return;
    tell(async () => {
      setWaiting({ file, preview: await store.inspect(file) });
      return '';
    });
  };
  const restore = (file: File) =>
    tell(async () => {
      setUndoing(undefined);
      await store.restore(file);
      setWaiting(undefined);
      lookForUndo();
      return 'Restored.';
    });
  const lookAtUndo = () =>
    tell(async () => {
      setUndoing(await store.inspectUndo());
      return '';
    });
  const undo = () =>
    tell(async () => {
      const done = await store.undoRestore();
      setUndoing(undefined);
      lookForUndo();
      if (!done) return 'Nothing to undo.';
      return undoes === 'undo' ? 'Brought back.' : 'Undone. What came since is still here.';
    });
  return (
    <>
      <p>{at ? `Last saved to a file ${fullTime(at)}.` : 'Never saved to a file.'}</p>
      <button
        type="button"
        class="quiet wide"
        onClick={() => tell(async () => WAYS[await shareBackup(store, records.value)])}
      >
        Save everything to a file
      </button>
      <label class="field">
        <span>Restore from a file</span>
        <input
          type="file"
          accept=".json,.txt,application/json,text/plain"
          onChange={(event) => choose(event.currentTarget.files?.[0])}
        />
      </label>
      {waiting && <Counts preview={waiting.preview} onRestore={() => restore(waiting.file)} />}
      {undoes && !undoing && (
        <button type="button" class="quiet wide" onClick={lookAtUndo}>
          {UNDOES[undoes]}
        </button>
      )}
      {undoing && (
        <UndoCounts isUndo={undoes === 'undo'} undo={undoing} onLeave={() => setUndoing(undefined)} onUndo={undo} />
      )}
      {message && <p role="status">{message}</p>}
    </>
  );
}
