import { taperAt } from '../../../../core/adjuster/taper.ts';
import type { Corner, Position } from '../../../../core/contract.ts';
import { isLeft } from '../../../../core/corners.ts';
import { partAngle } from '../../../../core/units/shop.ts';
import { onClock } from '../offset-sleeve.tsx';
import { around } from '../picture.tsx';
import { onWheel } from '../wedge-shim.tsx';
import type { AdjusterFace, FaceProps, Mark } from './face.ts';

const RADIUS = 84;
const MIDDLE = [150, 120] as const;

/** How a kind's angles lie on the clock that is looked at, and what is at its quarters. */
interface Seen {
  readonly clock: (angle: number, corner: Corner) => number;
  readonly quarters: (corner: Corner) => readonly [top: string, right: string, bottom: string, left: string];
  readonly says: string;
}

/** The sizes that are to be had, small ones on the inner rings; the one that is fitted has one ring. */
const sizesOf = ({ positions }: FaceProps): readonly number[] =>
  [...new Set(positions.flatMap((one) => taperAt(one)?.taper ?? []))].sort((a, b) => a - b);

/** Where a position is on the drawing, from its middle; the plain one, and none, in the middle. */
function placeOf(props: FaceProps, { clock }: Seen, position: Position): readonly [x: number, y: number] {
  const sizes = sizesOf(props);
  if (sizes.length === 0) return around(clock(Number(position), props.corner), RADIUS);
  const disc = taperAt(position);
  if (!disc) return [0, 0];
  const ring = sizes.findIndex((size) => size >= disc.taper - 1e-9);
  const radius = (RADIUS * ((ring < 0 ? sizes.length : ring) + 1)) / sizes.length;
  return around(clock(disc.at, props.corner), radius);
}

function taperFace(seen: Seen): AdjusterFace {
  const marks = (props: FaceProps): readonly Mark[] =>
    props.positions.map((position) => {
      const [x, y] = placeOf(props, seen, position);
      return { position, x: MIDDLE[0] + x, y: MIDDLE[1] + y };
    });

  function Drawing(props: FaceProps) {
    const sizes = sizesOf(props);
    const { adjuster, corner, position, unknown, units } = props;
    const count = Math.min(72, Number(adjuster.marks) || 12);
    const [x, y] = placeOf(props, seen, position);
    const [top, right, bottom, left] = seen.quarters(corner);
    return (
      <g transform={`translate(${MIDDLE.join(' ')})`}>
        <circle class="picture-body" r={RADIUS} />
        {sizes.slice(0, -1).map((size, i) => (
          <circle key={size} class="eccentric-face" r={(RADIUS * (i + 1)) / sizes.length} />
        ))}
        {Array.from({ length: count }, (_, i) => (
          <path
            key={i}
            class="picture-line"
            d={`M0 ${-RADIUS}v8`}
            transform={`rotate(${seen.clock((i * 360) / count, corner)})`}
          />
        ))}
        {sizes.length > 1 &&
          sizes.map((size, i) => {
            // Between the marks, so that none is covered.
            const [u, v] = around(seen.clock(225, corner) + 180 / count, (RADIUS * (i + 1)) / sizes.length);
            return (
              <text key={size} class="face-ring" x={u} y={v} dy=".36em" text-anchor="middle">
                {partAngle(size, units)}
              </text>
            );
          })}
        {!unknown && (
          <>
            <path class="eccentric-to" d={`M0 0L${x} ${y}`} />
            <circle class="picture-head" cx={x} cy={y} r="10" />
          </>
        )}
        <circle class="picture-ink" r="3" />
        <text class="face-word" y={-RADIUS - 12} text-anchor="middle">
          {top}
        </text>
        <text class="face-word" y={RADIUS + 24} text-anchor="middle">
          {bottom}
        </text>
        <Words x={RADIUS + 18} anchor="start" says={right} />
        <Words x={-RADIUS - 18} anchor="end" says={left} />
      </g>
    );
  }
  return { width: 300, height: 236, marks, Drawing, says: () => seen.says };
}

function Words({ x, anchor, says }: { readonly x: number; readonly anchor: 'start' | 'end'; readonly says: string }) {
  return (
    <text class="face-word" text-anchor={anchor}>
      {says.split(' ').map((word, i) => (
        <tspan key={word} x={x} y={-4 + 17 * i}>
          {word}
        </tspan>
      ))}
    </text>
  );
}

/** A sleeve in its seat from above, the car's front at the top: 0° leans the axis outboard, 90° to the rear. */
export const sleeveFace = taperFace({
  clock: (angle, corner) => onClock(angle, isLeft(corner)),
  quarters: (corner) => [
    'front',
    ...(isLeft(corner) ? (['in', '90° rear', '0° out'] as const) : (['0° out', '90° rear', 'in'] as const)),
  ],
  says: 'from above: touch where its mark points',
});

/** A tapered shim from outside the wheel: 0° up, 90° to the rear. */
export const shimFace = taperFace({
  clock: onWheel,
  quarters: (corner) => [
    '0° up',
    ...(isLeft(corner) ? (['90° rear', 'down', 'front'] as const) : (['front', 'down', '90° rear'] as const)),
  ],
  says: 'from outside the wheel: touch where its thick side is; none in the middle',
});
