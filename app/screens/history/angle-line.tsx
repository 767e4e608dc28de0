/**
 * One angle over the visits: open marks as found, solid marks as left and joined, the window as a band. Figures and days
 * are letters beside the drawing, which is stretched to what room there is, so that nothing prints over anything.
 */
import type { Window } from '../../../core/contract.ts';
import { shortDay } from '../../state/days.ts';
import type { Line, Past } from './past.ts';

interface Props {
  readonly past: readonly Past[];
  readonly line: Line;
  readonly format: (degrees: number) => string;
}

/** Of the drawing, before it is stretched. */
const WIDTH = 1000;
const HEIGHT = 100;
const EDGE = 30;
/** px, of the marks of what was left; smaller where many visits stand close. */
const LARGEST = 8;
const ROOM = 220;

export function AngleLine({ past, line, format }: Props) {
  const points = past.map((one, i) => ({
    x: past.length === 1 ? WIDTH / 2 : EDGE + (i * (WIDTH - 2 * EDGE)) / (past.length - 1),
    found: one.found(line),
    left: one.left(line),
  }));
  const { y, limits } = scaleOf(
    points.flatMap(({ found, left }) => [found, left]).filter((value) => value !== undefined),
    line.window,
  );
  const last = points.at(-1)?.left;
  const size = Math.min(LARGEST, Math.max(2, ROOM / past.length));
  return (
    <figure class="angle-line">
      <Limits limits={limits} y={y} format={format} />
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} preserveAspectRatio="none" role="img">
        <title>
          {past.length} visit{past.length === 1 ? '' : 's'}; last left at{' '}
          {last === undefined ? 'nothing' : format(last)}
        </title>
        {line.window && (
          <rect
            class="angle-window"
            width={WIDTH}
            y={y(line.window.high)}
            height={y(line.window.low) - y(line.window.high)}
          />
        )}
        <Marks points={points} y={y} size={size} />
      </svg>
      <figcaption class="angle-days">
        <span>{shortDay(past[0]?.day ?? '')}</span>
        {past.length > 1 && <span>{shortDay(past.at(-1)?.day ?? '')}</span>}
      </figcaption>
    </figure>
  );
}

interface Scale {
  /** From the top, of HEIGHT. */
  readonly y: (value: number) => number;
  /** What stands beside the drawing: the window's ends; where there is none the least and the most. */
  readonly limits: { readonly low: number; readonly high: number };
}

function scaleOf(values: readonly number[], window: Window | undefined): Scale {
  const all = [...values, ...(window ? [window.low, window.high] : [])];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const room = (high - low) * 0.12 || 0.1;
  return {
    y: (value) => HEIGHT - ((value - low + room) / (high - low + 2 * room)) * HEIGHT,
    limits: window ?? { low, high },
  };
}

/** Each keeps to its side of the middle between them, however close they are and however large the letters. */
function Limits({ limits: { low, high }, y, format }: Omit<Props, 'past' | 'line'> & Scale) {
  const places = { '--high': `${y(high)}%`, '--low': `${y(low)}%`, '--middle': `${(y(high) + y(low)) / 2}%` };
  return (
    <div class="angle-limits" style={places}>
      <span class="angle-high">{figure(format(high))}</span>
      {low !== high && <span class="angle-low">{figure(format(low))}</span>}
    </div>
  );
}

/** Which side a thrust angle is to takes a word, for which there is no room beside a drawing or in a table. */
export const figure = (text: string): string => text.replace(/ (left|right)$/, '');

interface Point {
  readonly x: number;
  readonly found: number | undefined;
  readonly left: number | undefined;
}

/** One path for all marks of a kind: a car of two hundred visits has no more to draw than one of two. */
function Marks({ points, y, size }: Pick<Scale, 'y'> & { readonly points: readonly Point[]; readonly size: number }) {
  const kept = points.flatMap(({ x, left }) => (left === undefined ? [] : [`${x} ${y(left)}`]));
  const work = points.flatMap(({ x, found, left }) =>
    found === undefined || left === undefined ? [] : [`M${x} ${y(found)}V${y(left)}`],
  );
  // A stroke of no length with round ends is a disc, and stays one however the drawing is stretched.
  const discs = (kind: 'found' | 'left') =>
    points.map(({ x, [kind]: value }) => (value === undefined ? '' : `M${x} ${y(value)}h0`)).join('');
  const found = discs('found');
  return (
    <>
      {kept.length > 1 && <path class="angle-left" d={`M${kept.join('L')}`} />}
      <path class="angle-work" d={work.join('')} />
      <path class="angle-mark" stroke-width={1.25 * size + 2} d={found} />
      <path class="angle-found" stroke-width={1.25 * size - 1} d={found} />
      <path class="angle-mark" stroke-width={size} d={discs('left')} />
    </>
  );
}

/** What the marks are; once over a set of lines. */
export function AngleLegend() {
  const mark = { viewBox: '0 0 16 16', width: '16', height: '16' } as const;
  return (
    <p class="ruler-legend">
      <span>
        <svg {...mark} aria-hidden="true">
          <path class="angle-mark" stroke-width="12" d="M8 8h0" />
          <path class="angle-found" stroke-width="9" d="M8 8h0" />
        </svg>
        as found
      </span>
      <span>
        <svg {...mark} aria-hidden="true">
          <path class="angle-mark" stroke-width="8" d="M8 8h0" />
        </svg>
        as left
      </span>
      <span>
        <svg {...mark} aria-hidden="true">
          <path class="angle-window" d="M0 2h16v12H0z" />
        </svg>
        window
      </span>
    </p>
  );
}
