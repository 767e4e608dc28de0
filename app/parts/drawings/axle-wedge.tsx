import { isLeft } from '../../../core/corners.ts';
import { partAngle, type ShopUnits } from '../../../core/units/shop.ts';
import type { AdjusterPicture, PictureProps } from './picture.tsx';
import { Frame, TurnArrow } from './picture.tsx';

/** A degree is too little to see: the thickest wedge is drawn at this angle. */
const STEEPEST = 13;
/** Half the length of the spring's seat, and where its face is above the axle's middle, px. */
const HALF = 44;
const SEAT = 30;
const AXIS = 66;

function gainOf({ adjuster, from, to }: PictureProps): number {
  const all = [...((adjuster.degrees ?? []) as readonly number[]), Number(from), Number(to)].map(Math.abs);
  return STEEPEST / Math.max(0.1, ...all);
}

/** The axle's end from outside the wheel, spring above: the wedge, and the steering axis that it leans. */
function Picture(props: PictureProps) {
  const gain = gainOf(props);
  const rear = isLeft(props.corner) ? 1 : -1;
  const from = Number(props.from) * gain * rear;
  const to = Number(props.to) * gain * rear;
  const drop = 2 * HALF * Math.tan((Math.abs(to) * Math.PI) / 180);
  const { from: before, to: after, note } = words(props);
  const title = `Leaf spring above the axle, from the side: wedge from ${before} to ${after}, ${note}`;
  return (
    <Frame width={290} height={154} title={title}>
      <g transform="translate(145 92)">
        <g transform={`translate(0 ${-SEAT - drop / 2})`}>
          <Spring />
        </g>
        <g class="cam-turn" style={{ '--turn-from': `${from - to}deg` }}>
          <g transform={`rotate(${to})`}>
            <path class="picture-body" d={`M${-HALF} ${-SEAT}h${2 * HALF}v8l-22 12h${-2 * (HALF - 22)}l-22-12z`} />
            <circle class="picture-bolt" r="21" />
            <path class="eccentric-to" d={`M0 ${AXIS - 12}V${-AXIS}`} />
          </g>
        </g>
        <path class="eccentric-from" d={`M0 ${AXIS - 12}V${-AXIS}`} transform={`rotate(${from})`} />
        {to !== 0 && <path class="picture-head" d={wedge(to)} />}
        <circle class="picture-ink" r="3" />
        <TurnArrow from={from} to={to} radius={AXIS + 14} />
        <text class="picture-small" x={-100 * rear} y="52" text-anchor="middle">
          front
        </text>
        <text class="picture-small" x={100 * rear} y="52" text-anchor="middle">
          rear
        </text>
      </g>
    </Frame>
  );
}

/** What is between the level spring and a seat that leans by so much: thin at one end, thick at the other. */
function wedge(lean: number): string {
  const a = (lean * Math.PI) / 180;
  const end = (x: number) => `${x * Math.cos(a) + SEAT * Math.sin(a)} ${x * Math.sin(a) - SEAT * Math.cos(a)}`;
  const top = -SEAT - HALF * Math.abs(Math.tan(a));
  return `M${end(-HALF)}L${end(HALF)}L${HALF} ${top}H${-HALF}z`;
}

/** Three leaves, an eye at either end. */
function Spring() {
  return (
    <>
      <path class="picture-bolt" d="M-128-30Q0 4 128-30v7Q0 12 -128-23z" transform="translate(0 -6)" />
      <rect class="picture-bolt" x="-72" y="-14" width="144" height="7" />
      <rect class="picture-bolt" x="-48" y="-7" width="96" height="7" />
      <circle class="cam-hole" cx="-128" cy="-34" r="8" />
      <circle class="cam-hole" cx="128" cy="-34" r="8" />
    </>
  );
}

const name = (degrees: number, units?: ShopUnits): string => (degrees === 0 ? 'none' : partAngle(degrees, units));

function words(props: PictureProps) {
  const { units } = props;
  const [from, to] = [Number(props.from), Number(props.to)];
  if (to === 0)
    return { from: name(from, units), to: name(to, units), note: from === 0 ? 'stays as it is' : 'the old wedge out' };
  const [above, below] = to > 0 ? ['rear', 'front'] : ['front', 'rear'];
  return {
    from: name(from, units),
    to: name(to, units),
    note: from === to ? 'stays as it is' : `thick end to the ${above}`,
    // Which end follows from the geometry: a seat on top of the axle leans the other way from one beneath it.
    also: `thick end to the ${above}; with the spring under the axle, to the ${below}`,
  };
}

export const axleWedge: AdjusterPicture = { Picture, words, wide: true };
