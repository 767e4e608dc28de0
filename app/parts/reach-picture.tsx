import type { ComponentChildren } from 'preact';
import type { Place, Range, Reach, Reached } from '../../core/plan/reach/reach.ts';
import { ticksOf } from './ruler.tsx';

export interface ReachPictureProps {
  reach: Reach;
  /** An angle in the chosen units, with its mark; `digits` decimals where they are degrees. */
  format: (degrees: number, digits?: number) => string;
}

/** The whole picture, and the plot in it. */
const [WIDTH, HEIGHT] = [320, 296];
const [LEFT, TOP, ACROSS, UP] = [56, 4, 260, 250];
/** Share of the view that is added all round, so that its edge cuts no mark. */
const MARGIN = 0.05;

/** Everywhere that a corner's adjusters can put two of its angles, with the window, the found and the planned place. */
export function ReachPicture({ reach, format }: ReachPictureProps) {
  const { across, found, planned, all, withToe } = reach;
  if (reach.adjusters === 0) return <p class="soft">Nothing at this corner may be moved.</p>;
  const [x, y] = [axisOf(reach.view[0], ACROSS), axisOf(reach.view[1], -UP)];
  const at = (place: Place) => ({ cx: x.at(place[0]), cy: y.at(place[1]) });
  const says = [verdictOf(reach), beyondOf(reach, format)].filter(Boolean).join(' ');
  return (
    <figure class="reach">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} width="100%" role="img">
        <title>{[...marksOf(reach, format), says].join(' ')}</title>
        <rect class="reach-paper" x={LEFT} y={TOP} width={ACROSS} height={UP} />
        <svg x={LEFT} y={TOP} width={ACROSS} height={UP} aria-hidden="true">
          <Dots class="reach-all" x={x} y={y} {...all} />
          {x.ticks.map((tick) => (
            <line key={tick} class="reach-line" x1={x.at(tick)} x2={x.at(tick)} y2={UP} />
          ))}
          {y.ticks.map((tick) => (
            <line key={tick} class="reach-line" y1={y.at(tick)} y2={y.at(tick)} x2={ACROSS} />
          ))}
          <WindowBox reach={reach} x={x} y={y} />
          <Dots class="reach-dots" x={x} y={y} {...(withToe ?? all)} />
          {planned && (
            <path
              class="reach-way"
              d={`M${x.at(found[0])} ${y.at(found[1])}L${x.at(planned[0])} ${y.at(planned[1])}`}
            />
          )}
          {planned && <circle class="reach-planned" {...at(planned)} r="6" />}
          <circle class="reach-found" {...at(found)} r="6.5" />
        </svg>
        <g class="reach-figure" text-anchor="middle">
          {x.ticks.map((tick) => (
            <text key={tick} x={LEFT + x.at(tick)} y={TOP + UP + 17}>
              {format(tick, x.digits)}
            </text>
          ))}
          <text x={LEFT + ACROSS / 2} y={HEIGHT - 4}>
            {across}
          </text>
          <text transform={`translate(12 ${TOP + UP / 2}) rotate(-90)`}>camber</text>
        </g>
        <g class="reach-figure" text-anchor="end">
          {y.ticks.map((tick) => (
            <text key={tick} x={LEFT - 5} y={TOP + y.at(tick) + 5}>
              {format(tick, y.digits)}
            </text>
          ))}
        </g>
      </svg>
      <figcaption>
        <Legend reach={reach} />
        {says && <p>{says}</p>}
      </figcaption>
    </figure>
  );
}

interface Axis {
  readonly low: number;
  readonly high: number;
  /** Pixels a degree; below 0 where more degrees are further up. */
  readonly scale: number;
  readonly at: (degrees: number) => number;
  readonly ticks: readonly number[];
  /** Decimals that tell the ticks apart. */
  readonly digits: number;
}

function axisOf([least, most]: Range, length: number): Axis {
  const margin = (most - least) * MARGIN;
  const [low, high] = [least - margin, most + margin];
  const scale = length / (high - low);
  const ticks = ticksOf(low, high, 5);
  const step = (ticks[1] ?? 1) - (ticks[0] ?? 0);
  return {
    low,
    high,
    scale,
    ticks,
    at: (degrees) => round((degrees - (scale > 0 ? low : high)) * scale),
    digits: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)),
  };
}

const round = (pixels: number): number => Math.round(pixels * 100) / 100;

interface Axes {
  readonly x: Axis;
  readonly y: Axis;
}

/** One path for all places, drawn in units of `within`: a stroke 2 wide is then just what they stand for. */
function Dots({ class: name, x, y, places, within }: Axes & Reached & { readonly class: string }) {
  const [width, height] = within;
  const d = places.map(([across, camber]) => `M${round(across / width)} ${round(camber / height)}h0`).join('');
  const matrix = [x.scale * width, 0, 0, y.scale * height, -x.low * x.scale, -y.high * y.scale];
  return <path class={name} d={d} stroke-width="2" transform={`matrix(${matrix.join(' ')})`} />;
}

/** Where an angle has no window the box runs from edge to edge. */
function WindowBox({ reach: { windows }, x, y }: Axes & { readonly reach: Reach }) {
  if (!windows[0] && !windows[1]) return null;
  const [across, camber] = [windows[0] ?? x, windows[1] ?? y];
  const [left, top] = [x.at(across.low), y.at(camber.high)];
  return (
    <rect class="reach-window" x={left} y={top} width={x.at(across.high) - left} height={y.at(camber.low) - top} />
  );
}

/** What the marks mean, of those that are drawn. */
function Legend({ reach: { planned, windows, withToe } }: Pick<ReachPictureProps, 'reach'>) {
  const dots = <path class="reach-dots" d={SPOTS} />;
  return (
    <p class="ruler-legend">
      <Mark words="found">
        <circle class="reach-found" cx="7" cy="7" r="5.5" />
      </Mark>
      {planned && (
        <Mark words="planned">
          <circle class="reach-planned" cx="7" cy="7" r="6" />
        </Mark>
      )}
      {windows.some(Boolean) && (
        <Mark words="window">
          <rect class="reach-window" x="1.5" y="1.5" width="11" height="11" />
        </Mark>
      )}
      <Mark words="can be reached">
        <path class="reach-all" d={SPOTS} stroke-width="8" />
        {!withToe && dots}
      </Mark>
      {withToe && <Mark words="with toe in its window">{dots}</Mark>}
    </p>
  );
}
const SPOTS = 'M4 4h0M10 4h0M7 7h0M4 10h0M10 10h0';

function Mark({ words, children }: { readonly words: string; readonly children: ComponentChildren }) {
  return (
    <span>
      <svg viewBox="0 0 14 14" width="14" height="14" aria-hidden="true">
        {children}
      </svg>
      {words}
    </span>
  );
}

/** Whether the adjusters can bring both angles into their windows, in words; nothing where there is no window. */
function verdictOf({ windows, all, withToe }: Reach): string {
  if (!windows.some(Boolean)) return '';
  if (!all.inWindow) return 'The window cannot be reached.';
  if (!withToe) return 'The window can be reached.';
  return `The window can be reached, ${withToe.inWindow ? 'with toe in its window too' : 'but not with toe in its window as well'}.`;
}

/** A sentence for each mark, for who cannot see them. */
function marksOf({ corner, across, found, planned, windows }: Reach, format: ReachPictureProps['format']): string[] {
  const place = ([x, y]: Place) => `${across} ${format(x)}, camber ${format(y)}`;
  const box = [across, 'camber'].flatMap((name, axis) => {
    const window = windows[axis];
    return window ? [`${name} ${format(window.low)} to ${format(window.high)}`] : [];
  });
  return [
    `What the ${corner} adjusters can reach.`,
    `Found: ${place(found)}.`,
    ...(planned ? [`Planned: ${place(planned)}.`] : []),
    ...(box.length > 0 ? [`Window: ${box.join(', ')}.`] : []),
  ];
}

/** Degrees by which the reach must pass the edge to be spoken of. */
const PAST = 0.05;

/** How far the reach goes where the picture does not show all of it. */
function beyondOf({ across, view, extent }: Reach, format: ReachPictureProps['format']): string {
  const past = [across, 'camber'].flatMap((name, axis) => {
    const [[low, high], [least, most]] = [view[axis] as Range, extent[axis] as Range];
    return least < low - PAST || most > high + PAST ? [`${name} from ${format(least)} to ${format(most)}`] : [];
  });
  return past.length > 0 ? `The reach goes on past the edge: ${past.join(', ')}.` : '';
}
