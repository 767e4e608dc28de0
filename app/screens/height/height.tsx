/** If a corner of the body goes up or down: what that does to its wheel, so that height is set before angles. */
import './height.css';
import { useState } from 'preact/hooks';
import type { Adjuster, Suspension } from '../../../core/contract.ts';
import { formatAngle } from '../../../core/units/format.ts';
import { engine } from '../../engine/index.ts';
import { ActionBar } from '../../parts/action-bar.tsx';
import { Card } from '../../parts/card.tsx';
import { go, route } from '../../routes.ts';
import { Header } from '../../shell/header.tsx';
import { useAsked } from '../../state/asking.ts';
import { units } from '../../state/preferences.ts';
import { records } from '../../state/records.ts';

const STEPS = [5, 1, -1, -5] as const;
const MOST = 150;

export function HeightScreen() {
  const id = route.value.screen === 'height' ? route.value.id : '';
  const car = records.value.cars.find((one) => one.id === id)?.car;
  const [raise, setRaise] = useState(10);
  return (
    <div class="screen">
      <Header title="Ride height" plate={car?.plate} back={{ screen: 'car', id }} />
      <main class="list">
        <Card title="If the body goes up or down here">
          <p class="height-figure">
            <strong>{`${raise > 0 ? '+' : raise < 0 ? '−' : ''}${Math.abs(raise)}`}</strong> mm
          </p>
          <p class="soft">
            Set the height before the angles, on spring perches or as the maker says, and roll the car to let it settle.
            Support the vehicle while springs are unloaded.
          </p>
        </Card>
        {car && (
          <>
            <AxleCard
              title="Front wheels"
              suspension={car.front.suspension}
              adjusters={car.front.adjusters}
              raise={raise}
            />
            <AxleCard
              title="Rear wheels"
              suspension={car.rear.suspension}
              adjusters={car.rear.adjusters}
              raise={raise}
            />
          </>
        )}
      </main>
      <fieldset class="height-steps">
        <legend class="visually-hidden">Change by mm</legend>
        {STEPS.map((step) => (
          <button
            key={step}
            type="button"
            class="quiet"
            onClick={() => setRaise((now) => Math.max(-MOST, Math.min(MOST, now + step)))}
          >
            {`${step > 0 ? '+' : '−'}${Math.abs(step)}`}
          </button>
        ))}
      </fieldset>
      <ActionBar primary={{ label: 'To the car', onPress: () => go({ screen: 'car', id }) }} />
    </div>
  );
}

interface AxleProps {
  readonly title: string;
  readonly suspension: Suspension;
  readonly adjusters: readonly Adjuster[];
  readonly raise: number;
}

function AxleCard({ title, suspension, adjusters, raise }: AxleProps) {
  const { value, busy } = useAsked(`height ${JSON.stringify([suspension, raise])}`, async (signal) => {
    // "Nothing" is an answer too, and the list of answers keeps none.
    return (await engine.call('heightEffect', [suspension, adjusters, {}, raise], { signal })) ?? 'none';
  });
  const rigid = value !== undefined && value !== 'none' && value.camber === 0 && value.toe === 0 && raise !== 0;
  const show = (x: number): string => formatAngle(x, { sign: true, decimal: units.value.decimal });
  return (
    <Card title={title}>
      {!value && busy && <p class="soft">Working it out…</p>}
      {value === 'none' && <p>The links cannot go that far.</p>}
      {rigid && <p>The axle goes with its wheels: the angles stay, or geometry is not known.</p>}
      {value && value !== 'none' && !rigid && (
        <dl class="facts">
          {value.caster !== undefined && (
            <div>
              <dt>Caster</dt>
              <dd>{show(value.caster)}°</dd>
            </div>
          )}
          <div>
            <dt>Camber</dt>
            <dd>{show(value.camber)}°</dd>
          </div>
          <div>
            <dt>Toe</dt>
            <dd>{show(value.toe)}° each wheel</dd>
          </div>
        </dl>
      )}
    </Card>
  );
}
