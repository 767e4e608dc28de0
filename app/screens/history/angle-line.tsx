/** One angle over the visits: open marks as found, solid marks as left and joined, the window as a band. */
import type { Window } from '../../../core/contract.ts';
import type { Field } from '../../state/fields.ts';
import type { Past } from './past.ts';

interface Props {
  readonly past: readonly Past[];
  readonly field: Field;
  readonly window: Window | undefined;
  readonly format: (degrees: number) => string;
}

const WIDTH = 280;
const HEIGHT = 96;
const EDGE = 12;
/** Radius of the mark of what was left. */
const LARGEST = 4;

export function AngleLine({ past, field, window, format }: Props) {
  const points = past.map((one, i) => ({
    x: past.length === 1 ? WIDTH / 2 : EDGE + (i * (WIDTH - 2 * EDGE)) / (past.length - 1),
    found: one.found(field),
    left: one.left(field),
  }));
  const values = [...points.flatMap(({ found, left }) => [found, left]), window?.low, window?.high].filter(
    (value) => value !== undefined,
  );
  if (values.length === 0) return null;
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const room = (high - low) * 0.1 || 0.1;
  const y = (value: number) => HEIGHT - ((value - low + room) / (high - low + 2 * room)) * HEIGHT;
  const left = points.flatMap((point) => (point.left === undefined ? [] : [`${point.x} ${y(point.left)}`]));
  // Many visits stand close: their marks are smaller, so that the line can still be seen.
  const size = Math.min(LARGEST, Math.max(1, (0.4 * WIDTH) / past.length));
  const work = points.flatMap(({ x, found, left: kept }) =>
    found === undefined || kept === undefined ? [] : [`M${x} ${y(found)}V${y(kept)}`],
  );
  const marks = (kind: 'found' | 'left', radius: number) =>
    points.map(({ x, [kind]: value }) => (value === undefined ? '' : disc(x, y(value), radius))).join('');
  const last = points.at(-1)?.left;
  return (
    <svg class="angle-line" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} width="100%" role="img">
      <title>
        {past.length} visits; last left at {last === undefined ? 'nothing' : format(last)}
      </title>
      {window && (
        <>
          <rect class="angle-window" x="0" width={WIDTH} y={y(window.high)} height={y(window.low) - y(window.high)} />
          <text class="angle-figure" x="2" y={y(window.high) + 11}>
            {format(window.high)}
          </text>
          <text class="angle-figure" x="2" y={y(window.low) - 3}>
            {format(window.low)}
          </text>
        </>
      )}
      {left.length > 1 && <path class="angle-left" d={`M${left.join('L')}`} />}
      {/* One path for all marks of a kind: a car of two hundred visits has no more to draw than one of two. */}
      <path class="angle-work" d={work.join('')} />
      <path class="angle-found" d={marks('found', 1.25 * size)} />
      <path class="angle-mark" d={marks('left', size)} />
    </svg>
  );
}

/** A disc as part of a path. */
const disc = (x: number, y: number, radius: number): string =>
  `M${x - radius} ${y}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0Z`;
