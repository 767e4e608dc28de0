/** Whether this phone keeps the records and opens the app without a network. */
import { useEffect } from 'preact/hooks';
import { offlineState } from '../../offline/registration.ts';
import { isGone } from '../../state/gone.ts';
import { type Records, records } from '../../state/records.ts';
import { visitsOf } from '../../state/visits.ts';
import { askToPersist, ownedBy, persistence, store } from '../../store/index.ts';

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

/** What is not deleted. */
function here(all: Records): Records {
  const cars = all.cars.filter((car) => !isGone(all, car));
  const visits = cars.flatMap(({ id }) => visitsOf(all, id));
  const of = <T extends { readonly id: string }>(list: readonly T[]): readonly T[] =>
    visits.flatMap(({ id }) => ownedBy(list, id));
  return { ...all, cars, visits, readings: of(all.readings), moves: of(all.moves) };
}

export function StorageState() {
  useEffect(() => void store.persisted(), []);
  const { cars, visits, readings, moves } = here(records.value);
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
