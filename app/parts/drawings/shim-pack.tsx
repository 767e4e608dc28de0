import { bareLength, lengthText, lengthUnit, type ShopUnits } from '../../../core/units/shop.ts';
import type { AdjusterPicture, PictureProps, ShimCount } from './picture.tsx';
import { Frame } from './picture.tsx';

type Fate = 'kept' | 'out' | 'added';
export interface Shim {
  readonly size: number;
  readonly fate: Fate;
}

const WIDTH = 290;
/** Room for the pack between the bracket and the arm, px. */
const ROOM = 178;
const LEFT = 34;
/** A shim's upper edge and height, and how far one that comes out is drawn above the pack, px. */
const TOP = 58;
const TALL = 52;
const LIFT = 40;

/** Which shims stay, which come out, which go in: thickest first. */
export function compareStacks(from: readonly ShimCount[], to: readonly ShimCount[]): Shim[] {
  const count = (stack: readonly ShimCount[], size: number) =>
    stack.reduce((sum, shim) => sum + (shim.size === size ? shim.count : 0), 0);
  const sizes = [...new Set([...from, ...to].map(({ size }) => size))].sort((a, b) => b - a);
  const of = (fate: Fate, how: (before: number, after: number) => number): Shim[] =>
    sizes.flatMap((size) =>
      Array.from({ length: Math.max(0, how(count(from, size), count(to, size))) }, () => ({ size, fate })),
    );
  return [...of('kept', Math.min), ...of('out', (a, b) => a - b), ...of('added', (a, b) => b - a)];
}

/** The pack as far as its thickness tells: what stays as one block, what changes as another. */
function bare(from: number, to: number): Shim[] {
  const kept: Shim = { size: Math.min(from, to), fate: 'kept' };
  const change: Shim = { size: Math.abs(to - from), fate: to > from ? 'added' : 'out' };
  return [kept, change].filter(({ size }) => size > 0);
}

/** Where nobody knows what is in the pack it is drawn as it is to be built. */
function shimsOf({ from, to, stackFrom, stackTo }: PictureProps): Shim[] {
  if (!stackTo) return bare(Number(from), Number(to));
  return compareStacks(stackFrom ?? stackTo, stackTo);
}

/** The pack seen from the side, between bracket and arm: kept in ink, out dashed and lifted, in lowered from above. */
function Picture(props: PictureProps) {
  const shims = shimsOf(props);
  const total = shims.reduce((sum, { size }) => sum + size, 0);
  const scale = total > 0 ? Math.min(24, ROOM / total) : 0;
  let x = LEFT;
  const placed = shims.map((shim) => {
    const at = x;
    x += shim.size * scale;
    return { shim, at };
  });
  const { from, to, unit, note } = words(props);
  return (
    <Frame width={WIDTH} height={126} title={`Shim pack seen from the side, ${from} to ${to} ${unit}: ${note}`}>
      <path class="picture-hatch" d="M8 44l26 16M8 62l26 16M8 80l26 16M8 98l26 16" />
      <path class="picture-line" d={`M${LEFT} 44v78`} />
      <path class="picture-bolt" d={`M14 ${TOP + 20}h${x + 12}v12H14z`} />
      {placed.map(({ shim, at }) => (
        <Plate key={at} shim={shim} x={at} width={shim.size * scale} units={props.units} />
      ))}
      <rect class="picture-body" x={x} y={TOP - 4} width="24" height={TALL + 8} rx="4" />
      <rect class="picture-bolt" x={x + 24} y={TOP + 11} width="14" height="30" rx="3" />
    </Frame>
  );
}

interface PlateProps extends Pick<PictureProps, 'units'> {
  shim: Shim;
  x: number;
  width: number;
}

function Plate({ shim: { size, fate }, x, width, units }: PlateProps) {
  const middle = x + width / 2;
  const figure = bareLength(size, units);
  const upright = width > 6 + figure.length * 9;
  return (
    <g class={`shim shim-${fate}`} transform={`translate(0 ${fate === 'out' ? -LIFT : 0})`}>
      <g class="shim-slide">
        <rect x={x + 0.75} y={TOP} width={Math.max(1, width - 1.5)} height={TALL} rx="1.5" />
        {width > 13 && (
          <text
            class="shim-size"
            transform={`translate(${middle} ${TOP + TALL / 2}) rotate(${upright ? 0 : -90})`}
            text-anchor="middle"
            dy=".36em"
          >
            {figure}
          </text>
        )}
      </g>
      {fate !== 'kept' && (
        <text class="shim-sign" x={middle} y={TOP - 6} text-anchor="middle">
          {fate === 'out' ? '−' : '+'}
        </text>
      )}
    </g>
  );
}

/** "2 × 1.5 and 1 × 3" of the shims that share a fate. */
function list(shims: readonly Shim[], fate: Fate, units?: ShopUnits): string {
  const sizes = shims.filter((shim) => shim.fate === fate).map(({ size }) => size);
  const count = (size: number) => sizes.filter((one) => one === size).length;
  return [...new Set(sizes)].map((size) => `${count(size)} × ${bareLength(size, units)}`).join(' and ');
}

function words(props: PictureProps) {
  const shims = shimsOf(props);
  const { units } = props;
  const from = bareLength(Number(props.from), units);
  const to = bareLength(Number(props.to), units);
  const unit = lengthUnit(units);
  const change = Number(props.to) - Number(props.from);
  const by = change === 0 ? 'stays as it is' : `${lengthText(Math.abs(change), units)} ${change > 0 ? 'more' : 'less'}`;
  if (!props.stackFrom || !props.stackTo) return { from, to, unit, note: by };
  const out = list(shims, 'out', units);
  const added = list(shims, 'added', units);
  const note = [out && `take out ${out}`, added && `add ${added}`].filter(Boolean).join(', ');
  return { from, to, unit, note: note || by };
}

export const shimPack: AdjusterPicture = { Picture, words, wide: true };
