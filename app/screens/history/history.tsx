/** A car over its visits: a line for each angle, as found and as left with its window, and the same as a table. */
import './history.css';
import { signal } from '@preact/signals';
import { isAgainst } from '../../../core/reading/toe-reference.ts';
import { ActionBar } from '../../parts/action-bar.tsx';
import { PunchedStep } from '../../parts/punched-step.tsx';
import { Sheet } from '../../parts/sheet.tsx';
import { Verdict } from '../../parts/verdict.tsx';
import { go, route } from '../../routes.ts';
import { Header } from '../../shell/header.tsx';
import { lineText } from '../../state/against.ts';
import { shortDay } from '../../state/days.ts';
import { type Field, fieldWord } from '../../state/fields.ts';
import { verdictOf, windowOf } from '../../state/judge.ts';
import { records } from '../../state/records.ts';
import { valueText } from '../../state/units.ts';
import { byId } from '../../store/index.ts';
import { AngleLine } from './angle-line.tsx';
import { type History, type Past, pastOf } from './past.ts';

const picked = signal<string | undefined>(undefined);

const NOTHING: History = { past: [], fields: [], reference: 'centreline', leftOut: 0 };

export function HistoryScreen() {
  const id = route.value.screen === 'history' ? route.value.id : '';
  const car = byId(records.value.cars, id);
  const { past, fields, reference, leftOut } = car ? pastOf(records.value, car) : NOTHING;
  return (
    <div class="screen">
      <Header
        title={car?.car.label ?? 'No such car'}
        plate={car?.car.plate}
        back={car ? { screen: 'car', id } : { screen: 'cars' }}
      />
      <Sheet>
        {past.length === 0 && <p class="step">Nothing measured yet.</p>}
        {fields.some(({ where, angle }) => isAgainst(where, angle)) && (
          <p class="step soft history-against">
            Front toe against {lineText(reference)}
            {leftOut > 0 && `; left out where it was read without rear toe (${leftOut})`}.
          </p>
        )}
        {car &&
          fields.map((field) => (
            <PunchedStep
              key={field.id}
              state={picked.value === field.id ? 'live' : 'done'}
              title={<Name field={field} past={past} window={windowOf(car.spec, field)} />}
              note={lastText(past, field, car.car.wheel.rimDiameter)}
              time={`${past.length} visit${past.length === 1 ? '' : 's'}`}
              onPick={() => {
                picked.value = picked.value === field.id ? undefined : field.id;
              }}
            >
              <AngleLine
                past={past}
                field={field}
                window={windowOf(car.spec, field)}
                format={(value) => valueText(field.angle, value, car.car.wheel.rimDiameter)}
              />
              {picked.value === field.id && (
                <PastTable
                  past={past}
                  field={field}
                  format={(value) => valueText(field.angle, value, car.car.wheel.rimDiameter)}
                />
              )}
            </PunchedStep>
          ))}
      </Sheet>
      <ActionBar
        primary={{ label: 'To the car', onPress: () => go(car ? { screen: 'car', id } : { screen: 'cars' }) }}
        secondary={[{ label: 'Print', onPress: () => print() }]}
      />
    </div>
  );
}

function Name({
  field,
  past,
  window,
}: {
  readonly field: Field;
  readonly past: readonly Past[];
  readonly window: ReturnType<typeof windowOf>;
}) {
  const value = past.at(-1)?.left(field);
  const name = fieldWord(field);
  return value !== undefined && window ? <Verdict state={verdictOf(value, window)} label={name} /> : name;
}

function lastText(past: readonly Past[], field: Field, rim: number): string {
  const value = past.at(-1)?.left(field);
  return value === undefined ? '' : valueText(field.angle, value, rim);
}

interface TableProps {
  readonly past: readonly Past[];
  readonly field: Field;
  readonly format: (value: number) => string;
}

function PastTable({ past, field, format }: TableProps) {
  const show = (value: number | undefined) => (value === undefined ? '–' : format(value));
  return (
    <table class="paper-table">
      <thead>
        <tr>
          <th scope="col">Visit</th>
          <th scope="col">Found</th>
          <th scope="col">Left</th>
        </tr>
      </thead>
      <tbody>
        {past.map((one) => (
          <tr key={one.day}>
            <th scope="row">{shortDay(one.day)}</th>
            <td>{show(one.found(field))}</td>
            <td>{show(one.left(field))}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
