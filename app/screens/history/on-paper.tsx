/** The history on paper: its lines, then every figure; as much on a page as is sure to fit on A4 and on US Letter. */
import type { ComponentChildren } from 'preact';
import { inParts } from '../../parts/printed.tsx';
import { shortDay } from '../../state/days.ts';
import { units } from '../../state/preferences.ts';
import { AngleLegend, AngleLine, figure } from './angle-line.tsx';
import type { History, Line, Past } from './past.ts';

type FormatOf = (line: Line) => (value: number) => string;

/** On a page: lines, two beside each other; angles and visits of a table. */
const DRAWN = 10;
const [ANGLES, VISITS] = [6, 36];

/** @param note what the figures are in and against, for each page */
export function historyPages({ past, lines }: History, formatOf: FormatOf, note: string): readonly ComponentChildren[] {
  const drawn = inParts(lines, DRAWN).map(({ of }) => <Drawn past={past} lines={of} formatOf={formatOf} />);
  const tables = inParts(lines, ANGLES).flatMap(({ of }) =>
    inParts(past, VISITS).map((visits) => <Table past={visits.of} lines={of} formatOf={formatOf} />),
  );
  return [...drawn, ...tables].map((page) => (
    <>
      {note && <p>{note}</p>}
      {page}
    </>
  ));
}

interface Props {
  readonly past: readonly Past[];
  readonly lines: readonly Line[];
  readonly formatOf: FormatOf;
}

function Drawn({ past, lines, formatOf }: Props) {
  return (
    <>
      <AngleLegend />
      <div class="history-drawn">
        {lines.map((line) => (
          <div key={line.id}>
            <strong>{line.name}</strong>
            <AngleLine past={past} line={line} format={formatOf(line)} />
          </div>
        ))}
      </div>
    </>
  );
}

function Table({ past, lines, formatOf }: Props) {
  const show = (line: Line, value: number | undefined) => (value === undefined ? '–' : figure(formatOf(line)(value)));
  return (
    <table class="history-table">
      <thead>
        <tr>
          <th scope="col" rowSpan={2}>
            Visit
          </th>
          {lines.map(({ id, name, angle }) => (
            <th key={id} scope="colgroup" colSpan={2}>
              {name}
              {angle === 'thrustAngle' && `, ${units.value.thrust === 'right-plus' ? '+' : '−'} to the right`}
            </th>
          ))}
        </tr>
        <tr>
          {lines.flatMap(({ id }) =>
            ['found', 'left'].map((word) => (
              <th key={`${id} ${word}`} scope="col">
                {word}
              </th>
            )),
          )}
        </tr>
      </thead>
      <tbody>
        {past.map((one) => (
          <tr key={one.day}>
            <th scope="row">{shortDay(one.day)}</th>
            {lines.flatMap((line) =>
              [one.found(line), one.left(line)].map((value, i) => <td key={`${line.id} ${i}`}>{show(line, value)}</td>),
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
