import { FLATS } from '../../../../core/units/flats.ts';
import { figure } from '../../../../core/units/shop.ts';
import { around } from '../picture.tsx';
import type { AdjusterFace, FaceProps, Mark } from './face.ts';

const FIRST = 20;
const LAST = 176;
const LINE = 84;
const NUT = { x: 244, y: 76, radius: 44 } as const;
const BELOW = 158;
/** px that a turn's figure takes. */
const FIGURE = 24;

interface Turns {
  readonly low: number;
  readonly high: number;
  /** −1 shorter, +1 longer. */
  readonly way: 1 | -1;
  readonly whole: number;
  /** What is beyond the whole turns, of a turn. */
  readonly part: number;
}

const tidy = (turns: number): number => Number(turns.toFixed(9));

function turnsOf({ positions, position }: FaceProps): Turns {
  const all = positions.map(Number);
  const now = Number(position);
  const whole = Math.floor(Math.abs(now) + 1e-6);
  return {
    ...{ low: all[0] ?? 0, high: all.at(-1) ?? 0, way: now < 0 ? -1 : 1, whole },
    part: tidy(Math.max(0, Math.abs(now) - whole)),
  };
}

const on = ({ low, high }: Turns, turns: number): number =>
  FIRST + ((turns - low) / (high - low || 1)) * (LAST - FIRST);
const wholeTurns = ({ low, high }: Turns): readonly number[] =>
  Array.from({ length: Math.floor(high + 1e-6) - Math.ceil(low - 1e-6) + 1 }, (_, i) => Math.ceil(low - 1e-6) + i);

/** On the scale a whole turn, with the flats as they are; on the nut a flat, with the turns as they are. */
function marks(props: FaceProps): readonly Mark[] {
  const now = turnsOf(props);
  const known = (turns: number): number | undefined =>
    props.positions.map(Number).find((one) => Math.abs(one - turns) < 1e-6);
  const turns = wholeTurns(now).flatMap((whole) => {
    const way = whole === 0 ? now.way : Math.sign(whole);
    const position = known(whole + way * now.part) ?? known(whole);
    return position === undefined ? [] : [{ position, x: on(now, whole), y: LINE }];
  });
  const flats = props.positions.flatMap((position) => {
    const part = Number(position) * now.way - now.whole;
    if (part < -1e-6 || part > 1 - 1e-6) return [];
    const [x, y] = around(part * 360, NUT.radius);
    return [{ position, x: NUT.x + x, y: NUT.y + y }];
  });
  return [...turns, ...flats];
}

/** How far it is screwed from when the dimensions were taken: whole turns on a scale, flats on the nut. */
function Drawing(props: FaceProps) {
  const { unknown, units } = props;
  const now = turnsOf(props);
  const whole = wholeTurns(now);
  const every = [1, 2, 5, 10, 20, 50].find((one) => (one * (LAST - FIRST)) / (now.high - now.low || 1) >= FIGURE) ?? 50;
  const here = on(now, now.way * (now.whole + now.part));
  return (
    <>
      <text class="face-side" x="4" y="22">
        ‹ shorter
      </text>
      <text class="face-side" x={LAST + 8} y="22" text-anchor="end">
        longer ›
      </text>
      <path class="eccentric-travel" d={`M${FIRST} ${LINE}H${LAST}`} />
      {whole.map((turns) => (
        <g key={turns}>
          <path class="picture-line" d={`M${on(now, turns)} ${LINE - 8}v${turns === 0 ? 20 : 14}`} />
          {turns % every === 0 && (
            <text class="face-figure" x={on(now, turns)} y={LINE + 32} text-anchor="middle">
              {figure(Math.abs(turns), units)}
            </text>
          )}
        </g>
      ))}
      <text class="face-word" x={(FIRST + LAST) / 2} y={BELOW} text-anchor="middle">
        turns
      </text>
      {!unknown && <path class="picture-head" d={`M${here} ${LINE - 4}l-12-24h24z`} />}
      <g transform={`translate(${NUT.x} ${NUT.y})`}>
        <polygon
          class="picture-bolt"
          points={[0, 1, 2, 3, 4, 5].map((i) => around(i * 60 - 30, NUT.radius).join(',')).join(' ')}
        />
        {!unknown && (
          <g transform={`rotate(${now.part * 360})`}>
            <path class="eccentric-to" d={`M0 0V${-NUT.radius + 8}`} />
            <path class="picture-head" d={`M0 ${-NUT.radius + 1}l-9 16h18z`} />
          </g>
        )}
        {[0, 1, 2, 3, 4, 5].map((flat) => {
          const [x, y] = around((flat * 360) / FLATS, NUT.radius + 8);
          return (
            <text key={flat} class="face-figure" x={x} y={y} dy=".36em" text-anchor="middle">
              {flat}
            </text>
          );
        })}
      </g>
      <text class="face-word" x={NUT.x} y={BELOW} text-anchor="middle">
        flats
      </text>
    </>
  );
}

export const rodFace: AdjusterFace = {
  width: 300,
  height: 164,
  marks,
  Drawing,
  says: () => 'from when the dimensions were taken: turns, then flats of its nut',
};
