import type { Corner } from '../../core/contract.ts';
import { CornerMark } from './corner-mark.tsx';
import { Verdict, type VerdictState } from './verdict.tsx';

export interface GridRow {
  id: string;
  label: string;
  /** The row's only cell, across all columns, and whose it is: a figure of the axle, not of a wheel. */
  whole?: { cell: string; of: string };
}
export interface GridColumn {
  id: string;
  /** Heads the column with the corner's mark; without it the label stands alone. */
  corner?: Corner;
  label?: string;
}
export interface GridCell {
  /** As typed. */
  text: string;
  verdict?: VerdictState;
  /** The text cannot be read as a value: shown struck with a wavy line, never thrown away. */
  refused?: boolean;
  /** What is typed now takes its place. */
  fresh?: boolean;
  /** Left out on purpose. */
  skipped?: boolean;
}

export interface ReadingGridProps {
  rows: readonly GridRow[];
  columns: readonly GridColumn[];
  /** By `cellId(column.id, row.id)`; a cell that is absent cannot be picked. */
  values: Readonly<Record<string, GridCell | undefined>>;
  /** The cell that is being typed. */
  active?: string;
  onPick?: (cell: string) => void;
}

/** The name of one cell: `LF.camber`. */
export const cellId = (column: string, row: string): string => `${column}.${row}`;

/** The ruled form of one axle: angles down, wheels across, each cell as it was typed. Stacks on another. */
export function ReadingGrid({ rows, columns, values, active, onPick }: ReadingGridProps) {
  return (
    <table class="reading-grid">
      <thead>
        <tr>
          <td />
          {columns.map(({ id, corner, label }) => (
            <th key={id} scope="col">
              {corner ? <CornerMark corner={corner} /> : label}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.id}>
            <th scope="row">{row.label}</th>
            {cellsOf(row, columns).map(({ id, of, span }) => (
              <td key={id} colSpan={span}>
                <Cell
                  cell={values[id]}
                  name={`${of} ${row.label}`}
                  active={id === active}
                  onPick={onPick && (() => onPick(id))}
                />
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function cellsOf({ id: row, whole }: GridRow, columns: readonly GridColumn[]) {
  if (whole) return [{ id: whole.cell, of: whole.of, span: columns.length }];
  return columns.map(({ id, corner, label }) => ({ id: cellId(id, row), of: label ?? corner ?? id, span: 1 }));
}

interface CellProps {
  cell: GridCell | undefined;
  name: string;
  active: boolean;
  onPick?: () => void;
}

function Cell({ cell, name, active, onPick }: CellProps) {
  if (!cell) return null;
  const inside = (
    <>
      <span class={cell.refused ? 'reading-grid-text reading-grid-refused' : 'reading-grid-text'}>
        {active && cell.fresh ? <mark class="reading-grid-fresh">{cell.text}</mark> : cell.text}
        {active && <span class="reading-grid-caret" />}
        {!cell.text && !active && <span class="reading-grid-blank">{cell.skipped ? 'skipped' : '·'}</span>}
      </span>
      {cell.verdict && <Verdict state={cell.verdict} />}
    </>
  );
  if (!onPick) return <span class="reading-grid-cell">{inside}</span>;
  return (
    <button
      type="button"
      class={active ? 'reading-grid-cell reading-grid-active' : 'reading-grid-cell'}
      aria-label={`${name}: ${cell.text || (cell.skipped ? 'skipped' : 'empty')}`}
      aria-pressed={active}
      onClick={onPick}
    >
      {inside}
    </button>
  );
}
