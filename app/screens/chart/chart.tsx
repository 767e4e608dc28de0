/** The car's own chart: positions across and down from where the adjusters stand, what the wheel gains in the cells. */
import './chart.css';
import { useState } from 'preact/hooks';
import { sidesOf } from '../../../core/adjuster/of-corner.ts';
import type { AxleName, CarSettings } from '../../../core/contract.ts';
import { AXLES } from '../../../core/corners.ts';
import type { CarRecord } from '../../../core/records/stored.ts';
import { engine } from '../../engine/index.ts';
import { ActionBar } from '../../parts/action-bar.tsx';
import { Card } from '../../parts/card.tsx';
import { Printed } from '../../parts/printed.tsx';
import { go, route } from '../../routes.ts';
import { Header } from '../../shell/header.tsx';
import { type Asked, useAsked } from '../../state/asking.ts';
import { longDay } from '../../state/days.ts';
import { records } from '../../state/records.ts';
import { settingsOf, standings } from '../../state/standing.ts';
import { lastSettings } from '../../state/visits.ts';
import { why } from '../../state/why.ts';
import { byId, now } from '../../store/index.ts';
import { type ChartView, chartView } from './chart-view.ts';
import { chartPages } from './on-paper.tsx';
import { ChartTable } from './table.tsx';

const NAMES = ['front', 'rear'] as const;

export function ChartScreen() {
  const id = route.value.screen === 'chart' ? route.value.id : '';
  const record = byId(records.value.cars, id);
  const car = record?.car;
  return (
    <div class="screen">
      <Header title={car?.label ?? 'No such car'} plate={car?.plate} back={{ screen: 'car', id }} />
      {record ? <Charts record={record} /> : <main class="list" />}
      <ActionBar
        primary={{ label: 'To the car', onPress: () => go({ screen: 'car', id }) }}
        secondary={[{ label: 'Print', onPress: () => print() }]}
      />
    </div>
  );
}

function Charts({ record }: { readonly record: CarRecord }) {
  const { car } = record;
  const [axle, setAxle] = useState<AxleName>('front');
  const stands = settingsOf(standings(record, {}, lastSettings(records.value, record.id)));
  const asked = { front: useCharts(record, 'front', stands), rear: useCharts(record, 'rear', stands) };
  const printed = NAMES.flatMap((name) => asked[name].value ?? []);
  return (
    <>
      <main class="list">
        <fieldset class="choice">
          <legend class="visually-hidden">Which axle</legend>
          {NAMES.map((one) => (
            <button key={one} type="button" aria-pressed={axle === one} onClick={() => setAxle(one)}>
              {one}
            </button>
          ))}
        </fieldset>
        <AxleCharts key={axle} asked={asked[axle]} axle={car[axle]} />
      </main>
      <Printed
        title={car.label}
        plate={car.plate}
        what="its own chart"
        day={longDay(now())}
        pages={() => printed.flatMap(chartPages)}
      />
    </>
  );
}

/** The charts of an axle, each as it is shown; of a side without two adjusters only its title. */
function useCharts(record: CarRecord, name: AxleName, stands: CarSettings): Asked<readonly ChartView[]> {
  const axle = record.car[name];
  const [left, right] = AXLES[name].map((corner) => stands[corner] ?? {});
  const question = `chart ${JSON.stringify([axle, left, right])}`;
  const { value, ...rest } = useAsked(question, (signal) =>
    engine.call('axleCharts', [axle, { left: left!, right: right! }], { signal }),
  );
  if (!value) return rest;
  const sides = sidesOf(axle);
  const views = value.map(({ side, chart }) => {
    const place = side === 'right' ? 1 : 0;
    return chartView({
      axle: name,
      side,
      corner: AXLES[name][place]!,
      adjusters: sides[place].adjusters,
      chart,
      rim: record.car.wheel.rimDiameter,
    });
  });
  return { ...rest, value: views };
}

interface AxleProps {
  readonly asked: Asked<readonly ChartView[]>;
  readonly axle: CarRecord['car']['front'];
}

function AxleCharts({ asked: { value, error }, axle }: AxleProps) {
  if (error) return <Card title="No chart">{why(error, { axle })}</Card>;
  if (!value) return <p class="wait" aria-busy="true" />;
  return (
    <>
      {value.map((view) => (
        <Card key={view.name} title={view.title}>
          {view.table ? (
            <ChartTable view={view} table={view.table} />
          ) : (
            `A chart needs two adjusters ${view.name.includes(',') ? 'there' : 'on the axle'}.`
          )}
        </Card>
      ))}
    </>
  );
}
