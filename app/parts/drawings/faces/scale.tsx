import { adjusterKinds } from '../../../../core/adjuster/catalogue.ts';
import { bareLength, figure, partAngle } from '../../../../core/units/shop.ts';
import { wayOf } from '../slide.tsx';
import type { AdjusterFace, FaceProps, Mark } from './face.ts';

const WIDTH = 300;
const FIRST = 30;
const LAST = WIDTH - FIRST;
const LINE = 74;
/** More ticks than this run together. */
const MOST_TICKS = 60;

/** What its ends are called, and how a figure on it is written. */
interface Says {
  readonly ends: (props: FaceProps) => readonly [low: string, high: string];
  readonly figure: (position: number, props: FaceProps) => string;
  readonly says?: string;
}

const numbers = ({ positions }: FaceProps): readonly number[] =>
  positions.filter((one): one is number => typeof one === 'number');

/** Where a number stands on the scale, px; the scale goes from the lowest position to the highest. */
function placer(props: FaceProps): (position: number) => number {
  const all = numbers(props);
  const [low, high] = [Math.min(...all), Math.max(...all)];
  return (position) => {
    const share = high > low ? (position - low) / (high - low) : 0.5;
    return FIRST + Math.min(1, Math.max(0, share)) * (LAST - FIRST);
  };
}

const marks = (props: FaceProps): readonly Mark[] => {
  const at = placer(props);
  return numbers(props).map((position) => ({ position, x: at(position), y: LINE }));
};

/** Ends, the middle, and as many others as have room for their figures: 44 px each. */
function figured(all: readonly number[], at: (position: number) => number): readonly number[] {
  const [low, high] = [all[0] ?? 0, all.at(-1) ?? 0];
  const kept = [low, high];
  const rest = all.length <= 7 ? all : [0];
  for (const one of rest) {
    if (all.includes(one) && kept.every((other) => Math.abs(at(one) - at(other)) >= 44)) kept.push(one);
  }
  return kept;
}

/** A straight scale with its ends named on the car. */
export function scaleFace({ ends, figure: written, says }: Says): AdjusterFace {
  function Drawing(props: FaceProps) {
    const all = numbers(props);
    const at = placer(props);
    const [low, high] = ends(props);
    const every = Math.max(1, Math.ceil(all.length / MOST_TICKS));
    const here = at(Number(props.position));
    const [first, last] = [all[0] ?? 0, all.at(-1) ?? 0];
    return (
      <>
        <text class="face-side" x={6} y="24">
          {low && `‹ ${low}`}
        </text>
        <text class="face-side" x={WIDTH - 6} y="24" text-anchor="end">
          {high && `${high} ›`}
        </text>
        <path class="eccentric-travel" d={`M${at(first)} ${LINE}H${at(last)}`} />
        {all.map((one, i) =>
          i % every === 0 || one === 0 ? (
            <path key={one} class="picture-line" d={`M${at(one)} ${LINE - 8}v${one === 0 ? 22 : 14}`} />
          ) : null,
        )}
        {figured(all, at).map((one) => (
          <text key={one} class="face-figure" x={at(one)} y={LINE + 36} text-anchor="middle">
            {written(one, props)}
          </text>
        ))}
        {!props.unknown && <path class="picture-head" d={`M${here} ${LINE - 4}l-13-26h26z`} />}
      </>
    );
  }
  return { width: WIDTH, height: 124, marks, Drawing, ...(says && { says: () => says }) };
}

const withSign = (text: string, position: number): string => (position > 0 ? `+${text}` : text);

export const slideFace = scaleFace({
  ends: ({ adjuster }) => [`− ${wayOf(adjuster.direction, -1)}`.trim(), `${wayOf(adjuster.direction, 1)} +`.trim()],
  figure: (mm, { units }) => withSign(bareLength(mm, units), mm),
});

export const leanFace = scaleFace({
  ends: () => ['− top in', 'top out +'],
  figure: (degrees, { units }) => withSign(partAngle(degrees, units, 2), degrees),
});

/** Which end of a wedge is thick hangs on how the spring sits; what it does to caster does not. */
export const wedgeFace = scaleFace({
  ends: () => ['− caster', 'caster +'],
  figure: (degrees, { units }) => (degrees === 0 ? 'none' : withSign(partAngle(degrees, units), degrees)),
});

/** Where the point is that a cam moves, of which nobody said which way its marks count. */
export const unsidedFace = scaleFace({
  ends: ({ adjuster, ...props }) => {
    const all = numbers({ adjuster, ...props });
    const side = (position: number | undefined): string => {
      const place = position ? adjusterKinds[adjuster.kind]?.place(adjuster, position) : undefined;
      return place?.as === 'mark' && place.side && place.side !== 'end' ? place.side : '';
    };
    const [low, high] = [side(all[0]), side(all.at(-1))];
    return low || high ? [low, high] : ['end of its travel', ''];
  },
  figure: (degrees, { adjuster, units }) => figure(Math.abs((degrees * adjuster.marks) / 360), units, 1),
  says: 'marks from the middle, by where its point is: which way they count is not on file',
});
