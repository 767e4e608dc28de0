import type { Adjuster } from '../../../core/contract.ts';
import { formatAngle } from '../../../core/units/format.ts';
import { figure, type ShopUnits } from '../../../core/units/shop.ts';
import type { AdjusterPicture, PictureProps } from './picture.tsx';
import { Frame, StraightArrow } from './picture.tsx';

const WIDTH = 290;
const ROW = 26;
/** More rows than this do not fit beside the figures of the card; more hops cannot be counted by eye. */
const MOST_ROWS = 5;
const MOST_HOPS = 8;
const LABEL = 92;
const ANGLES = ['caster', 'camber', 'toe'] as const;
type Row = { readonly label: string | number } & { readonly [angle in (typeof ANGLES)[number]]?: number };

const rowsOf = (adjuster: Adjuster): readonly Row[] | undefined => adjuster.positions;

/** Which rows to print: both ends of the move, then their neighbours, in the order of the chart. */
export function rowsShown(count: number, from: number, to: number): number[] {
  const near = (i: number) => Math.min(Math.abs(i - from), Math.abs(i - to));
  return Array.from({ length: count }, (_, i) => i)
    .sort((a, b) => near(a) - near(b) || a - b)
    .slice(0, MOST_ROWS)
    .sort((a, b) => a - b);
}

function Picture(props: PictureProps) {
  const rows = rowsOf(props.adjuster);
  return rows ? <Chart {...props} rows={rows} /> : <Steps {...props} />;
}

/** The chart as printed, about the move: the row it stands on dashed, the row to go to lit. */
function Chart({ rows, ...props }: PictureProps & { rows: readonly Row[] }) {
  const place = (position: unknown) =>
    Math.max(
      0,
      rows.findIndex(({ label }) => String(label) === String(position)),
    );
  const [from, to] = [place(props.from), place(props.to)];
  const shown = rowsShown(rows.length, from, to);
  const used = ANGLES.filter((angle) => rows.some((row) => row[angle]));
  const columns = used.length > 0 ? used : ANGLES;
  const middle = (i: number) => LABEL + ((i + 0.5) * (WIDTH - LABEL - 6)) / columns.length;
  const y = (i: number) => 24 + shown.indexOf(i) * ROW;
  const bottom = 24 + shown.length * ROW;
  const { note } = words(props);
  return (
    <Frame width={WIDTH} height={bottom + 4} title={`The printed chart, from ${props.from} to ${props.to}: ${note}`}>
      {columns.map((angle, i) => (
        <text key={angle} class="picture-small" x={middle(i)} y="16" text-anchor="middle">
          {angle}
        </text>
      ))}
      <path class="picture-line" d={`M22 24H${WIDTH - 2}V${bottom}H22z`} />
      {shown.slice(1).map((i, above) => (
        // Rows left out between two are a dashed rule.
        <path
          key={i}
          class="picture-line"
          stroke-dasharray={i - (shown[above] ?? 0) > 1 ? '2 4' : undefined}
          d={`M22 ${y(i)}H${WIDTH - 2}`}
        />
      ))}
      <rect class="cam-ring" x="26" y={y(from) + 3} width={WIDTH - 32} height={ROW - 6} rx="4" />
      <g class="shim shim-added">
        <g>
          <rect x="23" y={y(to) + 1} width={WIDTH - 26} height={ROW - 2} />
        </g>
      </g>
      {shown.map((i) => (
        <g key={i} class={i === to ? 'shim-added' : undefined}>
          <Cells
            row={rows[i]}
            columns={columns}
            middle={middle}
            y={y(i) + ROW / 2}
            lit={i === to}
            units={props.units}
          />
        </g>
      ))}
      <StraightArrow from={[10, y(from) + ROW / 2]} to={[10, y(to) + ROW / 2]} />
    </Frame>
  );
}

/** As charts print them: two decimals in every cell, or minutes. */
const degrees = (x: number, { angle = 'degrees', decimal = '.' }: ShopUnits = {}): string =>
  formatAngle(x, { mode: angle, decimal, sign: true });

interface CellsProps extends Pick<PictureProps, 'units'> {
  row: Row | undefined;
  columns: readonly (typeof ANGLES)[number][];
  middle: (column: number) => number;
  y: number;
  lit: boolean;
}

function Cells({ row, columns, middle, y, lit, units }: CellsProps) {
  if (!row) return null;
  const label = String(row.label);
  const name = lit ? 'shim-size' : 'picture-small';
  return (
    <>
      <text class={name} x="32" y={y} dy=".36em" font-weight="700">
        {label.length > 7 ? `${label.slice(0, 6)}…` : label}
      </text>
      {columns.map((angle, i) => (
        <text key={angle} class={name} x={middle(i)} y={y} dy=".36em" text-anchor="middle">
          {degrees(row[angle] ?? 0, units)}
        </text>
      ))}
    </>
  );
}

/** A line of steps: one hop each, counted; too many are one long hop. */
function Steps(props: PictureProps) {
  const [from, to] = [Number(props.from), Number(props.to)];
  const count = Math.abs(to - from);
  const way = Math.sign(to - from);
  const single = count > MOST_HOPS || !Number.isInteger(count);
  const hops = single ? 1 : count;
  const first = 40;
  const size = (WIDTH - 2 * first) / Math.max(1, hops);
  const at = (hop: number) => (way < 0 ? WIDTH - first - hop * size : first + hop * size);
  const said = words(props);
  return (
    <Frame width={WIDTH} height={108} title={`Steps, from ${said.from} to ${said.to}: ${said.note}`}>
      <path class="picture-line" d={`M14 74H${WIDTH - 14}`} />
      {Array.from({ length: hops + 1 }, (_, i) => (
        <path key={i} class="picture-line" d={`M${at(i)} 66v16`} />
      ))}
      {way !== 0 &&
        Array.from({ length: hops }, (_, i) => {
          const [a, b] = [at(i), at(i + 1)];
          const rise = Math.min(40, size * 0.8);
          return (
            <g key={i} class="picture-arrow">
              <path d={`M${a} 60Q${(a + b) / 2} ${60 - rise} ${b - way * 5} ${52}`} />
              <path class="picture-head" d={`M${b} 64l${-12 * way}-6l${9 * way}-8z`} />
              <text class="rod-count" x={(a + b) / 2} y={54 - rise / 2 - 6} text-anchor="middle">
                {single ? `${figure(count, props.units)} steps` : i + 1}
              </text>
            </g>
          );
        })}
      <circle class="cam-ring" cx={at(0)} cy="74" r="8" />
      {way !== 0 && <circle class="picture-head" cx={at(hops)} cy="74" r="7" />}
      <text class="picture-small" x={at(0)} y="102" text-anchor="middle">
        {said.from}
      </text>
      {way !== 0 && (
        <text class="cam-to" font-size="17" x={at(hops)} y="102" text-anchor="middle">
          {said.to}
        </text>
      )}
    </Frame>
  );
}

function words({ adjuster, from, to, units }: PictureProps) {
  if (rowsOf(adjuster))
    return {
      from: String(from),
      to: String(to),
      note: String(from) === String(to) ? 'stays as it is' : 'row of the chart',
    };
  const change = Number(to) - Number(from);
  const count = `${figure(Math.abs(change), units)} step${Math.abs(change) === 1 ? '' : 's'}`;
  return {
    from: figure(Number(from), units),
    to: figure(Number(to), units),
    note: change === 0 ? 'stays as it is' : `${count} ${change > 0 ? 'up' : 'down'}`,
  };
}

export const effectTable: AdjusterPicture = { Picture, words, wide: true };
