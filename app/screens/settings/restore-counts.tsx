/** What is in a backup and what restoring it would do, before it is done. */
import { fullTime } from '../../state/days.ts';
import { why } from '../../state/why.ts';
import type { Preview } from '../../store/index.ts';

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
            {why(error)}
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
export function Counts({ preview, onRestore }: { readonly preview: Preview; readonly onRestore: () => void }) {
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
