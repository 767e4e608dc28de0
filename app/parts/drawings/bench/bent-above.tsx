/** An axle from above or behind: what is off, beside where it should be (dashed). Not to scale: it shows which way. */
import type { Corner } from '../../../../core/contract.ts';
import { isLeft } from '../../../../core/corners.ts';
import type { Hint } from '../../../../core/said.ts';
import { Frame } from '../picture.tsx';
import { Ahead, Distance, Floor, FromAbove, Word } from './strokes.tsx';

const [LEFT, RIGHT] = [92, 228];
const placeOf = (corner: Corner): number => (isLeft(corner) ? LEFT : RIGHT);

/** The front axle and the hubs behind it: the two wheelbases, one of them shorter. */
export function WheelMovedBack({ where }: { readonly where?: Corner | undefined }) {
  const back = (x: number) => (where && placeOf(where) === x ? 22 : 0);
  return (
    <Frame
      width={320}
      height={200}
      title="The front axle from above: the wheelbase on the left at L and on the right at R"
    >
      <Ahead at={[20, 70]} />
      {where && <FromAbove at={[placeOf(where), 52]} dashed />}
      {[LEFT, RIGHT].map((x) => (
        <FromAbove key={x} at={[x, 52 + back(x)]} />
      ))}
      <path class="picture-hatch" d="M40 180H280" stroke-dasharray="6 5" />
      <Distance from={[LEFT + 34, 52 + back(LEFT)]} to={[LEFT + 34, 180]} name="L" />
      <Distance from={[RIGHT - 34, 52 + back(RIGHT)]} to={[RIGHT - 34, 180]} name="R" />
      <Word at={[160, 196]}>rear hubs</Word>
    </Frame>
  );
}

/** Both wheels on their plates in a left turn: the outer one turns less than the inner. */
export function Turns() {
  return (
    <Frame
      width={320}
      height={150}
      title="Both front wheels from above in a left turn: the outer one turns less than the inner one, as its steering arm has it"
    >
      <FromAbove at={[LEFT, 66]} angle={-24} />
      <FromAbove at={[RIGHT, 66]} angle={-24} dashed />
      <FromAbove at={[RIGHT, 66]} angle={-14} />
      <path class="bench-rod" d={`M${LEFT + 14} 66l10 34M${RIGHT - 14} 66l-4 36`} />
      <path class="picture-line" d={`M${LEFT + 24} 100H${RIGHT - 18}`} />
      <Word at={[LEFT, 142]}>inner</Word>
      <Word at={[RIGHT, 142]}>outer</Word>
    </Frame>
  );
}

/** Both rear wheels pointing to one side, or one of them; the car's middle dashed. */
export function RearToe({ angles: [left, right] }: { readonly angles: readonly [number, number] }) {
  const isAskew = left === right;
  return (
    <Frame
      width={320}
      height={160}
      title="The rear axle from above: which way its wheels point, and dashed as they should"
    >
      <Ahead at={[20, 66]} />
      <path class="picture-hatch" d="M160 8V136" stroke-dasharray="6 5" />
      <g transform={`rotate(${isAskew ? left : 0} 160 78)`}>
        <path class="picture-line" d={`M${LEFT + 13} 78H${RIGHT - 13}`} />
        {isAskew && <path class="bench-measured" d="M160 78V10" />}
        {isAskew && [LEFT, RIGHT].map((x) => <FromAbove key={x} at={[x, 78]} />)}
      </g>
      {[LEFT, RIGHT].map((x, i) => {
        const angle = [left, right][i]!;
        return (
          <g key={x}>
            {angle !== 0 && <FromAbove at={[x, 78]} dashed />}
            {!isAskew && <FromAbove at={[x, 78]} angle={angle} />}
          </g>
        );
      })}
      <Word at={[160, 156]}>rear axle</Word>
    </Frame>
  );
}

/** Two wheels of an axle from behind, each leaning by so much to the right. */
export function Leaning({ angles }: { readonly angles: readonly [number, number] }) {
  return (
    <Frame width={320} height={176} title="An axle from behind: how its wheels lean, and dashed as they should">
      <Floor y={160} />
      <path class="picture-line" d={`M${LEFT} 92H${RIGHT}`} />
      {[LEFT, RIGHT].map((x, i) => (
        <g key={x} transform={`translate(${x} 92)`}>
          {angles[i] !== 0 && <rect class="bench-dashed" x="-20" y="-68" width="40" height="136" rx="12" />}
          <rect
            class="picture-body"
            x="-20"
            y="-68"
            width="40"
            height="136"
            rx="12"
            transform={`rotate(${angles[i]})`}
          />
        </g>
      ))}
      <Word at={[LEFT, 14]}>left</Word>
      <Word at={[RIGHT, 14]}>right</Word>
    </Frame>
  );
}

const SHOWN = 9;
/** So that it is seen: what leans out or points in on the left goes the other way on the right. */
export const leaningOf = ({ where, by }: Extract<Hint, { readonly kind: 'camber' }>): readonly [number, number] => {
  const lean = by > 0 ? SHOWN : -SHOWN;
  if (where === 'front' || where === 'rear') return [-lean / 2, -lean / 2];
  return isLeft(where) ? [-lean, 0] : [0, lean];
};

export const pointingOf = (hint: Extract<Hint, { readonly kind: 'askew' | 'rear-toe' }>): readonly [number, number] => {
  const to = hint.by > 0 ? SHOWN : -SHOWN;
  if (hint.kind === 'askew') return [to, to];
  return isLeft(hint.where as Corner) ? [to, 0] : [0, -to];
};
