import { around, Frame } from '../picture.tsx';
import { FromAbove, Letter, Word } from './strokes.tsx';

/** A wheel on its turn plate from above, at both ends of the sweep. */
export function SweepDrawing() {
  const [ax, ay] = around(-22, 66);
  const [bx, by] = around(22, 66);
  return (
    <Frame
      width={320}
      height={176}
      title="Left wheel on its turn plate from above, turned out to A and in to B, the brake held"
    >
      <g transform="translate(118 96)">
        <circle class="picture-bolt" r="54" />
        <path
          class="picture-hatch"
          d={Array.from({ length: 13 }, (_, i) => {
            const [x, y] = around(-60 + i * 10, 54);
            const [u, v] = around(-60 + i * 10, 47);
            return `M${x} ${y}L${u} ${v}`;
          }).join('')}
        />
        <FromAbove at={[0, 0]} angle={22} dashed />
        <FromAbove at={[0, 0]} angle={-22} />
        <Letter at={[ax - 6, ay - 8]}>A</Letter>
        <Letter at={[bx + 6, by - 8]}>B</Letter>
      </g>
      <Word at={[12, 34]} end="start">
        out
      </Word>
      <Word at={[178, 34]} end="start">
        in
      </Word>
      <g transform="translate(256 104)">
        <path class="picture-body" d="M-26-18h34l12 10v10h-46z" />
        <path class="picture-line" d="M-26-18l-14-30M20 8l14 0" />
        <Word at={[0, 34]}>brake held</Word>
      </g>
    </Frame>
  );
}
