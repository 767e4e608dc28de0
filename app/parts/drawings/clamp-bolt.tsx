import { isLeft } from '../../../core/corners.ts';
import { partAngle, type ShopUnits } from '../../../core/units/shop.ts';
import type { AdjusterPicture, PictureProps } from './picture.tsx';
import { around, Frame, TurnArrow } from './picture.tsx';

/** A degree is too little to see: the far end of the travel is drawn at this angle. */
const FURTHEST = 13;
/** The tyre's top from the lower bolt, px, the strut upright. */
const TOP = { x: 58, y: -74 };

/** Degrees that the wheel's top leans out: as set, or by the cam bolt's angle. */
export function lean({ adjuster }: Pick<PictureProps, 'adjuster'>, position: number): number {
  const { eccentricity, spacing } = adjuster;
  if (!eccentricity || !spacing) return position;
  return (Math.asin((eccentricity * Math.sin((position * Math.PI) / 180)) / spacing) * 180) / Math.PI;
}

const isCam = ({ adjuster }: PictureProps): boolean => Boolean(adjuster.eccentricity && adjuster.spacing);

/** Degrees of drawing for a degree of lean. */
function gainOf(props: PictureProps): number {
  const travel: readonly number[] = isCam(props) ? [90] : (props.adjuster.range ?? []);
  const all = [...travel, Number(props.from), Number(props.to)].map((x) => Math.abs(lean(props, x)));
  return FURTHEST / Math.max(0.1, ...all);
}

/** +1 where outboard is to the right: front wheels are seen from the front, rear ones from behind. */
const outboard = ({ corner }: PictureProps): 1 | -1 => (isLeft(corner) === corner.endsWith('F') ? 1 : -1);

/** Strut, clamp and wheel from the end of the car: old lean dashed, new lean solid, both larger than life. */
function Picture(props: PictureProps) {
  const out = outboard(props);
  const gain = gainOf(props);
  const from = lean(props, Number(props.from)) * gain * out;
  const to = lean(props, Number(props.to)) * gain * out;
  const seen = props.corner.endsWith('F') ? 'front' : 'rear';
  const { note, from: before, to: after } = words(props);
  const radius = Math.hypot(TOP.x, TOP.y) + 12;
  const rest = (Math.atan2(TOP.x * out, -TOP.y) * 180) / Math.PI;
  return (
    <Frame width={290} height={170} title={`Strut and wheel from the ${seen}, from ${before} to ${after}: ${note}`}>
      <g transform={`translate(${145 - out * 46} 104)`}>
        <path class="picture-hatch" d="M-24-92l8-8M-10-92l8-8M4-92l8-8M18-92l8-8" />
        <path class="picture-line" d="M-26-92h52" />
        <rect class="picture-bolt" x="-5" y="-92" width="10" height="30" />
        <rect class="picture-body" x="-12" y="-66" width="24" height="50" rx="3" />
        <g class="cam-turn" style={{ '--turn-from': `${from - to}deg` }}>
          <g transform={`rotate(${to})`}>
            <Wheel out={out} class="picture-body" />
            <path class="picture-body" d={`M0-36H${8 * out}L${34 * out}-20v18L${8 * out} 14H0z`} />
          </g>
        </g>
        <g transform={`rotate(${from})`}>
          <Wheel out={out} class="cam-ring" />
        </g>
        <path class="picture-bolt" d="M-15-44h30v64h-30z" />
        <circle class="picture-body" r="8" cy="6" />
        <UpperBolt {...props} />
        <TurnArrow from={rest + from} to={rest + to} radius={radius} />
        <text class="picture-small" x={out * -36} y="-8" text-anchor="middle">
          in
        </text>
        <text class="picture-small" x={out * 116} y="-8" text-anchor="middle">
          out
        </text>
      </g>
    </Frame>
  );
}

function Wheel({ out, class: name }: { out: 1 | -1; class: string }) {
  const width = 40;
  return <rect class={name} x={TOP.x * out - width / 2} y={TOP.y} width={width} height="130" rx="9" />;
}

/** The upper bolt: plain, or a cam with its old mark dashed and its new one solid, + on the outboard side. */
function UpperBolt(props: PictureProps) {
  if (!isCam(props)) return <circle class="picture-body" r="8" cy="-28" />;
  const mark = (position: unknown) => around(Number(position) * outboard(props), 13);
  const [x0, y0] = mark(props.from);
  const [x1, y1] = mark(props.to);
  return (
    <g transform="translate(0 -28)">
      <circle class="picture-body" r="14" />
      <path class="eccentric-from" d={`M0 0L${x0} ${y0}`} />
      <path class="eccentric-to" d={`M0 0L${x1} ${y1}`} />
      <circle class="cam-hole" r="4" />
    </g>
  );
}

const degrees = (x: unknown, units?: ShopUnits): string =>
  `${Number(x) > 0 ? '+' : ''}${partAngle(Number(x), units, 2)}`;

function words(props: PictureProps) {
  const change = lean(props, Number(props.to)) - lean(props, Number(props.from));
  return {
    from: degrees(props.from, props.units),
    to: degrees(props.to, props.units),
    note:
      props.from === props.to
        ? 'stays as it is'
        : `top ${partAngle(Math.abs(change), props.units, 2)} ${change > 0 ? 'out' : 'in'}`,
  };
}

export const clampBolt: AdjusterPicture = { Picture, words, wide: true };
