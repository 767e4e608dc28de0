/** The car's own chart: positions across and down, what the wheel gains in the cells; on screen and on paper. */
import { positionText } from '../../state/standing.ts';
import './chart.css';
import { useState } from 'preact/hooks';
import { sidesOf } from '../../../core/adjuster/of-corner.ts';
import type { Adjuster, Axle, AxleName, Position } from '../../../core/contract.ts';
import type { Chart } from '../../../core/plan/chart.ts';
import { formatAngle } from '../../../core/units/format.ts';
import { engine } from '../../engine/index.ts';
import { ActionBar } from '../../parts/action-bar.tsx';
import { Card } from '../../parts/card.tsx';
import { go, route } from '../../routes.ts';
import { Header } from '../../shell/header.tsx';
import { useAsked } from '../../state/asking.ts';
import { units } from '../../state/preferences.ts';
import { records } from '../../state/records.ts';
import { why } from '../../state/why.ts';
import { byId } from '../../store/index.ts';

export function ChartScreen() {
  const id = route.value.screen === 'chart' ? route.value.id : '';
  const car = byId(records.value.cars, id)?.car;
  const [axle, setAxle] = useState<AxleName>('front');
  return (
    <div class="screen">
      <Header title={car?.label ?? 'No such car'} plate={car?.plate} back={{ screen: 'car', id }} />
      <main class="list">
        <fieldset class="choice">
          <legend class="visually-hidden">Which axle</legend>
          {(['front', 'rear'] as const).map((one) => (
            <button key={one} type="button" aria-pressed={axle === one} onClick={() => setAxle(one)}>
              {one}
            </button>
          ))}
        </fieldset>
        {car && <AxleChart key={axle} axle={car[axle]} />}
      </main>
      <ActionBar
        primary={{ label: 'To the car', onPress: () => go({ screen: 'car', id }) }}
        secondary={[{ label: 'Print', onPress: () => print() }]}
      />
    </div>
  );
}

function AxleChart({ axle }: { readonly axle: Axle }) {
  const { value, error } = useAsked(`chart ${JSON.stringify(axle)}`, (signal) =>
    engine.call('axleCharts', [axle], { signal }),
  );
  if (error) return <Card title="No chart">{why(error, { axle })}</Card>;
  if (!value) return <p class="wait" aria-busy="true" />;
  const [left, right] = sidesOf(axle);
  return (
    <>
      {value.map(({ side, chart }) => (
        <SideTable
          key={side}
          side={side === 'both' ? '' : side === 'left' ? 'Left: ' : 'Right: '}
          adjusters={(side === 'right' ? right : left).adjusters}
          chart={chart}
        />
      ))}
    </>
  );
}

interface SideProps {
  /** What its title begins with. */
  readonly side: string;
  readonly adjusters: readonly Adjuster[];
  readonly chart: Chart | undefined;
}

function SideTable({ side, adjusters, chart: value }: SideProps) {
  if (!value)
    return <Card title={`${side}No chart`}>A chart needs two adjusters {side ? 'there' : 'on the axle'}.</Card>;
  const find = (name: string): Adjuster | undefined => adjusters.find((one) => one.id === name);
  const [across, down] = [find(value.across.adjuster), find(value.down.adjuster)];
  const show = (adjuster: Adjuster | undefined, position: Position): string =>
    typeof position === 'number'
      ? String(Number(position.toFixed(3))).replace('-', '−')
      : position || (adjuster?.id ?? '');
  const angle = (x: number | undefined): string =>
    x === undefined ? '–' : formatAngle(x, { sign: true, decimal: units.value.decimal });
  const caster = value.cells.some((row) => row.some((cell) => cell.caster !== undefined));
  return (
    <Card title={`${side}${caster ? 'Caster over camber' : 'Camber over toe'}, degrees gained`}>
      <p class="soft">
        Across: {across?.name}. Down: {down?.name}. Against where they stood when the dimensions were taken
        {across && down ? ` (${positionText(across, across.reference)}, ${positionText(down, down.reference)})` : ''}.
        Worked out for this car from its geometry on file.
      </p>
      <div class="chart-scroll">
        <table class="chart-table">
          <thead>
            <tr>
              <td />
              {value.across.positions.map((position) => (
                <th key={position} scope="col">
                  {show(across, position)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {value.cells.map((row, i) => (
              <tr key={value.down.positions[i]}>
                <th scope="row">{show(down, value.down.positions[i] ?? '')}</th>
                {row.map((cell, j) => (
                  <td key={value.across.positions[j]}>
                    <span>{angle(caster ? cell.caster : cell.camber)}</span>
                    <span>{angle(caster ? cell.camber : cell.toe)}</span>
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </Card>
  );
}
