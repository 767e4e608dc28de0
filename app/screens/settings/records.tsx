/** Everything to a file, and back from one: counts first, and an undo after. */
import { useEffect, useState } from 'preact/hooks';
import { fullTime } from '../../state/days.ts';
import { records } from '../../state/records.ts';
import { why } from '../../state/why.ts';
import { shareBackup, store } from '../../store/index.ts';
import { type Undo, UndoCounts } from './undo.tsx';

type Preview = Awaited<ReturnType<typeof store.inspect>>;

export function RecordSettings() {
  const [message, setMessage] = useState('');
  const [waiting, setWaiting] = useState<{ text: string; preview: Preview } | undefined>();
  const [undoable, setUndoable] = useState(false);
  const [undoing, setUndoing] = useState<Undo | undefined>();
  const lookForUndo = () => void store.canUndoRestore().then(setUndoable, () => setUndoable(false));
  useEffect(lookForUndo, []);
  const tell = (work: () => Promise<string>) => {
    setMessage('');
    work().then(setMessage, (error: unknown) => setMessage(why(error)));
  };
  const backup = records.value.preferences.find(({ id }) => id === 'backup')?.value;
  const at = typeof backup === 'object' && backup !== null && 'at' in backup ? String(backup.at) : '';
  const words = { shared: 'Handed over.', downloaded: 'Saved to a file.', cancelled: 'Not saved: cancelled.' } as const;
  return (
    <>
      <p>{at ? `Last saved to a file ${fullTime(at)}.` : 'Never saved to a file.'}</p>
      <button
        type="button"
        class="quiet wide"
        onClick={() => tell(async () => words[await shareBackup(store, records.value)])}
      >
        Save everything to a file
      </button>
      <label class="field">
        <span>Restore from a file</span>
        <input
          type="file"
          accept=".json,.txt,application/json,text/plain"
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            setWaiting(undefined);
            if (file) {
              tell(async () => {
                const text = await file.text();
                setWaiting({ text, preview: await store.inspect(text) });
                return '';
              });
            }
          }}
        />
      </label>
      {waiting && (
        <Counts
          preview={waiting.preview}
          onRestore={() =>
            tell(async () => {
              await store.restore(waiting.text);
              setWaiting(undefined);
              lookForUndo();
              return 'Restored.';
            })
          }
        />
      )}
      {undoable && !undoing && (
        <button
          type="button"
          class="quiet wide"
          onClick={() =>
            tell(async () => {
              setUndoing(await store.inspectUndo());
              return '';
            })
          }
        >
          Undo the last restore
        </button>
      )}
      {undoing && (
        <UndoCounts
          undo={undoing}
          onLeave={() => setUndoing(undefined)}
          onUndo={() =>
            tell(async () => {
              const done = await store.undoRestore();
              setUndoing(undefined);
              return done ? 'Undone. What came since is still here.' : 'Nothing to undo.';
            })
          }
        />
      )}
      {message && <p role="status">{message}</p>}
    </>
  );
}

const NAMES = { cars: 'cars', visits: 'visits', readings: 'readings', moves: 'moves' } as const;

const SHOWN = 5;

/** Records that are not as they should be: named, so that somebody can mend the file, which keeps them. */
function SetAside({ aside }: Pick<Preview, 'aside'>) {
  const one = aside.length === 1;
  return (
    <div class="card card-caution" role="status">
      <p>
        {one ? 'One record of the file is' : `${aside.length} records of the file are`} not as{' '}
        {one ? 'it should be and stays out' : 'they should be and stay out'}. Keep the file.
      </p>
      <ul>
        {aside.slice(0, SHOWN).map(({ error }) => (
          <li key={error.field} class="soft">
            {error.message}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Nobody has to decide now: a car says on its own screen that there is another build of it. */
function Twofold({ count }: { readonly count: number }) {
  return (
    <p>
      {count === 1 ? 'One record was' : `${count} records were`} changed both here and in the file. The newer is shown;
      the other is kept with it.
    </p>
  );
}

/** What is in the file and what restoring would change. */
function Counts({ preview, onRestore }: { readonly preview: Preview; readonly onRestore: () => void }) {
  return (
    <div class="counts">
      <p>
        From {fullTime(preview.made)}:{' '}
        {(Object.keys(NAMES) as (keyof typeof NAMES)[])
          .map((name) => `${preview.records[name]} ${NAMES[name]}`)
          .join(', ')}
        .
      </p>
      <p>
        Restoring adds {preview.changes.added} records and brings {preview.changes.updated} up to date;{' '}
        {preview.changes.same + preview.changes.kept} stay as they are.
      </p>
      {preview.both.length > 0 && <Twofold count={preview.both.length} />}
      {preview.aside.length > 0 && <SetAside aside={preview.aside} />}
      <p class="soft">Nothing here is deleted, and it can be undone.</p>
      <button type="button" class="quiet wide" onClick={onRestore}>
        Restore it
      </button>
    </div>
  );
}
