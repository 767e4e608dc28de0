/** So few of many places that they can be drawn, spread evenly. */

/** A place in a picture that is 1 wide and 1 high. */
export type DiskPoint = readonly [x: number, y: number];

/** Nearer than this, in pictures, two dots look like one. */
const FINEST = 1 / 64;
const COARSER = 1.06;

/**
 * Picks places so that none of all is further than `spacing` from one picked, and no two picked are nearer than that.
 * @param count how many places there are; `spot` gives each, in or out of the picture
 * @param most how many may be picked
 * @returns numbers of the places picked, and the spacing that it took
 */
export function poissonDisk(
  count: number,
  spot: (i: number) => DiskPoint,
  most: number,
): { picked: number[]; spacing: number } {
  for (let spacing = FINEST; ; spacing *= COARSER) {
    const picked = pick(count, spot, most, spacing);
    if (picked) return { picked, spacing };
  }
}

/** Takes whatever is not near one taken before; nothing if that makes too many. */
function pick(count: number, spot: (i: number) => DiskPoint, most: number, spacing: number): number[] | undefined {
  const picked: DiskPoint[] = [];
  const numbers: number[] = [];
  /** What was picked by cell; a cell is as wide as the spacing, so that what is near lies in it or beside it. */
  const cells = new Map<number, DiskPoint[]>();
  const cell = (x: number, y: number): number => x * 4096 + y;
  for (let i = 0; i < count; i++) {
    const [x, y] = spot(i);
    const [column, row] = [Math.floor(x / spacing), Math.floor(y / spacing)];
    let near = false;
    for (let c = column - 1; c <= column + 1 && !near; c++) {
      for (let r = row - 1; r <= row + 1 && !near; r++) {
        near = cells.get(cell(c, r))?.some(([a, b]) => Math.hypot(a - x, b - y) < spacing) ?? false;
      }
    }
    if (near) continue;
    if (picked.length === most) return undefined;
    picked.push([x, y]);
    numbers.push(i);
    const own = cells.get(cell(column, row));
    if (own) own.push([x, y]);
    else cells.set(cell(column, row), [[x, y]]);
  }
  return numbers;
}
