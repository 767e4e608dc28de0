import type { Window } from '../../core/contract.ts';

export interface RulerProps {
  /** The allowed window, degrees: drawn as a bracket. */
  window?: Window;
  /** Degrees. Found is an open mark, predicted a dashed one, measured a solid one. */
  found?: number;
  predicted?: number;
  measured?: number;
  /** One standard deviation of the prediction, degrees; drawn two to each side. */
  deviation?: number;
  format: (degrees: number) => string;
}

const AXIS = 28;
const HEIGHT = 46;
/** Degrees to each side of a value that stands alone. */
const LEAST_ROOM = 0.05;

/** One angle on a horizontal ruler, with its window as a bracket. Draws nothing where there is nothing to show. */
export function Ruler({ window, found, predicted, measured, deviation, format }: RulerProps) {
  const spread = predicted === undefined || !deviation ? [] : [predicted - 2 * deviation, predicted + 2 * deviation];
  const shown = [window?.low, window?.high, found, predicted, measured, ...spread].filter(isNumber);
  if (shown.length === 0) return null;
  const { at, ticks } = scaleOf(shown);
  const says = [
    window && `window ${format(window.low)} to ${format(window.high)}`,
    isNumber(found) && `found ${format(found)}`,
    isNumber(predicted) && `predicted ${format(predicted)}${deviation ? ` ± ${format(2 * deviation)}` : ''}`,
    isNumber(measured) && `measured ${format(measured)}`,
  ].filter(Boolean);
  return (
    <svg class="ruler" width="100%" height={HEIGHT} role="img">
      <title>{says.join(', ')}</title>
      {window && <Bracket window={window} at={at} format={format} />}
      <line class="ruler-axis" x1="0" x2="100%" y1={AXIS} y2={AXIS} />
      {ticks.map((tick) => (
        <line key={tick} class="ruler-axis" x1={at(tick)} x2={at(tick)} y1={AXIS} y2={AXIS + 4} />
      ))}
      {spread.length === 2 && (
        <line class="ruler-spread" x1={at(spread[0] ?? 0)} x2={at(spread[1] ?? 0)} y1={AXIS - 4} y2={AXIS - 4} />
      )}
      {isNumber(predicted) && (
        <line class="ruler-predicted" x1={at(predicted)} x2={at(predicted)} y1="2" y2={AXIS + 6} />
      )}
      {isNumber(found) && <circle class="ruler-found" cx={at(found)} cy={AXIS - 7} r="5" />}
      {isNumber(measured) && (
        <svg x={at(measured)} y={AXIS} overflow="visible" aria-hidden="true">
          <path class="ruler-measured" d="M0 0-7-13H7z" />
        </svg>
      )}
    </svg>
  );
}

/** What the three marks mean; once under a set of rulers. */
export function RulerLegend() {
  return (
    <p class="ruler-legend">
      <span>
        <svg viewBox="0 0 14 14" width="14" height="14" aria-hidden="true">
          <circle class="ruler-found" cx="7" cy="7" r="5" />
        </svg>
        found
      </span>
      <span>
        <svg viewBox="0 0 6 16" width="6" height="16" aria-hidden="true">
          <path class="ruler-predicted" d="M3 0v16" />
        </svg>
        predicted
      </span>
      <span>
        <svg viewBox="0 0 14 14" width="14" height="14" aria-hidden="true">
          <path class="ruler-measured" d="M7 13.5 0 .5h14z" />
        </svg>
        measured
      </span>
    </p>
  );
}

interface BracketProps {
  window: Window;
  at: (degrees: number) => string;
  format: (degrees: number) => string;
}

/** The window's ends carry their figures outward, so that a narrow window cannot print one over the other. */
function Bracket({ window: { low, high, aim = (low + high) / 2 }, at, format }: BracketProps) {
  return (
    <>
      <rect class="ruler-window" x={at(low)} y={AXIS - 13} width={width(at(low), at(high))} height="13" />
      <line class="ruler-end" x1={at(low)} x2={at(low)} y1={AXIS - 14} y2={AXIS + 1} />
      <line class="ruler-end" x1={at(high)} x2={at(high)} y1={AXIS - 14} y2={AXIS + 1} />
      <line class="ruler-end" x1={at(low)} x2={at(high)} y1={AXIS} y2={AXIS} />
      <line class="ruler-aim" x1={at(aim)} x2={at(aim)} y1={AXIS - 6} y2={AXIS} />
      <text class="ruler-figure" x={at(low)} dx="3" y={HEIGHT - 4} text-anchor="end">
        {format(low)}
      </text>
      <text class="ruler-figure" x={at(high)} dx="-3" y={HEIGHT - 4}>
        {format(high)}
      </text>
    </>
  );
}

const isNumber = (x: number | undefined): x is number => x !== undefined && Number.isFinite(x);

const width = (from: string, to: string): string => `${Math.max(0, Number.parseFloat(to) - Number.parseFloat(from))}%`;

/** Places values across the ruler with room at both ends for their figures; about twelve ticks. */
export function scaleOf(values: readonly number[]): { at: (value: number) => string; ticks: number[] } {
  const least = Math.min(...values);
  const most = Math.max(...values);
  const room = Math.max((most - least) * 0.22, LEAST_ROOM);
  const start = least - room;
  const length = most + room - start;
  return {
    at: (value) => `${Math.round(((value - start) / length) * 1e4) / 100}%`,
    ticks: ticksOf(start, start + length, 12),
  };
}

/** Round values from `low` to `high`, 1, 2 or 5 times a power of ten apart; no more than fit `parts` steps. */
export function ticksOf(low: number, high: number, parts: number): number[] {
  const rough = (high - low) / parts;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * ([1, 2, 5, 10].find((k) => k * power >= rough) ?? 10);
  const first = Math.ceil(low / step);
  const last = Math.floor(high / step);
  return Array.from({ length: last - first + 1 }, (_, i) => (first + i) * step);
}
