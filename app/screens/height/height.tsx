/** If the body goes up or down at either end: what the rack then shows of every wheel, so that height is set first. */
import './height.css';
import { useState } from 'preact/hooks';
import type { AxleName, Car } from '../../../core/contract.ts';
import { Card } from '../../parts/card.tsx';
import { go, route } from '../../routes.ts';
import { Header } from '../../shell/header.tsx';
import { records } from '../../state/records.ts';
import { lastSettings } from '../../state/visits.ts';
import { byId } from '../../store/index.ts';
import { Gains } from './gains.tsx';

const STEPS = [-5, -1, 1, 5] as const;
const MOST = 150;
const ENDS = [
  ['front', 'Front'],
  ['rear', 'Rear'],
] as const satisfies readonly (readonly [AxleName, string])[];

const signed = (mm: number): string => `${mm > 0 ? '+' : mm < 0 ? '−' : ''}${Math.abs(mm)}`;

export function HeightScreen() {
  const id = route.value.screen === 'height' ? route.value.id : '';
  const car = byId(records.value.cars, id)?.car;
  const [raise, setRaise] = useState({ front: 10, rear: 0 });
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

interface DockProps {
  readonly car: Car;
  readonly raise: Readonly<Record<AxleName, number>>;
  readonly onRaise: (raise: Record<AxleName, number>) => void;
}

function Dock({ car, raise, onRaise }: DockProps) {
  const [end, setEnd] = useState<AxleName>('front');
  const step = (by: number) => onRaise({ ...raise, [end]: Math.max(-MOST, Math.min(MOST, raise[end] + by)) });
  return (
    <section class="dock">
      <fieldset class="choice height-ends">
        <legend class="visually-hidden">Which end of the body</legend>
        {ENDS.map(([axle, name]) => (
          <button key={axle} type="button" aria-pressed={axle === end} onClick={() => setEnd(axle)}>
            {name} {raise[axle] < 0 ? 'down' : 'up'} <output>{signed(raise[axle])} mm</output>
          </button>
        ))}
      </fieldset>
      <div class="height-steps">
        {STEPS.map((by) => (
          <button key={by} type="button" aria-label={`${end} ${signed(by)} mm`} onClick={() => step(by)}>
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
