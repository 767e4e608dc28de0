import { taperAt } from '../../../core/adjuster/taper.ts';
import type { Position } from '../../../core/contract.ts';
import { isLeft } from '../../../core/corners.ts';
import type { Taper } from '../../../core/said.ts';
import { partAngle, type ShopUnits } from '../../../core/units/shop.ts';
import type { AdjusterPicture, PictureProps } from './picture.tsx';
import { Frame, TurnArrow } from './picture.tsx';

const RADIUS = 52;
/** The bore's radius and how far off the middle it is drawn, px. */
const BORE = 24;
const OFF = 10;

/**
 * Where the sleeve's angle is on a clock seen from above, the car's front at the top. 0° leans the axis outboard, 90° to
 * the rear: on a left wheel outboard is to the left.
 */
export const onClock = (angle: number, left: boolean): number => (left ? 270 - angle : 90 + angle);

/** The short way from one angle to another, degrees, + as the angle grows. */
export function shortWay(from: number, to: number): number {
  const on = (((to - from) % 360) + 360) % 360;
  return on > 180 ? on - 360 : on;
}

const isOne = ({ adjuster }: Pick<PictureProps, 'adjuster'>): boolean => !Array.isArray(adjuster.degrees);

/** Which sleeve, turned to where; nothing for a plain one, whose bore is in its middle. */
function sleeveAt(props: Pick<PictureProps, 'adjuster'>, position: Position): Taper | undefined {
  return isOne(props) ? { taper: Number(props.adjuster.degrees), at: Number(position) } : taperAt(position);
}

/** How far off its middle a sleeve's bore is drawn, px: the further the more it tilts. */
function offOf({ adjuster }: PictureProps, sleeve: Taper | undefined): number {
  if (!sleeve) return 0;
  const most = Math.max(...[adjuster.degrees].flat().map(Number));
  return OFF * (0.4 + (0.6 * sleeve.taper) / most);
}

/** The ring in the axle's seat from above: old bore and mark dashed, new ones solid. */
function Picture(props: PictureProps) {
  const left = isLeft(props.corner);
  const [old, next] = [sleeveAt(props, props.from), sleeveAt(props, props.to)];
  const turned = old && next && old.taper === next.taper;
  const from = onClock((old ?? next)?.at ?? 0, left);
  const change = turned ? shortWay(old.at, next.at) * (left ? -1 : 1) : 0;
  const to = turned ? from + change : onClock(next?.at ?? 0, left);
  const marks = Math.min(72, Number(props.adjuster.marks) || 12);
  const out = left ? -1 : 1;
  const { from: before, to: after, note } = words(props);
  const figures = before ? `from ${before} to ${after}` : after;
  const title = `Sleeve of the upper ball joint from above, front of the car at the top, ${figures}: ${note}`;
  return (
    <Frame width={290} height={184} title={title}>
      <g transform={`translate(${145 - 20 * out} 90)`}>
        {Array.from({ length: marks }, (_, i) => (
          <path
            key={i}
            class="picture-line"
            d={`M0 ${-RADIUS}v-6`}
            transform={`rotate(${onClock((i * 360) / marks, left)})`}
          />
        ))}
        {turned && <TurnArrow from={from} to={to} radius={RADIUS + 13} />}
        <g class="cam-turn" style={{ '--turn-from': `${-change}deg` }}>
          <g transform={`rotate(${to})`}>
            <circle class="picture-body" r={RADIUS} />
            <Bore off={offOf(props, next)} />
          </g>
        </g>
        <g transform={`rotate(${from})`}>
          <circle class="cam-ring" cy={-offOf(props, old)} r={BORE} />
          {old && <path class="eccentric-from" d={`M0 ${-offOf(props, old) - BORE}V${-RADIUS}`} />}
        </g>
        <Says x={0} y={-77} lines={['front']} />
        <Says x={-84 * out} y={5} lines={['in']} />
        <Says x={113 * out} y={-4} lines={['0° out', 'camber +']} />
        <Says x={0} y={89} lines={['90° rear, caster +']} />
      </g>
    </Frame>
  );
}

/** The bore and the mark towards which it is off; a plain sleeve has none. */
function Bore({ off }: { readonly off: number }) {
  return (
    <>
      <circle class="cam-hole" cy={-off} r={BORE} />
      {off > 0 && <path class="eccentric-to" d={`M0 ${-off - BORE}V${-RADIUS}`} />}
      {off > 0 && <path class="picture-head" d={`M0 ${-RADIUS + 1}l-8 13h16z`} />}
      <circle class="picture-ink" cy={-off} r="3" />
    </>
  );
}

function Says({ x, y, lines }: { x: number; y: number; lines: readonly string[] }) {
  return (
    <text class="picture-small" y={y} text-anchor="middle">
      {lines.map((line, i) => (
        <tspan key={line} x={x} dy={i === 0 ? 0 : 17}>
          {line}
        </tspan>
      ))}
    </text>
  );
}

const sizeText = ({ taper }: Taper, units?: ShopUnits): string => partAngle(taper, units);
const angleText = ({ at }: Taper, units?: ShopUnits): string => partAngle(at, units, 1);
/** "1° at 90°", to be parted after the size alone. */
const sleeveText = (sleeve: Taper | undefined, units?: ShopUnits): string =>
  sleeve ? `${sizeText(sleeve, units)} at\u00a0${angleText(sleeve, units)}` : 'plain';

/** One sleeve turned is an angle to another; one for another is the new one, as two in full are too long to read. */
function words(props: PictureProps) {
  const { units } = props;
  const [from, to] = [sleeveAt(props, props.from), sleeveAt(props, props.to)];
  if (from && to && from.taper === to.taper) {
    const change = shortWay(from.at, to.at);
    const which = isOne(props) ? '' : `the ${sizeText(to, units)} sleeve `;
    const note = change === 0 ? 'stays as it is' : `${which}turned by ${partAngle(Math.abs(change), units, 1)}`;
    return { from: angleText(from, units), to: angleText(to, units), note };
  }
  if (!to)
    return { from: from ? sizeText(from, units) : '', to: 'plain', note: from ? 'the plain one in' : 'stays as it is' };
  return {
    from: '',
    to: sleeveText(to, units),
    note: `in place of ${from ? sleeveText(from, units) : 'the plain one'}`,
  };
}

export const offsetSleeve: AdjusterPicture = { Picture, words, wide: true };
