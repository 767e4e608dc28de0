import { Frame } from '../picture.tsx';
import { Distance, Floor, Word } from './strokes.tsx';

/** A wheel from the front with a plumb line, or a level held upright, outside it. */
export function CamberDrawing({ level = false }: { readonly level?: boolean }) {
  const title = level
    ? 'A wheel from the front, a level held upright on the rim above and below'
    : 'A wheel from the front, a plumb line outside it, a rule to the rim above at A and below at B';
  return (
    <Frame width={320} height={196} title={title}>
      <Floor y={184} />
      <g transform="translate(206 104) rotate(-6)">
        <rect class="picture-body" x="-26" y="-80" width="52" height="160" rx="14" />
        <rect class="picture-bolt" x="-30" y="-52" width="12" height="104" rx="3" />
        <path class="picture-line" d="M26 0h70" />
        {level && <rect class="bench-tool" x="-52" y="-62" width="16" height="124" rx="3" />}
        {level && <path class="bench-tool" d="M-36-50h10M-36 50h10" />}
      </g>
      {!level && (
        <>
          <path class="bench-string" d="M96 10V158" />
          <path class="picture-ink" d="M88 158h16l-8 18z" />
          <Distance from={[96, 56]} to={[170, 56]} name="A" />
          <Distance from={[96, 152]} to={[180, 152]} name="B" />
        </>
      )}
      <Word at={[8, 30]} end="start">
        outside
      </Word>
    </Frame>
  );
}
