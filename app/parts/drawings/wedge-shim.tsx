import { say } from '../../../core/adjuster/steps.ts';
import type { Corner, Position } from '../../../core/contract.ts';
import type { AdjusterPicture, PictureProps } from './picture.tsx';
import { around, Frame, isLeft, TurnArrow } from './picture.tsx';

const RADIUS = 50;

interface Shim {
  readonly taper: number;
  readonly angle: number;
}

/** A position such as `0.5@90`, taken apart; nothing for `none`. */
export function shimAt(position: Position): Shim | undefined {
  const [, taper, angle] = /^([\d.]+)@(-?[\d.]+)$/.exec(String(position)) ?? [];
  return taper === undefined ? undefined : { taper: Number(taper), angle: Number(angle) };
}

/** Where the shim's angle is on a clock seen from outside the wheel: 0° up, 90° (toe-in) to the rear of the car. */
export const onWheel = (angle: number, corner: Corner): number => (isLeft(corner) ? angle : -angle);

/** The disc from outside the wheel with its thick side, and edge-on: old one dashed, new one solid. */
function Picture(props: PictureProps) {
  const from = shimAt(props.from);
  const to = shimAt(props.to);
  const rear = isLeft(props.corner) ? 1 : -1;
  const marks = Math.min(72, Number(props.adjuster.marks) || 12);
  const { note } = words(props);
  return (
    <Frame width={290} height={160} title={`Tapered shim behind the hub, seen from outside the wheel: ${note}`}>
      <g transform="translate(150 80)">
        {Array.from({ length: marks }, (_, i) => (
          <path key={i} class="picture-line" d={`M0 ${-RADIUS}v-6`} transform={`rotate(${(i * 360) / marks})`} />
        ))}
        {to ? (
          <>
            <circle class="picture-body" r={RADIUS} />
            <g transform={`rotate(${onWheel(to.angle, props.corner)})`}>
              <path class="picture-head" d={thickSide} />
            </g>
          </>
        ) : (
          <circle class="cam-ring" r={RADIUS} />
        )}
        <circle class="cam-hole" r="17" />
        {[45, 135, 225, 315].map((angle) => {
          const [x, y] = around(angle, 28);
          return <circle key={angle} class="cam-hole" cx={x} cy={y} r="4" />;
        })}
        {from && <path class="cam-ring" d={thickSide} transform={`rotate(${onWheel(from.angle, props.corner)})`} />}
        {from && to && <Turn from={from} to={to} corner={props.corner} />}
        <text class="picture-small" y="-64" text-anchor="middle">
          0° camber +
        </text>
        <text class="picture-small" text-anchor={rear > 0 ? 'start' : 'end'}>
          <tspan x={64 * rear} y="-6">
            90° rear
          </tspan>
          <tspan x={64 * rear} y="12">
            toe-in
          </tspan>
        </text>
        <text class="picture-small" x={-64 * rear} y="5" text-anchor={rear > 0 ? 'end' : 'start'}>
          front
        </text>
      </g>
    </Frame>
  );
}

/** A crescent along the rim about 0°, thickest there. */
const thickSide = (() => {
  const [x, y] = around(70, RADIUS);
  return `M${-x} ${y}A${RADIUS} ${RADIUS} 0 0 1 ${x} ${y}A${RADIUS * 1.3} ${RADIUS * 1.3} 0 0 0 ${-x} ${y}z`;
})();

function Turn({ from, to, corner }: { from: Shim; to: Shim; corner: Corner }) {
  const start = onWheel(from.angle, corner);
  const on = (((onWheel(to.angle, corner) - start) % 360) + 360) % 360;
  return <TurnArrow from={start} to={start + (on > 180 ? on - 360 : on)} radius={RADIUS + 14} />;
}

const taperText = ({ taper }: Shim): string => `${say(taper)}°`;
const angleText = ({ angle }: Shim): string => `${say(angle, 1)}°`;

function words(props: PictureProps) {
  const from = shimAt(props.from);
  const to = shimAt(props.to);
  if (!to)
    return { from: from ? taperText(from) : '', to: 'none', note: from ? 'no shim, the old one out' : 'no shim' };
  const note = `${taperText(to)} shim, thick side at ${angleText(to)}`;
  if (from?.taper === to.taper)
    return { from: angleText(from), to: angleText(to), unit: `${taperText(to)} shim`, note };
  return { from: from ? taperText(from) : 'none', to: taperText(to), unit: `at ${angleText(to)}`, note };
}

export const wedgeShim: AdjusterPicture = { Picture, words, wide: true };
