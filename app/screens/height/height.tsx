/** If a corner of the body goes up or down: what that does to its wheel, so that height is set before angles. */
import './height.css';
import { useState } from 'preact/hooks';
import { sidesOf } from '../../../core/adjuster/of-corner.ts';
import type { AxleName, Car, Corner, Settings } from '../../../core/contract.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import { formatAngle } from '../../../core/units/format.ts';
import { engine } from '../../engine/index.ts';
import { Card } from '../../parts/card.tsx';
import { CornerMark } from '../../parts/corner-mark.tsx';
import { go, route } from '../../routes.ts';
import { Header } from '../../shell/header.tsx';
import { useAsked } from '../../state/asking.ts';
import { angleWord, cornersOf } from '../../state/fields.ts';
import { units } from '../../state/preferences.ts';
import { records } from '../../state/records.ts';
import { lastSettings } from '../../state/visits.ts';
import { why } from '../../state/why.ts';

const STEPS = [-5, -1, 1, 5] as const;
const MOST = 150;
const ROWS = ['caster', 'camber', 'toe'] as const;

const signed = (mm: number): string => `${mm > 0 ? '+' : mm < 0 ? '−' : ''}${Math.abs(mm)}`;

export function HeightScreen() {
  const id = route.value.screen === 'height' ? route.value.id : '';
  const car = records.value.cars.find((one) => one.id === id)?.car;
  const [raise, setRaise] = useState(10);
  const step = (by: number) => setRaise((now) => Math.max(-MOST, Math.min(MOST, now + by)));
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
          (['front', 'rear'] as const).map((axle) => (
            <AxleCard key={axle} car={car} axle={axle} raise={raise} settings={lastSettings(records.value, id)} />
          ))
        ) : (
          <p>This car is not on this phone.</p>
        )}
      </main>
      <section class="dock">
        <p class="height-figure">
          Corner {raise < 0 ? 'down' : 'up'} by <output>{signed(raise)} mm</output>
        </p>
        <div class="height-steps">
          {STEPS.map((by) => (
            <button key={by} type="button" aria-label={`${signed(by)} mm`} onClick={() => step(by)}>
              {signed(by)}
            </button>
          ))}
        </div>
        <button type="button" class="action-bar-primary height-back" onClick={() => go({ screen: 'car', id })}>
          To the car
        </button>
      </section>
    </div>
  );
}

interface AxleProps {
  readonly car: Car;
  readonly axle: AxleName;
  readonly raise: number;
  /** Where the adjusters stood last. */
  readonly settings: Readonly<Partial<Record<Corner, Settings>>>;
}

function AxleCard(props: AxleProps) {
  const { car, axle } = props;
  const kind = suspensionKinds[car[axle].suspension.kind];
  const title = axle === 'front' ? 'Front' : 'Rear';
  if (kind?.points.length === 0)
    return <Card title={title}>Not known without geometry: measure once the height is set.</Card>;
  if (!kind?.height) {
    return <Card title={title}>A rigid axle stays as it is under the body. Measure it all the same.</Card>;
  }
  return (
    <Card title={title}>
      <Gained {...props} />
    </Card>
  );
}

function Gained({ car, axle, raise, settings }: AxleProps) {
  const [left, right] = cornersOf(axle) as [Corner, Corner];
  const sides = sidesOf(car[axle]);
  const { value, error } = useAsked(
    `height ${JSON.stringify([car[axle], settings[left], settings[right], raise])}`,
    (signal) =>
      Promise.all([
        engine.call('heightEffect', [sides[0].suspension, sides[0].adjusters, settings[left] ?? {}, raise], { signal }),
        engine.call('heightEffect', [sides[1].suspension, sides[1].adjusters, settings[right] ?? {}, raise], {
          signal,
        }),
      ]),
  );
  if (error) return <p role="alert">{why(error, { adjusters: sides[0].adjusters })}</p>;
  if (!value) return <p class="soft">Working it out…</p>;
  if (!value.some(Boolean)) return <p>The links cannot go that far.</p>;
  const show = (x: number | undefined): string =>
    x === undefined ? '–' : `${formatAngle(x, { sign: true, decimal: units.value.decimal, mode: units.value.angle })}`;
  return (
    <table class="paper-table height-table">
      <thead>
        <tr>
          <th scope="col">Gains, degrees</th>
          {[left, right].map((corner) => (
            <th key={corner} scope="col">
              <CornerMark corner={corner} />
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {ROWS.filter((angle) => value.some((one) => one?.[angle] !== undefined)).map((angle) => (
          <tr key={angle}>
            <th scope="row">{angleWord(angle)}</th>
            {value.map((one, i) => (
              <td key={i === 0 ? left : right}>{show(one?.[angle])}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
