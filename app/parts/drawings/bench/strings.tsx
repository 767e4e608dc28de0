import { Frame } from '../picture.tsx';
import { Ahead, Distance, FromAbove, Word } from './strokes.tsx';

/** One side of the car from above: its two wheels and the string outside them. */
export function StringsDrawing() {
  return (
    <Frame
      width={320}
      height={250}
      title="The left side from above: a string outside both wheels, a rule from it to each rim ahead at A and behind at B, and to the hub at H"
    >
      <Ahead at={[292, 60]} />
      <path class="bench-string" d="M52 12L58 236" />
      <path class="picture-bolt" d="M40 4h24v10H40zM46 232h24v10H46z" />
      <FromAbove at={[196, 66]} angle={4} />
      <FromAbove at={[200, 186]} angle={2} />
      <path class="picture-hatch" d="M196 66H310M200 186H310" stroke-dasharray="6 5" />
      <Distance from={[54, 28]} to={[184, 28]} name="A" />
      <Distance from={[55, 66]} to={[180, 66]} name="H" />
      <Distance from={[56, 104]} to={[181, 104]} name="B" />
      <Distance from={[56, 150]} to={[186, 150]} name="A" />
      <Distance from={[57, 186]} to={[186, 186]} name="H" />
      <Distance from={[58, 222]} to={[184, 222]} name="B" />
      <Word at={[8, 124]} end="start">
        string
      </Word>
      <Word at={[232, 130]} end="start">
        front
      </Word>
      <Word at={[232, 244]} end="start">
        rear
      </Word>
    </Frame>
  );
}
