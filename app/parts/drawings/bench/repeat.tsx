import { Frame } from '../picture.tsx';
import { Word } from './strokes.tsx';

/** Readings of the same thing beside one another, their mean, and how far they lie from it. */
export function RepeatDrawing() {
  const off = [-10, 14, 4, -22, 9, -3, 18, -8];
  return (
    <Frame
      width={320}
      height={140}
      title="Readings of the same thing again and again: how far they lie from their middle is the scatter"
    >
      <rect class="bench-band" x="20" y="52" width="284" height="30" />
      <path class="picture-line" d="M20 67H304" />
      {off.map((y, i) => (
        <path key={String(i)} class="bench-cross" d={`M${44 + i * 34 - 7} ${67 - y - 7}l14 14m0-14l-14 14`} />
      ))}
      <Word at={[160, 126]}>off and on again each time</Word>
    </Frame>
  );
}
