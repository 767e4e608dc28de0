/** If the body goes up or down at either end: what the rack then shows of every wheel, so that height is set first. */
import './height.css';
import { useState } from 'preact/hooks';
import type { AxleName, Car, Corner } from '../../../core/contract.ts';
import { AXLES } from '../../../core/corners.ts';
import { angleOf } from '../../../core/reading/axle-angles.ts';
import { tidy } from '../../../core/units/plain.ts';
import { bareLength, lengthUnit } from '../../../core/units/shop.ts';
import { Card } from '../../parts/card.tsx';
import { go, route } from '../../routes.ts';
import { Header } from '../../shell/header.tsx';
import { shortDay } from '../../state/days.ts';
import { units } from '../../state/preferences.ts';
import { records } from '../../state/records.ts';
import { valueText } from '../../state/units.ts';
import { lastHeights, lastSettings } from '../../state/visits.ts';
import { byId } from '../../store/index.ts';
import { Gains } from './gains.tsx';

/** mm: whole ones, or those of a rule in inches. */
const STEPS = { mm: [-5, -1, 1, 5], inch: [-6.35, -1.5875, 1.5875, 6.35] } as const;
/** What is looked at first, and the most. */
const FIRST = { mm: 10, inch: 12.7 } as const;
const MOST = { mm: 150, inch: 152.4 } as const;
const ENDS = [
  ['front', 'Front'],
  ['rear', 'Rear'],
] as const satisfies readonly (readonly [AxleName, string])[];

const signed = (mm: number): string => `${mm > 0 ? '+' : ''}${bareLength(mm, units.value)}`;

export function HeightScreen() {
  const id = route.value.screen === 'height' ? route.value.id : '';
  const car = byId(records.value.cars, id)?.car;
  const [raise, setRaise] = useState({ front: FIRST[units.value.length] as number, rear: 0 });
  return (
    <div class="screen">
      <Header title="Ride height" plate={car?.plate} back={car ? { screen: 'car', id } : { screen: 'cars' }} />
      <main class="list">
        <Card tone="caution" title="Height first, then the angles">
          <p>
            Set the height on its perches or as the maker says, roll the car and let it settle, then measure. Support
            the vehicle while a spring is unloaded.
          </p>
        </Card>
        {car && <Measured id={id} />}
        {car ? (
          <Gains car={car} raise={raise} settings={lastSettings(records.value, id)} />
        ) : (
          <p>This car is not on this phone.</p>
        )}
      </main>
      {car && <Dock car={car} raise={raise} onRaise={setRaise} />}
    </div>
  );
}

/** The heights that the car was last measured at, and how level it stood. */
function Measured({ id }: { readonly id: string }) {
  const record = lastHeights(records.value, id);
  if (!record) return null;
  const { reading } = record;
  const show = (where: Corner | AxleName, name: string): string | undefined => {
    const value = angleOf(reading, where, name);
    return value === undefined ? undefined : valueText(name, value, undefined);
  };
  return (
    <Card title="As last measured" aside={shortDay(record.at)}>
      <dl class="facts">
        {ENDS.map(([axle, name]) => {
          const said = AXLES[axle].flatMap((corner) => {
            const height = show(corner, 'rideHeight');
            return height === undefined ? [] : [`${corner} ${height}`];
          });
          const cross = show(axle, 'crossHeight');
          if (said.length === 0) return null;
          return (
            <div key={axle}>
              <dt>{name}</dt>
              <dd>
                {said.join(', ')}
                {cross && <span class="soft"> left less right {cross}</span>}
              </dd>
            </div>
          );
        })}
      </dl>
    </Card>
  );
}

interface DockProps {
  readonly car: Car;
  readonly raise: Readonly<Record<AxleName, number>>;
  readonly onRaise: (raise: Record<AxleName, number>) => void;
}

function Dock({ car, raise, onRaise }: DockProps) {
  const [end, setEnd] = useState<AxleName>('front');
  const { length } = units.value;
  const most = MOST[length];
  const unit = lengthUnit(units.value);
  const step = (by: number) => onRaise({ ...raise, [end]: tidy(Math.max(-most, Math.min(most, raise[end] + by))) });
  return (
    <section class="dock">
      <fieldset class="choice height-ends">
        <legend class="visually-hidden">Which end of the body</legend>
        {ENDS.map(([axle, name]) => (
          <button key={axle} type="button" aria-pressed={axle === end} onClick={() => setEnd(axle)}>
            {name} {raise[axle] < 0 ? 'down' : 'up'} <output>{`${signed(raise[axle])} ${unit}`}</output>
          </button>
        ))}
      </fieldset>
      <div class="height-steps">
        {STEPS[length].map((by) => (
          <button key={by} type="button" aria-label={`${end} ${signed(by)} ${unit}`} onClick={() => step(by)}>
            {signed(by)}
          </button>
        ))}
      </div>
      <button type="button" class="action-bar-primary height-back" onClick={() => go({ screen: 'car', id: car.id })}>
        To the car
      </button>
    </section>
  );
}
