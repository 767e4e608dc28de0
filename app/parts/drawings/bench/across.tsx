import { Frame } from '../picture.tsx';
import { Ahead, Distance, FromAbove, Word } from './strokes.tsx';

/** Two wheels of an axle from above with the tape ahead of the hubs and behind them. */
export function AcrossDrawing({ plates = false }: { readonly plates?: boolean }) {
  const title = plates
    ? 'Toe plates against both tyres from above, the tape in the slots ahead at A and behind at B'
    : 'Both wheels of an axle from above, the tape across ahead of the hubs at A and behind them at B';
  const [left, right] = plates ? [46, 274] : [76, 244];
  return (
    <Frame width={320} height={176} title={title}>
      <Ahead at={[16, 112]} />
      <path class="picture-hatch" d="M76 92H244" stroke-dasharray="6 5" />
      <FromAbove at={[76, 92]} angle={3} />
      <FromAbove at={[244, 92]} angle={-3} />
      {plates && <path class="bench-plate" d="M48 40l5 104M272 40l-5 104" />}
      <Distance from={[left + 4, 46]} to={[right - 4, 46]} name="A" off={[0, -20]} />
      <Distance from={[left, 138]} to={[right, 138]} name="B" off={[0, 0]} />
      <Word at={[160, 172]}>{plates ? 'plates square on the floor' : 'both at hub height'}</Word>
    </Frame>
  );
}
