/** What a step does to an angle, on a ruler from 0: by the layout an open mark, as it was learned a solid one, each with its ±. */
import { scaleOf } from './ruler.tsx';

interface Effect {
  readonly by: number;
  readonly deviation: number;
}
export interface LearnedRulerProps {
  readonly entered: Effect;
  readonly learned: Effect;
  /** Degrees as the shop writes them. */
  readonly format: (degrees: number) => string;
}

const [ENTERED, AXIS, LEARNED, HEIGHT] = [11, 22, 33, 44];
/** Two standard deviations to each side. */
const SPREAD = 2;

export function LearnedRuler({ entered, learned, format }: LearnedRulerProps) {
  const ends = [entered, learned].flatMap(({ by, deviation }) => [by - SPREAD * deviation, by + SPREAD * deviation]);
  const { at, ticks } = scaleOf([0, ...ends]);
  const says = `learned ${format(learned.by)} ± ${format(SPREAD * learned.deviation)}, the layout said ${format(entered.by)} ± ${format(SPREAD * entered.deviation)}`;
  const bar = ({ by, deviation }: Effect, y: number, name: string) => (
    <line class={name} x1={at(by - SPREAD * deviation)} x2={at(by + SPREAD * deviation)} y1={y} y2={y} />
  );
  return (
    <svg class="ruler learned-ruler" width="100%" height={HEIGHT} role="img">
      <title>{says}</title>
      <line class="ruler-axis" x1="0" x2="100%" y1={AXIS} y2={AXIS} />
      {ticks.map((tick) => (
        <line key={tick} class="ruler-axis" x1={at(tick)} x2={at(tick)} y1={AXIS - 2} y2={AXIS + 2} />
      ))}
      <line class="ruler-end" x1={at(0)} x2={at(0)} y1="4" y2={HEIGHT - 4} />
      {bar(entered, ENTERED, 'learned-ruler-before')}
      <circle class="ruler-found" cx={at(entered.by)} cy={ENTERED} r="5" />
      {bar(learned, LEARNED, 'ruler-spread')}
      <svg x={at(learned.by)} y={AXIS + 1} overflow="visible" aria-hidden="true">
        <path class="ruler-measured" d="M0 0-7 13H7z" />
      </svg>
    </svg>
  );
}

/** What the two marks mean; once under a set of rulers. */
export function LearnedLegend() {
  return (
    <p class="ruler-legend">
      <span>
        <svg viewBox="0 0 14 14" width="14" height="14" aria-hidden="true">
          <circle class="ruler-found" cx="7" cy="7" r="5" />
        </svg>
        as the layout has it
      </span>
      <span>
        <svg viewBox="0 0 14 14" width="14" height="14" aria-hidden="true">
          <path class="ruler-measured" d="M7 .5 0 13.5h14z" />
        </svg>
        as this car does it
      </span>
    </p>
  );
}
