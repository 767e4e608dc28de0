import { Frame, StraightArrow } from '../picture.tsx';
import { Ahead, FromAbove, Letter, Word } from './strokes.tsx';

/** A wheel rolling over a plate that slides across. */
export function SlipDrawing() {
  return (
    <Frame
      width={320}
      height={170}
      title="A wheel rolls over a plate that slides across the way it goes; a wheel with toe-in pushes the plate out"
    >
      <rect class="picture-bolt" x="28" y="60" width="130" height="52" rx="4" />
      <FromAbove at={[104, 92]} angle={7} />
      <FromAbove at={[266, 92]} angle={-3} />
      <path class="picture-hatch" d="M104 92H266" stroke-dasharray="6 5" />
      <Ahead at={[188, 66]} />
      <StraightArrow from={[66, 86]} to={[14, 86]} />
      <Letter at={[40, 48]}>S</Letter>
      <Word at={[92, 156]}>plate slides out: toe-in</Word>
    </Frame>
  );
}
