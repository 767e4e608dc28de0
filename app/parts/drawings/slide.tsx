import { multiples } from '../../../core/adjuster/steps.ts';
import type { Adjuster, Vec3 } from '../../../core/contract.ts';
import { bareLength, lengthText, lengthUnit, type ShopUnits } from '../../../core/units/shop.ts';
import type { AdjusterPicture, PictureProps } from './picture.tsx';
import { Frame, StraightArrow } from './picture.tsx';

const WIDTH = 290;
/** The ends of the travel, px. */
const FIRST = 42;
const LAST = WIDTH - FIRST;
/** More ticks than this run together. */
const MOST_TICKS = 40;
const PLATE = 54;

/** "out" of a direction that is mostly outboard, "out, front" of one in between; nothing where none is on file. */
export function wayOf(direction: Vec3 | undefined, sign: 1 | -1): string {
  if (!direction) return '';
  const length = Math.hypot(...direction) || 1;
  const names = [
    ['front', 'rear'],
    ['out', 'in'],
    ['up', 'down'],
  ] as const;
  return [1, 0, 2]
    .map((i) => ({ share: ((direction[i] ?? 0) * sign) / length, name: names[i] }))
    .filter(({ share }) => Math.abs(share) > 0.35)
    .map(({ share, name }) => name?.[share > 0 ? 0 : 1])
    .join(', ');
}

/** The scale's ends, mm: the travel on file, or enough for the move. */
function ends({ adjuster, from, to }: PictureProps): readonly [number, number] {
  if (adjuster.range) return adjuster.range;
  const most = Math.max(5, Math.abs(Number(from)), Math.abs(Number(to)));
  return [-most, most];
}

/** A plate bolted through two slots, seen from above its scale: old place dashed, new place solid, + to the right. */
function Picture(props: PictureProps) {
  const [low, high] = ends(props);
  const at = (mm: number) => FIRST + ((mm - low) / (high - low || 1)) * (LAST - FIRST);
  const from = at(Number(props.from));
  const to = at(Number(props.to));
  const said = words(props);
  const way = Math.sign(to - from);
  const title = `Sliding plate on its scale, from ${said.from} to ${said.to} ${said.unit}: ${said.note}`;
  return (
    <Frame width={WIDTH} height={props.adjuster.direction ? 160 : 141} title={title}>
      <rect class="picture-body" x="4" y="2" width={WIDTH - 8} height="82" rx="8" />
      {[22, 64].map((y) => (
        <rect key={y} class="picture-bolt" x={FIRST - 9} y={y - 8} width={LAST - FIRST + 18} height="16" rx="8" />
      ))}
      <Scale adjuster={props.adjuster} low={low} high={high} at={at} units={props.units} />
      <g class="rod-push" style={{ '--push': `${from - to}px` }}>
        <rect class="picture-bolt" x={to - PLATE / 2} y="8" width={PLATE} height="70" rx="5" />
        <circle class="cam-hole" cx={to} cy="43" r="10" />
        {[22, 64].map((y) => (
          <polygon key={y} class="picture-body" points={hexagon(to, y)} />
        ))}
        <path class="picture-head" d={`M${to} 108l-8-24h16z`} />
      </g>
      <rect class="cam-ring" x={from - PLATE / 2} y="8" width={PLATE} height="70" rx="5" />
      <path class="eccentric-from" d={`M${from} 84v24`} />
      {way !== 0 && <StraightArrow from={[from, 96]} to={[to - way * Math.min(9, Math.abs(to - from) / 2), 96]} />}
    </Frame>
  );
}

const hexagon = (x: number, y: number): string =>
  [0, 1, 2, 3, 4, 5]
    .map((i) => `${x + 7 * Math.sin((i * Math.PI) / 3)},${y - 7 * Math.cos((i * Math.PI) / 3)}`)
    .join(' ');

interface ScaleProps extends Pick<PictureProps, 'units'> {
  adjuster: Adjuster;
  low: number;
  high: number;
  at: (mm: number) => number;
}

/** A tick each step, figures at the ends and at 0, and where + and − are on the car. */
function Scale({ adjuster, low, high, at, units }: ScaleProps) {
  const step = adjuster.step ?? 1;
  const every = Math.max(1, Math.ceil((high - low) / step / MOST_TICKS));
  const figures = [low, 0, high].filter((mm, i, all) => mm >= low && mm <= high && all.indexOf(mm) === i);
  // A 0 that is close to an end would run into its figure.
  const clear = figures.filter(
    (mm) => mm !== 0 || mm === low || mm === high || Math.min(at(0) - FIRST, LAST - at(0)) > 34,
  );
  return (
    <>
      <path class="picture-line" d={`M${FIRST} 109H${LAST}`} />
      {multiples(step * every, low, high).map((mm) => (
        <path key={mm} class="picture-line" d={`M${at(mm)} 109v${mm === 0 ? 11 : 6}`} />
      ))}
      {clear.map((mm) => (
        <text key={mm} class="picture-small" x={at(mm)} y="136" text-anchor="middle">
          {signed(mm, units)}
        </text>
      ))}
      {adjuster.direction && (
        <>
          <text class="picture-small" x="4" y="156">
            ‹ {wayOf(adjuster.direction, -1)}
          </text>
          <text class="picture-small" x={WIDTH - 4} y="156" text-anchor="end">
            {wayOf(adjuster.direction, 1)} ›
          </text>
        </>
      )}
    </>
  );
}

/** On its scale, with its sign. */
const signed = (mm: number, units?: ShopUnits): string => `${mm > 0 ? '+' : ''}${bareLength(mm, units)}`;

function words({ adjuster, from, to, units }: PictureProps) {
  const change = Number(to) - Number(from);
  const way = wayOf(adjuster.direction, change > 0 ? 1 : -1) || `towards ${change > 0 ? '+' : '−'}`;
  return {
    from: signed(Number(from), units),
    to: signed(Number(to), units),
    unit: lengthUnit(units),
    note: change === 0 ? 'stays as it is' : `${lengthText(Math.abs(change), units)} ${way}`,
  };
}

export const slide: AdjusterPicture = { Picture, words, wide: true };
