/** A car or a visit that one phone deleted while another worked on it: it is kept, and a person says what is right. */
import type { CarRecord, VisitRecord } from '../../core/records/stored.ts';
import { Card } from '../parts/card.tsx';
import { fullTime } from '../state/days.ts';
import { bringBackCar, bringBackVisit, deleteCar, deleteVisit } from '../state/deleting.ts';
import { deletedUnawares } from '../state/gone.ts';
import { records } from '../state/records.ts';

interface Props {
  readonly record: CarRecord | VisitRecord;
}

export function WorkedOn({ record }: Props) {
  const at = deletedUnawares(records.value, record);
  if (!at) return null;
  const isVisit = 'carId' in record;
  return (
    <Card tone="caution" title={isVisit ? 'Visit deleted on another phone' : 'Deleted on another phone'}>
      <p>
        It was deleted {fullTime(at)}, by somebody who did not know all that was done here. So it is kept, with all of
        that.
      </p>
      <div class="pair">
        <button type="button" class="quiet" onClick={() => (isVisit ? bringBackVisit(record) : bringBackCar(record))}>
          Keep it
        </button>
        <button type="button" class="quiet" onClick={() => (isVisit ? deleteVisit(record) : deleteCar(record))}>
          Delete it
        </button>
      </div>
    </Card>
  );
}
