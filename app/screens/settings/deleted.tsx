/** Cars and visits that were deleted: all of them, for good, and each brought back at a touch. */

import './deleted.css';
import { LongList } from '../../parts/long-list.tsx';
import { Plate } from '../../parts/plate.tsx';
import { bringBack, nameOf } from '../../shell/deleted.tsx';
import { shortDay } from '../../state/days.ts';
import { type Gone, goneFrom } from '../../state/deleting.ts';
import { records } from '../../state/records.ts';
import { visitsOf } from '../../state/visits.ts';
import { ownedBy } from '../../store/index.ts';

export function DeletedSettings() {
  const gone = goneFrom(records.value);
  if (gone.length === 0)
    return <p class="soft">Nothing is deleted. What you delete is kept, and can be brought back here.</p>;
  return (
    <>
      <p class="soft">Kept on this phone and in the backup; in no list, no count and no plan.</p>
      <LongList of={gone} row={(one) => <Row key={`${one.car.id} ${one.visit?.id}`} gone={one} />} />
    </>
  );
}

function Row({ gone }: { readonly gone: Gone }) {
  const { car, visit, at } = gone;
  const held = heldBy(gone);
  const name = nameOf(gone);
  return (
    <div class="gone-row">
      <p>
        <strong>{name}</strong>{' '}
        {visit ? <span>of {car.car.label}</span> : car.car.plate && <Plate text={car.car.plate} />}
        <br />
        <span class="soft">
          deleted {shortDay(at)}, {held}
        </span>
      </p>
      <button type="button" class="quiet" aria-label={`Bring back ${name}`} onClick={() => bringBack(gone)}>
        Bring back
      </button>
    </div>
  );
}

/** What comes back with it. */
function heldBy({ car, visit }: Gone): string {
  const all = records.value;
  const count = (n: number, word: string): readonly string[] => (n === 0 ? [] : [`${n} ${word}${n === 1 ? '' : 's'}`]);
  const parts = visit
    ? [
        ...count(ownedBy(all.readings, visit.id).length, 'reading'),
        ...count(ownedBy(all.moves, visit.id).length, 'move'),
      ]
    : count(visitsOf(all, car.id).length, 'visit');
  return parts.length > 0 ? `with ${parts.join(' and ')}` : 'nothing in it';
}
