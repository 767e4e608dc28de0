/** A chart in words: heads as the cards of a visit say a position, gains in the units that the technician reads. */
import { adjusterKinds } from '../../../core/adjuster/catalogue.ts';
import { adjusterName } from '../../../core/adjuster/names.ts';
import type { Adjuster, AxleName, Corner, Position } from '../../../core/contract.ts';
import type { Chart, ChartCell, ChartSide } from '../../../core/plan/chart.ts';
import { adjusterPictures } from '../../parts/drawings/catalogue.ts';
import { units } from '../../state/preferences.ts';
import { positionText } from '../../state/standing.ts';
import { toeUnitWord, valueText } from '../../state/units.ts';

export interface Head {
  readonly text: string;
  /** The adjuster stands there. */
  readonly now: boolean;
}
export interface TableView {
  readonly note: string;
  readonly across: readonly Head[];
  readonly down: readonly Head[];
  /** Row by row; the lines of each cell, as `angles` names them. */
  readonly cells: readonly (readonly (readonly string[])[])[];
}
export interface ChartView {
  /** `front`, `rear, left` */
  readonly name: string;
  readonly title: string;
  readonly table?: TableView;
}

interface Given {
  readonly axle: AxleName;
  readonly side: 'both' | 'left' | 'right';
  readonly corner: Corner;
  readonly adjusters: readonly Adjuster[];
  readonly chart: Chart | undefined;
  readonly rim: number | undefined;
}

type Shown = keyof ChartCell & ('caster' | 'camber' | 'toe');

export function chartView({ axle, side, corner, adjusters, chart, rim }: Given): ChartView {
  const name = side === 'both' ? axle : `${axle}, ${side}`;
  const before = side === 'both' ? '' : `${capital(side)}: `;
  const find = (of: ChartSide) => adjusters.find(({ id }) => id === of.adjuster);
  const [across, down] = chart ? [find(chart.across), find(chart.down)] : [];
  if (!chart || !across || !down) return { name, title: before ? `${before}no chart` : 'No chart' };
  const angles = anglesOf(chart, [across, down]);
  const title = angles.map((angle, i) => (i === 0 && !before ? capital(angle) : angle)).join(' over ');
  return {
    name,
    title: `${before}${title}, ${unitText(angles)} gained`,
    table: {
      note: `Across: ${stands(across, chart.across)}. Down: ${stands(down, chart.down)}. Gained from there, worked out for this car.`,
      across: headsOf(across, corner, chart.across),
      down: headsOf(down, corner, chart.down),
      cells: chart.cells.map((row) => row.map((cell) => angles.map((angle) => gained(angle, cell[angle], rim)))),
    },
  };
}

/** Caster and camber; toe too where a rod is one of the two, and where there is no caster to show. */
function anglesOf({ cells }: Chart, pair: readonly Adjuster[]): readonly Shown[] {
  const caster = cells.some((row) => row.some((cell) => cell.caster !== undefined));
  const rod = pair.some((one) => adjusterKinds[one.kind]?.touches(one).links?.length);
  return [...(caster ? (['caster'] as const) : []), 'camber', ...(rod || !caster ? (['toe'] as const) : [])];
}

function unitText(angles: readonly Shown[]): string {
  const unit = angles.includes('toe') ? toeUnitWord() : 'degrees';
  return unit === 'degrees' ? unit : `degrees and toe in ${unit}`;
}

/** `Lower link, eccentric bolt, stands at mark +2`: a rod is counted in turns and flats from there on. */
const stands = (adjuster: Adjuster, { stands: at }: ChartSide): string =>
  isCounted(adjuster, at)
    ? `${adjusterName(adjuster)}, from where it stands`
    : `${adjusterName(adjuster)}, at ${positionText(adjuster, at)}`;

const isCounted = (adjuster: Adjuster, at: Position): boolean =>
  adjusterPictures[adjuster.kind]?.words({ adjuster, corner: 'LF', from: at, to: at, units: units.value }).from === '';

function headsOf(adjuster: Adjuster, corner: Corner, { positions, stands: at }: ChartSide): readonly Head[] {
  const counted = isCounted(adjuster, at);
  return positions.map((position) => {
    const now = position === at;
    if (now && counted) return { text: 'now', now };
    const words = adjusterPictures[adjuster.kind]?.words({
      adjuster,
      corner,
      from: at,
      to: position,
      units: units.value,
    });
    if (!words) return { text: String(position), now };
    const way = words.unit ?? (counted ? words.note.split(',')[0] : '');
    return { text: [words.to, way].filter(Boolean).join(' '), now };
  });
}

/** With its sign; nothing gained is 0. */
function gained(angle: Shown, value: number | undefined, rim: number | undefined): string {
  if (value === undefined) return '–';
  const text = valueText(angle, value, rim).replace(/^−(?=[0°′.,]*$)/, '');
  return value > 0 && /[1-9]/.test(text) ? `+${text}` : text;
}

const capital = (text: string): string => `${text[0]?.toUpperCase()}${text.slice(1)}`;
