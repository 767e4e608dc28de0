/** Whether this phone keeps the records and opens the app without a network. */
import { useEffect } from 'preact/hooks';
import { offlineState } from '../../offline/registration.ts';
import { records } from '../../state/records.ts';
import { askToPersist, persistence, store } from '../../store/index.ts';

const PERSISTENCE = {
  granted: 'This browser has promised to keep the records.',
  refused: 'This browser may clear the records when the phone runs short of room. Save them to a file often.',
  unsupported: 'This browser makes no promise to keep records. Save them to a file often.',
  unknown: 'This browser has not been asked yet to keep the records.',
} as const;
const OFFLINE = {
  ready: 'Opens without a network.',
  starting: 'Getting ready to open without a network.',
  unsupported: 'Opens only with a network here.',
  failed: 'Could not get ready to open without a network. Open it again with a network.',
} as const;

const count = (list: readonly unknown[], word: string): string =>
  `${list.length} ${word}${list.length === 1 ? '' : 's'}`;

export function StorageState() {
  useEffect(() => void store.persisted(), []);
  const { cars, visits, readings, moves } = records.value;
  return (
    <>
      <p>
        {[count(cars, 'car'), count(visits, 'visit'), count(readings, 'reading'), count(moves, 'move')].join(', ')}.
      </p>
      <p>{PERSISTENCE[persistence.value]}</p>
      {persistence.value !== 'granted' && persistence.value !== 'unsupported' && (
        <button type="button" class="quiet wide" onClick={() => void askToPersist()}>
          Ask it to keep them
        </button>
      )}
      <p>{OFFLINE[offlineState.value]}</p>
    </>
  );
}
