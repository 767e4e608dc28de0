import { figure } from '../../../../core/units/shop.ts';
import { hexagon, rangeOf, senseOf } from '../eccentric-cam.tsx';
import { around } from '../picture.tsx';
import type { AdjusterFace, FaceProps, Mark } from './face.ts';

const RADIUS = 84;
const MIDDLE = [150, 118] as const;
/** More ticks than this run together, and more figures. */
const MOST_TICKS = 72;
const MOST_FIGURES = 12;

const inMarks = ({ adjuster }: FaceProps, angle: number): number => (angle * adjuster.marks) / 360;

function marks(props: FaceProps): readonly Mark[] {
  const sense = senseOf(props);
  return props.positions.map((position) => {
    const [x, y] = around(Number(position) * sense, RADIUS);
    return { position, x: MIDDLE[0] + x, y: MIDDLE[1] + y };
  });
}

/** Whole marks with their figures: as many as can be read, 0 among them. */
function figured(props: FaceProps): readonly number[] {
  const whole = props.positions
    .map(Number)
    .filter((angle) => Number.isInteger(Number(inMarks(props, angle).toFixed(6))));
  const once = whole.filter((angle, i) => !whole.slice(0, i).some((one) => (angle - one) % 360 === 0));
  const every = [1, 2, 3, 5, 6, 10, 12, 20, 30, 60].find((one) => once.length / one <= MOST_FIGURES) ?? 60;
  return once.filter((angle) => Math.round(inMarks(props, angle)) % every === 0);
}

/** The bolt's head with its scale about it, 0 at the top, + on the side that is on file. */
function Drawing(props: FaceProps) {
  const { adjuster, unknown, units } = props;
  const sense = senseOf(props);
  const [low, high] = rangeOf(adjuster);
  const full = high - low >= 360;
  const [x0, y0] = around(low * sense, RADIUS);
  const [x1, y1] = around(high * sense, RADIUS);
  const travel = `M${x0} ${y0}A${RADIUS} ${RADIUS} 0 ${high - low > 180 ? 1 : 0} ${sense > 0 ? 1 : 0} ${x1} ${y1}`;
  const every = Math.ceil(adjuster.marks / MOST_TICKS);
  return (
    <g transform={`translate(${MIDDLE.join(' ')})`}>
      <circle class="eccentric-face" r={RADIUS} />
      {full ? <circle class="eccentric-travel" r={RADIUS} /> : <path class="eccentric-travel" d={travel} />}
      {Array.from({ length: Math.floor(adjuster.marks / every) }, (_, i) => (i * every * 360) / adjuster.marks).map(
        (angle) => (
          <path key={angle} class="picture-line" d={`M0 ${-RADIUS}v8`} transform={`rotate(${angle})`} />
        ),
      )}
      {figured(props).map((angle) => {
        const [x, y] = around(angle * sense, RADIUS + 16);
        return (
          <text key={angle} class="face-figure" x={x} y={y} dy=".36em" text-anchor="middle">
            {angle === 0 ? '0' : figure(Math.abs(inMarks(props, angle)), units)}
          </text>
        );
      })}
      <text class="face-sign" x={132 * sense} y={-RADIUS + 2} text-anchor="middle">
        +
      </text>
      <text class="face-sign" x={-132 * sense} y={-RADIUS + 2} text-anchor="middle">
        −
      </text>
      {unknown ? (
        <circle class="picture-body" r="38" />
      ) : (
        <g transform={`rotate(${Number(props.position) * sense})`}>
          <circle class="picture-body" cy="-12" r="40" />
          <path class="eccentric-to" d={`M0-8V${-RADIUS + 10}`} />
          <path class="picture-head" d={`M0 ${-RADIUS + 1}l-9 18h18z`} />
        </g>
      )}
      <polygon class="picture-bolt" points={hexagon(19)} />
    </g>
  );
}

/** An eccentric bolt whose + side is on file. */
export const clockFace: AdjusterFace = {
  width: 300,
  height: 232,
  marks,
  Drawing,
  says: () => 'seen from the bolt’s head',
};
