/** A chart on paper: as many columns and rows on a page as are sure to fit on A4 and on US Letter, both upright. */
import type { ComponentChildren } from 'preact';
import { inParts } from '../../parts/printed.tsx';
import type { ChartView } from './chart-view.ts';
import { ChartCells } from './table.tsx';

/** Of 186 mm of width, less the heads of rows. */
const COLUMNS = 10;
/** mm for rows, and of a row: what is above and below its lines, and each line. */
const [HEIGHT, EDGES, LINE] = [195, 1.6, 4];

export function chartPages({ name, title, table }: ChartView): readonly ComponentChildren[] {
  if (!table) return [];
  const lines = table.cells[0]?.[0]?.length ?? 1;
  const rows = inParts(table.down, Math.floor(HEIGHT / (EDGES + LINE * Math.max(lines, linesOf(table.down)))));
  return rows.flatMap((part) =>
    inParts(table.across, COLUMNS).map((columns) => (
      <>
        <p>
          <strong>{`${name[0]?.toUpperCase()}${name.slice(1)}`}.</strong> {title}.
        </p>
        <p>{table.note}</p>
        <ChartCells table={table} columns={columns} rows={part} />
      </>
    )),
  );
}

/** Lines that the longest head of a row takes, about eighteen letters a line. */
const linesOf = (heads: readonly { readonly text: string; readonly now: boolean }[]): number =>
  Math.max(...heads.map(({ text, now }) => Math.ceil(text.length / 16) + (now ? 1 : 0)));
