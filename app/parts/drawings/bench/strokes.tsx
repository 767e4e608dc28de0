/** What the drawings of the bench are made of: wheels, tapes and letters that the steps name. */
import type { ComponentChildren } from 'preact';

type Point = readonly [x: number, y: number];

/** A wheel from above, its front up, at an angle clockwise. */
export function FromAbove({ at: [x, y], angle = 0, dashed = false }: { at: Point; angle?: number; dashed?: boolean }) {
  return (
    <g transform={`translate(${x} ${y}) rotate(${angle})`}>
      <rect class={dashed ? 'bench-dashed' : 'picture-body'} x="-13" y="-40" width="26" height="80" rx="9" />
      {!dashed && <path class="picture-line" d="M0-24v48M-5 0h10" />}
    </g>
  );
}

/** A distance that is measured: a line with a foot at each end and its letter on it. */
export function Distance({ from, to, name, off = [0, 0] }: { from: Point; to: Point; name: string; off?: Point }) {
  const [x, y] = [(from[0] + to[0]) / 2 + off[0], (from[1] + to[1]) / 2 + off[1]];
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [nx, ny] = [(-(to[1] - from[1]) / length) * 6, ((to[0] - from[0]) / length) * 6];
  const foot = ([a, b]: Point) => `M${a - nx} ${b - ny}L${a + nx} ${b + ny}`;
  return (
    <>
      <path class="bench-measured" d={`M${from.join(' ')}L${to.join(' ')}${foot(from)}${foot(to)}`} />
      <Letter at={[x, y]}>{name}</Letter>
    </>
  );
}

/** What the steps call a place or a distance. */
export function Letter({ at: [x, y], children }: { at: Point; children: ComponentChildren }) {
  return (
    <g>
      <circle class="bench-letter" cx={x} cy={y} r="11" />
      <text class="bench-letter-text" x={x} y={y} dy=".36em" text-anchor="middle">
        {children}
      </text>
    </g>
  );
}

/** A word in the drawing. */
export const Word = ({
  at: [x, y],
  children,
  end = 'middle',
}: {
  at: Point;
  children: ComponentChildren;
  end?: 'start' | 'middle' | 'end';
}) => (
  <text class="picture-small bench-word" x={x} y={y} text-anchor={end}>
    {children}
  </text>
);

/** The way is up. */
export const Ahead = ({ at: [x, y] }: { at: Point }) => (
  <path class="picture-line" d={`M${x} ${y}v-34m-7 9l7-10 7 10`} />
);

/** The floor that a wheel stands on. */
export const Floor = ({ y, width = 320 }: { y: number; width?: number }) => (
  <path
    class="picture-hatch"
    d={`M8 ${y}H${width - 8}${Array.from({ length: Math.floor((width - 24) / 20) }, (_, i) => `M${20 + i * 20} ${y}l-8 8`).join('')}`}
  />
);
