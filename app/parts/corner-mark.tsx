import type { AxleName, Corner } from '../../core/contract.ts';

const cellOf: Record<Corner, readonly [x: number, y: number]> = { LF: [0, 0], RF: [1, 0], LR: [0, 1], RR: [1, 1] };
const cells = Object.entries(cellOf) as [Corner, readonly [number, number]][];

const words: Record<Corner | AxleName, string> = {
  LF: 'left front',
  RF: 'right front',
  LR: 'left rear',
  RR: 'right rear',
  front: 'front axle',
  rear: 'rear axle',
};
const axles: Record<AxleName, readonly Corner[]> = { front: ['LF', 'RF'], rear: ['LR', 'RR'] };

/** Names a corner: four small cells with its own filled, and its letters; an axle with both of its cells filled. */
export function CornerMark({ corner }: { corner: Corner | AxleName }) {
  const filled = corner === 'front' || corner === 'rear' ? axles[corner] : [corner];
  return (
    <span class="corner-mark">
      <svg viewBox="0 0 16 16" width="15" height="15" aria-hidden="true">
        {cells.map(([name, [x, y]]) => (
          <rect
            key={name}
            class={filled.includes(name) ? 'corner-mark-here' : 'corner-mark-cell'}
            x={1 + x * 8}
            y={1 + y * 8}
            width="6"
            height="6"
            rx="1"
          />
        ))}
      </svg>
      <abbr title={words[corner]}>{corner}</abbr>
    </span>
  );
}
