import { Frame } from '../picture.tsx';
import { Ahead, Distance, FromAbove, Letter, Word } from './strokes.tsx';

/** Front wheels, rods behind the axle or ahead of it and the steering wheel, from above. */
export function RoughDrawing({ ahead = false }: { readonly ahead?: boolean }) {
  const side = ahead ? 'ahead of the axle' : 'behind the axle';
  // The arms go back from the steering axis, or forward.
  const rod = ahead ? 52 : 104;
  return (
    <Frame
      width={320}
      height={210}
      title={`Front wheels from above with the tape at A and B, the rods to turn ${side}, the steering arm R and the steering wheel`}
    >
      <Ahead at={[16, 96]} />
      <FromAbove at={[60, 78]} angle={6} />
      <FromAbove at={[260, 78]} angle={-6} />
      <Distance from={[78, 24]} to={[242, 24]} name="A" off={[-40, 0]} />
      <Distance from={[66, 132]} to={[254, 132]} name="B" off={[-40, 0]} />
      <path class="picture-line" d={`M74 78H96V${rod}M246 78H224V${rod}`} />
      <circle class="picture-bolt" cx="96" cy="78" r="6" />
      <circle class="picture-bolt" cx="224" cy="78" r="6" />
      <path class="bench-rod" d={`M96 ${rod}H136M184 ${rod}H224`} />
      <path class="picture-body" d={`M136 ${rod - 8}h48v16h-48z`} />
      <path class="bench-measured" d={`M116 78V${rod}M110 78h12M110 ${rod}h12`} />
      <Letter at={[116, ahead ? 94 : 62]}>R</Letter>
      <g transform="translate(160 176)">
        <circle class="picture-bolt" r="26" />
        <path class="picture-line" d="M-26 0H26M0 0V26" transform="rotate(14)" />
      </g>
      <Word at={[194, 182]} end="start">
        off to the right
      </Word>
    </Frame>
  );
}
