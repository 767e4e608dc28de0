/** The browser cleared the records while the app read them: what was read by then can still be saved to a file. */
import { useState } from 'preact/hooks';
import { records } from '../state/records.ts';
import { why } from '../state/why.ts';
import { shareBackup, store } from '../store/index.ts';

const WORDS = {
  shared: 'Handed over.',
  downloaded: 'Saved to a file.',
  cancelled: 'Not saved: cancelled.',
} as const;

export function Rescue() {
  const [message, setMessage] = useState('');
  const { cars, visits, readings } = records.value;
  const save = () =>
    shareBackup(store, records.value).then(
      (way) => setMessage(WORDS[way]),
      (error) => setMessage(why(error)),
    );
  return (
    <main class="page">
      <div role="alert">
        <h1>The browser has cleared the records of this phone</h1>
      </div>
      <p>
        It happened while they were being opened. Cornerwright has changed or deleted nothing, and writes nothing now.
      </p>
      {cars.length > 0 && (
        <>
          <p>
            Read by then, and still here until this is closed: {cars.length} {cars.length === 1 ? 'car' : 'cars'},{' '}
            {visits.length} {visits.length === 1 ? 'visit' : 'visits'}, {readings.length}{' '}
            {readings.length === 1 ? 'reading' : 'readings'}.
          </p>
          <button type="button" class="primary" onClick={save}>
            Save these to a file
          </button>
          <p role="status">{message}</p>
        </>
      )}
      <p>Then open it again, and restore your last backup and this file from Settings.</p>
      <button type="button" class={cars.length > 0 ? 'quiet wide' : 'primary'} onClick={() => location.reload()}>
        Open again
      </button>
    </main>
  );
}
