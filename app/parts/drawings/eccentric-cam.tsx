import { eccentricCam as kind } from '../../../core/adjuster/eccentric-cam.ts';
import type { Adjuster } from '../../../core/contract.ts';
import { figure } from '../../../core/units/shop.ts';
import type { AdjusterPicture, PictureProps, PictureWords } from './picture.tsx';
import { around, Frame, signed, TurnArrow } from './picture.tsx';

const RADIUS = 62;
/** More ticks than this run together. */
const MOST_TICKS = 72;

const marksOf = (adjuster: Adjuster, angle: number): number => (angle * adjuster.marks) / 360;

/** +1 where a growing angle turns clockwise to one who looks at the bolt's head: a right corner mirrors a left one. */
export function senseOf({ adjuster, corner }: Pick<PictureProps, 'adjuster' | 'corner'>): 1 | -1 {
  return (adjuster.turns === 'clockwise') === corner.startsWith('L') ? 1 : -1;
}

/** The travel that is allowed, degrees, as the core has it where the file is silent. */
export const rangeOf = (adjuster: Adjuster): readonly [number, number] =>
  adjuster.range ?? (adjuster.zero === 'end' ? [0, 180] : [-90, 90]);

/** A clock face, 0 at the top: old mark dashed, new mark solid, the arrow between them. */
function Picture(props: PictureProps) {
  const { adjuster } = props;
  if (!adjuster.turns) return <Unsided {...props} />;
  const sense = senseOf(props);
  const from = Number(props.from) * sense;
  const to = Number(props.to) * sense;
  const said = words(props);
  const title = `Eccentric bolt, from mark ${said.from} to ${said.to}: ${said.note}`;
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

/** Nobody put on file which way its marks count: the bolt and its scale, no mark on a side, no way to turn. */
function Unsided(props: PictureProps) {
  const { to, note } = words(props);
  return (
    <Frame
      width={162}
      height={164}
      title={`Eccentric bolt, turned by ${to}: ${note}. Which way to turn is not on file`}
    >
      <g transform="translate(81 83)">
        <circle class="eccentric-face" r={RADIUS} />
        <Ticks adjuster={props.adjuster} />
        <circle class="picture-body" r="35" />
        <polygon class="picture-bolt" points={hexagon(17)} />
      </g>
    </Frame>
  );
}

function Ticks({ adjuster }: { readonly adjuster: Adjuster }) {
  const every = Math.ceil(adjuster.marks / MOST_TICKS);
  const count = Math.floor(adjuster.marks / every);
  return (
    <>
      {Array.from({ length: count }, (_, i) => (i * every * 360) / adjuster.marks).map((angle) => (
        <line
          key={angle}
          class="picture-line"
          y1={-RADIUS}
          y2={-RADIUS + (angle === 0 ? 11 : 6)}
          transform={`rotate(${angle})`}
        />
      ))}
    </>
  );
}

/** The fixed scale: every mark a tick, the allowed travel drawn heavy, + and − on their sides of 0. */
function Face({ adjuster, sense }: { adjuster: Adjuster; sense: 1 | -1 }) {
  const [low, high] = rangeOf(adjuster);
  const full = high - low >= 360;
  const [x0, y0] = around(low * sense, RADIUS);
  const [x1, y1] = around(high * sense, RADIUS);
  const travel = `M${x0} ${y0}A${RADIUS} ${RADIUS} 0 ${high - low > 180 ? 1 : 0} ${sense > 0 ? 1 : 0} ${x1} ${y1}`;
  return (
    <>
      <circle class="eccentric-face" r={RADIUS} />
      {full ? <circle class="eccentric-travel" r={RADIUS} /> : <path class="eccentric-travel" d={travel} />}
      <Ticks adjuster={adjuster} />
      <text class="picture-small" text-anchor="middle" x={16 * sense} y={-RADIUS + 17}>
        +
      </text>
      <text class="picture-small" text-anchor="middle" x={-16 * sense} y={-RADIUS + 17}>
        −
      </text>
    </>
  );
}

export const hexagon = (radius: number): string =>
  Array.from({ length: 6 }, (_, i) => around(i * 60, radius).join(',')).join(' ');

function words(props: PictureProps): PictureWords {
  const { adjuster, units } = props;
  const [from, to] = [Number(props.from), Number(props.to)];
  const change = to - from;
  const count = figure(Math.abs(marksOf(adjuster, change)), units, 1);
  const many = `${count} mark${count === '1' ? '' : 's'}`;
  if (!adjuster.turns) return unsided(props, many);
  const way = change * senseOf(props) > 0 ? 'clockwise' : 'anticlockwise';
  return {
    from: signed(marksOf(adjuster, from), units, 1),
    to: signed(marksOf(adjuster, to), units, 1),
    note: change === 0 ? 'stays on its mark' : `${many} ${way}, seen from the bolt head`,
  };
}

/** What the turn does to the point, as there is no side to name it by. */
function unsided({ adjuster, corner, from, to }: PictureProps, many: string): PictureWords {
  const act = kind.act(adjuster, from, to, { corner });
  if (act.act !== 'turn-marks' || !act.goes) return { from: '', to: '0', note: 'stays on its mark' };
  return { from: '', to: many, note: act.goes };
}

export const eccentricCam: AdjusterPicture = { Picture, words };
