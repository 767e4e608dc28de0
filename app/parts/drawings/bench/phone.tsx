import { Frame, TurnArrow } from '../picture.tsx';
import { Floor, Letter, Word } from './strokes.tsx';

/** A wheel from the front with a straight edge on its rim and the phone on that; and how the phone is turned round. */
export function PhoneDrawing() {
  return (
    <Frame
      width={320}
      height={196}
      title="The phone upright against a straight edge on the rim: once with its screen away from the wheel, once with its screen to the wheel"
    >
      <Floor y={184} />
      <g transform="translate(150 104) rotate(-6)">
        <rect class="picture-body" x="-26" y="-80" width="52" height="160" rx="14" />
        <rect class="picture-bolt" x="-44" y="-66" width="10" height="132" rx="2" />
        <path class="picture-line" d="M-34-52h8M-34 52h8M26 0h60" />
        <rect class="bench-tool" x="-56" y="-38" width="11" height="76" rx="3" />
      </g>
      <g transform="translate(266 56)">
        <rect class="bench-tool" x="-20" y="-34" width="40" height="68" rx="6" />
        <rect class="picture-bolt" x="-15" y="-27" width="30" height="48" rx="1" />
        <Letter at={[0, -2]}>A</Letter>
      </g>
      <g transform="translate(266 140)">
        <rect class="bench-tool" x="-20" y="-34" width="40" height="68" rx="6" />
        <circle class="picture-line" cx="10" cy="-24" r="4" />
        <Letter at={[0, 6]}>B</Letter>
      </g>
      <g transform="translate(222 98)">
        <TurnArrow from={-40} to={150} radius={24} />
      </g>
      <Word at={[8, 30]} end="start">
        outside
      </Word>
    </Frame>
  );
}
