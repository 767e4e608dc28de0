import type { Corner, Position } from '../../../core/contract.ts';
import { isLeft } from '../../../core/corners.ts';
import { partAngle, type ShopUnits } from '../../../core/units/shop.ts';
import type { AdjusterPicture, PictureProps } from './picture.tsx';
import { around, Frame, TurnArrow } from './picture.tsx';

const RADIUS = 46;
/** The thick side of the steepest shim to be had, px. */
const THICKEST = 22;

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

/** The disc from outside the wheel with its thick side: old one dashed, new one solid. */
function Picture(props: PictureProps) {
  const from = shimAt(props.from);
  const to = shimAt(props.to);
  const rear = isLeft(props.corner) ? 1 : -1;
  const marks = Math.min(72, Number(props.adjuster.marks) || 12);
  const steepest = Math.max(...(props.adjuster.degrees ?? []), from?.taper ?? 0, to?.taper ?? 0);
  const side = ({ taper }: Shim) => thickSide(THICKEST * (0.3 + (0.7 * taper) / steepest));
  const { from: before, to: after, note } = words(props);
  const figures = before ? `${before} to ${after}` : after;
  return (
    <Frame width={290} height={152} title={`Tapered hub shim from outside the wheel: ${figures}, ${note}`}>
      <g transform="translate(145 92)">
        {Array.from({ length: marks }, (_, i) => (
          <path key={i} class="picture-line" d={`M0 ${-RADIUS}v-6`} transform={`rotate(${(i * 360) / marks})`} />
        ))}
        {to ? (
          <>
            <circle class="picture-body" r={RADIUS} />
            <g transform={`rotate(${onWheel(to.angle, props.corner)})`}>
              <path class="picture-head" d={side(to)} />
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
        {from && <path class="cam-ring" d={side(from)} transform={`rotate(${onWheel(from.angle, props.corner)})`} />}
        {from && to && from.taper === to.taper && <Turn from={from} to={to} corner={props.corner} />}
        <text class="picture-small" y="-73" text-anchor="middle">
          0° camber +
        </text>
        <text class="picture-small" text-anchor={rear > 0 ? 'start' : 'end'}>
          <tspan x={72 * rear} y="-3">
            90° rear
          </tspan>
          <tspan x={72 * rear} y="14">
            toe-in
          </tspan>
        </text>
        <text class="picture-small" x={-72 * rear} y="5" text-anchor={rear > 0 ? 'end' : 'start'}>
          front
        </text>
      </g>
    </Frame>
  );
}

/** A crescent along the rim about 0°, that thick there. */
function thickSide(thickness: number): string {
  const [x, y] = around(75, RADIUS);
  return `M${-x} ${y}A${RADIUS} ${RADIUS} 0 0 1 ${x} ${y}Q0 ${2 * (thickness - RADIUS) - y} ${-x} ${y}z`;
}

function Turn({ from, to, corner }: { from: Shim; to: Shim; corner: Corner }) {
  const start = onWheel(from.angle, corner);
  const on = (((onWheel(to.angle, corner) - start) % 360) + 360) % 360;
  return <TurnArrow from={start} to={start + (on > 180 ? on - 360 : on)} radius={RADIUS + 13} />;
}

const taperText = ({ taper }: Shim, units?: ShopUnits): string => partAngle(taper, units);
const angleText = ({ angle }: Shim, units?: ShopUnits): string => partAngle(angle, units, 1);
/** "0.5° at 45°", to be parted after the taper alone. */
const shimText = (shim: Shim, units?: ShopUnits): string =>
  `${taperText(shim, units)} at\u00a0${angleText(shim, units)}`;

/** One shim turned is an angle to another; one for another is the new one, as two in full are too long to read. */
function words(props: PictureProps) {
  const { units } = props;
  const from = shimAt(props.from);
  const to = shimAt(props.to);
  if (!to)
    return { from: from ? taperText(from, units) : '', to: 'none', note: from ? 'the old shim out' : 'stays as it is' };
  if (from?.taper === to.taper) {
    const note = from.angle === to.angle ? 'stays as it is' : `the ${taperText(to, units)} shim turned`;
    return { from: angleText(from, units), to: angleText(to, units), note };
  }
  return { from: '', to: shimText(to, units), note: from ? `in place of ${shimText(from, units)}` : 'goes in' };
}

export const wedgeShim: AdjusterPicture = { Picture, words, wide: true };
