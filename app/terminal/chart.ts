/**
 * `npm run chart -- FILE.json [--json]`: the car's own chart, positions across and down, and what one step of each
 * adjuster does.
 */
import { parseArgs } from 'node:util';
import { adjusterEffects, axleEffects } from '../../core/ask/adjuster-effects.ts';
import { axleCharts } from '../../core/ask/chart-of.ts';
import type { Axle, Position } from '../../core/contract.ts';
import type { Chart } from '../../core/plan/chart.ts';
import type { StepEffect } from '../../core/pose/effects.ts';
import { formatAngle } from '../../core/units/format.ts';
import { carFileOf, command } from './car-file.ts';

interface AxleChart {
  readonly axle: string;
  /** Where the right side is not the mirror of the left. */
  readonly side?: 'left' | 'right';
  readonly steps: readonly StepEffect[];
  readonly chart?: Chart;
}

const CELL = 14;
const show = (position: Position): string =>
  typeof position === 'number' ? String(Number(position.toFixed(3))).replace('-', '−') : position;

command('npm run chart -- FILE.json [--json]', () => {
  const { values, positionals } = parseArgs({ allowPositionals: true, options: { json: { type: 'boolean' } } });
  const { car } = carFileOf(positionals);
  const charts = (['front', 'rear'] as const).flatMap((name) => chartsOf(name, car[name]));
  if (values.json) return JSON.stringify(charts, null, 2);
  return [`${car.label}: degrees gained against where the dimensions were taken`, ...charts.map(print)].join('\n\n');
});

function chartsOf(name: string, axle: Axle): AxleChart[] {
  return axleCharts(axle).map(({ side, chart }) => ({
    axle: name,
    ...(side === 'both'
      ? { steps: adjusterEffects(axle.suspension, axle.adjusters) }
      : { side, steps: axleEffects(axle)[side] }),
    ...(chart && { chart }),
  }));
}

function print({ axle, side, steps, chart }: AxleChart): string {
  const angle = (x: number | undefined): string => (x === undefined ? '–' : formatAngle(x, { sign: true }));
  const lines = [`${axle.toUpperCase()}${side ? `, ${side}` : ''}`];
  for (const { adjuster, step, camber, caster, toe } of steps) {
    const casters = caster === undefined ? '' : `caster ${angle(caster)}, `;
    lines.push(`  ${adjuster}, ${step}: ${casters}camber ${angle(camber)}, toe ${angle(toe)}`);
  }
  if (chart) lines.push('', ...table(chart, angle));
  return lines.join('\n');
}

function table({ across, down, cells }: Chart, angle: (x: number | undefined) => string): string[] {
  const caster = cells.some((row) => row.some((cell) => cell.caster !== undefined));
  const head = ['', ...across.positions.map(show)].map((text) => text.padStart(CELL)).join('');
  const rows = cells.map((row, i) => {
    const texts = row.map(({ camber, caster: c, toe }) =>
      caster ? `${angle(c)}/${angle(camber)}` : `${angle(camber)}/${angle(toe)}`,
    );
    return [show(down.positions[i] ?? ''), ...texts].map((text) => text.padStart(CELL)).join('');
  });
  return [
    `  across ${across.adjuster}, down ${down.adjuster}: ${caster ? 'caster/camber' : 'camber/toe'}`,
    head,
    ...rows,
  ];
}
