import type { ComponentChildren } from 'preact';
import { Frame, StraightArrow } from '../picture.tsx';
import { Distance, Floor, Letter, Word } from './strokes.tsx';

interface Props {
  readonly what?: 'caster' | 'pinion' | 'aside';
}

/** A rigid axle as what is measured of it asks: the frame from the side, the pinion from the side, the gaps from behind. */
export function AxleDrawing({ what = 'caster' }: Props) {
  if (what === 'caster') return <FrameFromTheSide />;
  return what === 'pinion' ? <Pinion /> : <Gaps />;
}

interface PanelProps {
  readonly title: string;
  /** Where the floor is, px from the top; what is below it is its hatching. */
  readonly floor: number;
  readonly children: ComponentChildren;
}

const Panel = ({ title, floor, children }: PanelProps) => (
  <Frame width={320} height={floor + 14} title={title}>
    <Floor y={floor} />
    {children}
  </Frame>
);

/** Low in front, which is +. */
const FrameFromTheSide = () => (
  <Panel
    floor={160}
    title="The frame from the side, its front end down: the tape from the floor up to the rail in front at F and behind at R, an inclinometer on the rail at C"
  >
    <path class="picture-body" d="M20 78L300 46V60L20 92z" />
    <circle class="picture-bolt" cx="90" cy="130" r="29" />
    <circle class="picture-bolt" cx="238" cy="130" r="29" />
    <Distance from={[34, 160]} to={[34, 92]} name="F" />
    <Distance from={[288, 160]} to={[288, 62]} name="R" />
    <rect class="bench-tool" x="-20" y="-18" width="40" height="18" rx="3" transform="translate(160 61) rotate(-6.5)" />
    <Letter at={[160, 27]}>C</Letter>
    <Word at={[8, 24]} end="start">
      front, down: +
    </Word>
  </Panel>
);

const Pinion = () => (
  <Panel
    floor={164}
    title="The rear axle from the side: an inclinometer on the flange of the pinion at C, the nose up is +"
  >
    <circle class="picture-bolt" cx="220" cy="110" r="54" />
    <g transform="rotate(7 220 110)">
      <circle class="picture-body" cx="220" cy="110" r="32" />
      <path class="picture-body" d="M132 98h58v24h-58z" />
      <path class="picture-bolt" d="M118 84h14v52h-14z" />
      <path class="picture-line" d="M118 110H30" />
      <rect class="bench-tool" x="96" y="82" width="16" height="56" rx="3" />
    </g>
    <Letter at={[112, 48]}>C</Letter>
    <StraightArrow from={[46, 84]} to={[46, 52]} />
    <Word at={[14, 36]} end="start">
      nose up: +
    </Word>
  </Panel>
);

const Gaps = () => (
  <Panel
    floor={176}
    title="A rigid axle from behind: the gap from the frame rail to the wheel, on the left at A and on the right at B"
  >
    <rect class="picture-body" x="26" y="72" width="44" height="104" rx="12" />
    <rect class="picture-body" x="250" y="72" width="44" height="104" rx="12" />
    <path class="picture-bolt" d="M70 116h180v16H70z" />
    <circle class="picture-body" cx="160" cy="124" r="28" />
    <path class="picture-body" d="M104 26h16v70h-16zM200 26h16v70h-16z" />
    <Distance from={[70, 88]} to={[104, 88]} name="A" off={[0, -18]} />
    <Distance from={[216, 88]} to={[250, 88]} name="B" off={[0, -18]} />
    <Word at={[48, 20]}>left</Word>
    <Word at={[272, 20]}>right</Word>
  </Panel>
);
