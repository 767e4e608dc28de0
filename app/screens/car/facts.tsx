/** Whose car it is and what it goes by: changed at a touch, and deleted where it was begun by mistake. */
import type { CarRecord } from '../../../core/records/stored.ts';
import { Card } from '../../parts/card.tsx';
import { go } from '../../routes.ts';
import { bringBackCar, deleteCar } from '../../state/deleting.ts';
import { draft } from '../../state/records.ts';
import { beginRename, nameDraft } from '../../state/renaming.ts';
import { offerUndo } from '../../state/undo-offer.ts';
import { Rename } from './rename.tsx';

export function CarFacts({ car: record }: { readonly car: CarRecord }) {
  const { label, plate, customer, vin, tyres } = record.car;
  const remove = () => {
    deleteCar(record);
    offerUndo(`${label} deleted`, () => bringBackCar(record), { screen: 'cars' });
    go({ screen: 'cars' }, 'replace');
  };
  const facts = Object.entries({ Plate: plate, Customer: customer, VIN: vin, Tyres: tyres }).filter(([, text]) => text);
  return (
    <Card title="The car">
      {facts.length > 0 && (
        <dl class="facts facts-long">
          {facts.map(([name, text]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
      )}
      {draft(nameDraft(record.id)) ? (
        <Rename record={record} />
      ) : (
        <div class="pair">
          <button type="button" class="quiet" onClick={() => beginRename(record)}>
            Name and plate
          </button>
          <button type="button" class="quiet" onClick={remove}>
            Delete the car
          </button>
        </div>
      )}
    </Card>
  );
}
