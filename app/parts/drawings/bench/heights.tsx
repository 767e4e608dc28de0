import { Frame } from '../picture.tsx';
import { Distance, Floor, Word } from './strokes.tsx';

/** The body over its wheels from the side, with the height of each end. */
export function HeightsDrawing() {
  return (
    <Frame
      width={320}
      height={170}
      title="The car from the side: the tape from the floor up to the same place of the body over each wheel"
    >
      <Floor y={152} />
      <path
        class="picture-bolt"
        d="M14 100V78l40-8 34-34h108l38 34 66 10v20h-22a34 34 0 0 0-68 0H120a34 34 0 0 0-68 0z"
      />
      <circle class="picture-body" cx="86" cy="124" r="27" />
      <circle class="picture-body" cx="244" cy="124" r="27" />
      <Distance from={[86, 152]} to={[86, 66]} name="F" off={[0, -8]} />
      <Distance from={[244, 152]} to={[244, 68]} name="R" off={[0, -8]} />
      <Word at={[40, 26]}>front</Word>
    </Frame>
  );
}
