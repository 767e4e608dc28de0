import { isLeft } from '../../../core/corners.ts';
import { plain } from '../../../core/units/plain.ts';
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

/** The ring in the axle's seat from above: old bore and mark dashed, new ones solid. */
function Picture(props: PictureProps) {
  const left = isLeft(props.corner);
  const from = onClock(Number(props.from), left);
  const change = shortWay(Number(props.from), Number(props.to)) * (left ? -1 : 1);
  const to = from + change;
  const marks = Math.min(72, Number(props.adjuster.marks) || 12);
  const out = left ? -1 : 1;
  const { from: before, to: after, note } = words(props);
  const title = `Sleeve of the upper ball joint from above, front of the car at the top, from ${before} to ${after}: ${note}`;
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
        <TurnArrow from={from} to={to} radius={RADIUS + 13} />
        <g class="cam-turn" style={{ '--turn-from': `${-change}deg` }}>
          <g transform={`rotate(${to})`}>
            <circle class="picture-body" r={RADIUS} />
            <circle class="cam-hole" cy={-OFF} r={BORE} />
            <path class="eccentric-to" d={`M0 ${-OFF - BORE}V${-RADIUS}`} />
            <path class="picture-head" d={`M0 ${-RADIUS + 1}l-8 13h16z`} />
            <circle class="picture-ink" cy={-OFF} r="3" />
          </g>
        </g>
        <g transform={`rotate(${from})`}>
          <circle class="cam-ring" cy={-OFF} r={BORE} />
          <path class="eccentric-from" d={`M0 ${-OFF - BORE}V${-RADIUS}`} />
        </g>
        <Says x={0} y={-77} lines={['front']} />
        <Says x={-84 * out} y={5} lines={['in']} />
        <Says x={113 * out} y={-4} lines={['0° out', 'camber +']} />
        <Says x={0} y={89} lines={['90° rear, caster +']} />
      </g>
    </Frame>
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

function words({ from, to }: PictureProps) {
  const change = shortWay(Number(from), Number(to));
  return {
    from: `${plain(Number(from), 1)}°`,
    to: `${plain(Number(to), 1)}°`,
    note: change === 0 ? 'stays as it is' : `turned by ${plain(Math.abs(change), 1)}°`,
  };
}

export const offsetSleeve: AdjusterPicture = { Picture, words, wide: true };
