/** A chart on the screen: it opens at the cell where the adjusters stand, and its heads stay in sight. */
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { ChartView, Head, TableView } from './chart-view.ts';

interface Props {
  readonly view: ChartView;
  readonly table: TableView;
}

export function ChartTable({ view, table }: Props) {
  const scroll = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const box = scroll.current;
    if (box) return keptAtNow(box);
  }, [view.name]);
  return (
    <>
      <p class="soft">{table.note}</p>
      {/* Scrolled by a keyboard too. */}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached without a pointer. */}
      <section class="chart-scroll" ref={scroll} tabIndex={0} aria-label={`Chart, ${view.name}`}>
        <ChartCells table={table} />
      </section>
    </>
  );
}

/**
 * Opens a chart at the cell of now, and there again where its letters come late, or the glass is turned: until a hand has
 * moved it.
 * @returns ends that
 */
function keptAtNow(box: HTMLElement): () => void {
  const open = () => {
    const cell = box.querySelector<HTMLElement>('td[aria-current]');
    if (!cell) return;
    const corner = box.querySelector<HTMLElement>('thead td');
    const inRow = [...(cell.parentElement?.querySelectorAll('td') ?? [])].map(({ offsetLeft }) => offsetLeft);
    const inColumn = [...box.querySelectorAll<HTMLElement>('tbody tr')].map(({ offsetTop }) => offsetTop);
    box.scrollLeft = scrolled(inRow, cell.offsetLeft, cell.offsetWidth, corner?.offsetWidth ?? 0, box.clientWidth);
    box.scrollTop = scrolled(inColumn, cell.offsetTop, cell.offsetHeight, corner?.offsetHeight ?? 0, box.clientHeight);
  };
  open();
  const sizes = new ResizeObserver(open);
  for (const one of [box, ...box.querySelectorAll('thead, tbody')]) sizes.observe(one);
  const end = () => sizes.disconnect();
  for (const hand of ['pointerdown', 'wheel', 'keydown']) box.addEventListener(hand, end, { passive: true });
  return end;
}

/**
 * How far a chart is scrolled one way, px, so that a cell is in the middle of what the heads leave free and the first one
 * beside the heads is whole.
 *
 * @param starts where its cells begin
 * @param at where the one that is meant begins, and its size
 * @param heads what stays in sight, of the room that there is
 */
function scrolled(starts: readonly number[], at: number, size: number, heads: number, room: number): number {
  const wanted = at - Math.max(0, (room - heads - size) / 2);
  return (starts.find((start) => start >= wanted) ?? at) - heads;
}

interface CellsProps {
  readonly table: TableView;
  /** Which of its columns and rows; all of them unless said. */
  readonly columns?: Part;
  readonly rows?: Part;
}
interface Part {
  readonly from: number;
  readonly of: readonly Head[];
}

export function ChartCells({ table, columns, rows }: CellsProps) {
  const { from: left, of: across } = columns ?? { from: 0, of: table.across };
  const { from: top, of: down } = rows ?? { from: 0, of: table.down };
  return (
    <table class="chart-table" style={{ '--columns': across.length }}>
      <thead>
        <tr>
          <td />
          {across.map((head, j) => (
            <HeadCell key={j} scope="col" head={head} />
          ))}
        </tr>
      </thead>
      <tbody>
        {down.map((head, i) => (
          <tr key={i}>
            <HeadCell scope="row" head={head} />
            {across.map((column, j) => (
              <td key={j} aria-current={head.now && column.now ? 'true' : undefined}>
                {table.cells[top + i]?.[left + j]?.map((line, k) => (
                  <span key={k}>{line}</span>
                ))}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function HeadCell({ scope, head: { text, now } }: { readonly scope: 'col' | 'row'; readonly head: Head }) {
  return (
    <th scope={scope} class={now ? 'chart-now' : undefined}>
      {text}
      {now && text !== 'now' && <small>now</small>}
    </th>
  );
}
