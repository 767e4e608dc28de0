import { around, Frame, TurnArrow } from '../picture.tsx';
import { Letter, Word } from './strokes.tsx';

/** A wheel in the air from outside, with the four places at which it is read. */
export function RunOutDrawing() {
  return (
    <Frame
      width={320}
      height={180}
      title="A raised wheel from outside, read with its mark at 0, a quarter, half and three quarters of a turn"
    >
      <g transform="translate(140 90)">
        <circle class="picture-body" r="78" />
        <circle class="picture-bolt" r="50" />
        <circle class="picture-line" r="8" />
        {[0, 90, 180, 270].map((angle, i) => {
          const [x, y] = around(angle, 64);
          return (
            <Letter key={angle} at={[x, y]}>
              {i + 1}
            </Letter>
          );
        })}
        <TurnArrow from={20} to={66} radius={34} />
      </g>
      <Word at={[236, 84]} end="start">
        a quarter
      </Word>
      <Word at={[236, 104]} end="start">
        turn each
      </Word>
    </Frame>
  );
}
