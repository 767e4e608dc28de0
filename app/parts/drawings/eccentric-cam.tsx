import type { Adjuster } from '../../../core/contract.ts';
import { plain } from '../../../core/units/plain.ts';
import type { AdjusterPicture, PictureProps } from './picture.tsx';
import { around, Frame, TurnArrow } from './picture.tsx';

const RADIUS = 62;
/** More ticks than this run together. */
const MOST_TICKS = 72;

const marksOf = (adjuster: Adjuster, angle: number): number => (angle * adjuster.marks) / 360;

const signed = (marks: number): string => `${marks > 0 ? '+' : ''}${plain(marks, 1)}`;

/** +1 where a growing angle turns clockwise to one who looks at the bolt's head: a right corner mirrors a left one. */
function senseOf({ adjuster, corner }: PictureProps): 1 | -1 {
  if (!adjuster.turns) return 1;
  return (adjuster.turns === 'clockwise') === corner.startsWith('L') ? 1 : -1;
}

/** The travel that is allowed, degrees, as the core has it where the file is silent. */
const rangeOf = (adjuster: Adjuster): readonly [number, number] =>
  adjuster.range ?? (adjuster.zero === 'end' ? [0, 180] : [-90, 90]);

/** A clock face, 0 at the top: old mark dashed, new mark solid, the arrow between them. */
function Picture(props: PictureProps) {
  const { adjuster } = props;
  const sense = senseOf(props);
  const from = Number(props.from) * sense;
  const to = Number(props.to) * sense;
  const title = `Eccentric bolt, from mark ${signed(marksOf(adjuster, Number(props.from)))} to ${words(props).to}: ${words(props).note}`;
  return (
    <Frame width={162} height={164} title={title}>
      <g transform="translate(81 83)">
        <Face adjuster={adjuster} sense={sense} />
        <TurnArrow from={from} to={to} radius={RADIUS + 12} />
        <g class="cam-turn" style={{ '--turn-from': `${from - to}deg` }}>
          <g transform={`rotate(${to})`}>
            <circle class="picture-body" cy="-12" r="35" />
            <line class="eccentric-to" y1="-6" y2={-RADIUS + 2} />
            <path class="picture-head" d={`M0 ${-RADIUS + 1}l-6 12h12z`} />
            <polygon class="picture-bolt" points={hexagon(17)} />
          </g>
        </g>
        <line class="eccentric-from" y1="-18" y2={-RADIUS} transform={`rotate(${from})`} />
      </g>
    </Frame>
  );
}

/** The fixed scale: every mark a tick, the allowed travel drawn heavy, + and − on their sides of 0. */
function Face({ adjuster, sense }: { adjuster: Adjuster; sense: 1 | -1 }) {
  const [low, high] = rangeOf(adjuster);
  const full = high - low >= 360;
  const [x0, y0] = around(low * sense, RADIUS);
  const [x1, y1] = around(high * sense, RADIUS);
  const every = Math.ceil(adjuster.marks / MOST_TICKS);
  const ticks = Array.from(
    { length: Math.floor(adjuster.marks / every) },
    (_, i) => (i * every * 360) / adjuster.marks,
  );
  const travel = `M${x0} ${y0}A${RADIUS} ${RADIUS} 0 ${high - low > 180 ? 1 : 0} ${sense > 0 ? 1 : 0} ${x1} ${y1}`;
  return (
    <>
      <circle class="eccentric-face" r={RADIUS} />
      {full ? <circle class="eccentric-travel" r={RADIUS} /> : <path class="eccentric-travel" d={travel} />}
      {ticks.map((angle) => (
        <line
          key={angle}
          class="picture-line"
          y1={-RADIUS}
          y2={-RADIUS + (angle === 0 ? 11 : 6)}
          transform={`rotate(${angle * sense})`}
        />
      ))}
      <text class="picture-small" text-anchor="middle" x={16 * sense} y={-RADIUS + 17}>
        +
      </text>
      <text class="picture-small" text-anchor="middle" x={-16 * sense} y={-RADIUS + 17}>
        −
      </text>
    </>
  );
}

const hexagon = (radius: number): string =>
  Array.from({ length: 6 }, (_, i) => around(i * 60, radius).join(',')).join(' ');

function words(props: PictureProps) {
  const { adjuster } = props;
  const change = Number(props.to) - Number(props.from);
  const count = plain(Math.abs(marksOf(adjuster, change)), 1);
  const way = adjuster.turns
    ? `${change * senseOf(props) > 0 ? 'clockwise' : 'anticlockwise'}, seen from the bolt head`
    : `towards ${change > 0 ? '+' : '−'}`;
  return {
    from: signed(marksOf(adjuster, Number(props.from))),
    to: signed(marksOf(adjuster, Number(props.to))),
    note: change === 0 ? 'stays on its mark' : `${count} mark${count === '1' ? '' : 's'} ${way}`,
  };
}

export const eccentricCam: AdjusterPicture = { Picture, words };
