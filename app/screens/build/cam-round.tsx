/** The numbers of a cam drawn where each puts its point: what a table of offsets means, at a glance. */
import { lengthText } from '../../../core/units/shop.ts';
import { cardUnits } from './numbers.ts';

export interface CamPlace {
  readonly label: string;
  /** mm: forward, outboard, up. */
  readonly offset: readonly [number, number, number];
}

const SIZE = 220;
const RADIUS = 76;
/** By axis: its two ends. */
const ENDS = [
  ['front', 'rear'],
  ['out', 'in'],
  ['up', 'down'],
] as const;

/** Which two axes the offsets lie along, the one across first. */
export function planeOf(places: readonly CamPlace[]): readonly [across: 0 | 1 | 2, up: 0 | 1 | 2] {
  const most = ([0, 1, 2] as const).map((axis) => Math.max(...places.map(({ offset }) => Math.abs(offset[axis]))));
  if (most[0]! > Math.min(most[1]!, most[2]!)) return most[2]! >= most[1]! ? [0, 2] : [1, 0];
  return [1, 2];
}

/** `number 1: 2.5 mm out` */
export function saidOf({ label, offset }: CamPlace): string {
  const parts = offset.flatMap((mm, axis) =>
    Math.abs(mm) < 0.005
      ? []
      : [`${lengthText(Number(Math.abs(mm).toFixed(2)), cardUnits())} ${ENDS[axis as 0 | 1 | 2][mm > 0 ? 0 : 1]}`],
  );
  return `number ${label}: ${parts.join(', ') || 'in the middle'}`;
}

export function CamRound({ places }: { readonly places: readonly CamPlace[] }) {
  const [across, up] = planeOf(places);
  const far = Math.max(...places.map(({ offset }) => Math.hypot(offset[across], offset[up])));
  if (!(far > 0)) return null;
  const scale = RADIUS / far;
  const [first] = places;
  return (
    <figure class="cam-round">
      <svg viewBox={`0 0 ${SIZE} ${SIZE}`} width="100%" role="img">
        <title>{`Where each number puts the point: ${places.map(saidOf).join('; ')}`}</title>
        <g transform={`translate(${SIZE / 2} ${SIZE / 2})`}>
          <circle class="cam-ring" r={RADIUS} />
          <path class="picture-line" d="M-9 0H9M0-9V9" />
          {places.map(({ label, offset }) => {
            const [x, y] = [offset[across] * scale, -offset[up] * scale];
            const out = 1 + 15 / Math.max(1, Math.hypot(x, y));
            return (
              <g key={label}>
                <circle class="picture-ink" cx={x} cy={y} r={label === first?.label ? 5 : 3} />
                <text class="picture-small" x={x * out} y={y * out} dy=".36em" text-anchor="middle">
                  {label}
                </text>
              </g>
            );
          })}
          <text class="picture-small" x={SIZE / 2 - 3} y="-6" text-anchor="end">
            {ENDS[across][0]}
          </text>
          <text class="picture-small" x="8" y={-SIZE / 2 + 13}>
            {ENDS[up][0]}
          </text>
        </g>
      </svg>
      {first && <figcaption class="soft">{saidOf(first)}</figcaption>}
    </figure>
  );
}
