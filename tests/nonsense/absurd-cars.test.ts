/**
 * Cars that nobody has built, and whose dimensions are numbers all the same: a sign typed wrong, a figure left out. They are
 * refused in words or planned like any other; between two moves of such a plan there may be no pose.
 */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { type AxleName, type CarFile, CORNERS, type Vec3 } from '../../core/contract.ts';
import { AXLES } from '../../core/corners.ts';
import { InputError, planOfFile, reachOfFile } from '../../core/index.ts';
import { shortOrLong } from '../tools/seeds.ts';

const read = (name: string): CarFile =>
  JSON.parse(readFileSync(new URL(`../../fixtures/cars/${name}.json`, import.meta.url), 'utf8'));
const NAMES = ['ribble-six', 'tarn-gt'];

/** A coordinate of a car's point, and what it is multiplied by. */
type Change = readonly [name: string, axle: AxleName, point: string, axis: number, by: number];
const everySign = (): Change[] =>
  NAMES.flatMap((name) =>
    (Object.keys(AXLES) as AxleName[]).flatMap((axle) =>
      Object.keys(read(name).car[axle].suspension.points).flatMap((point) =>
        [0, 1, 2].map((axis): Change => [name, axle, point, axis, -1]),
      ),
    ),
  );
/** Those of which a plan once led a wheel by the rack from where it had no pose, or a picture had places that are none. */
const FEW: readonly Change[] = [
  ['ribble-six', 'front', 'tieOuter', 2, -1],
  ['tarn-gt', 'rear', 'outer4', 1, 0],
];
const SLOWER: readonly Change[] = [
  ['ribble-six', 'front', 'tieOuter', 0, 0],
  ['tarn-gt', 'front', 'tieOuter', 0, 0],
];

function changed([name, axle, point, axis, by]: Change): CarFile {
  const file = read(name);
  (file.car[axle].suspension.points[point] as unknown as Vec3 & number[])[axis]! *= by;
  return file;
}

const CHANGES = shortOrLong(FEW, [...FEW, ...SLOWER, ...everySign()]);

it.each(CHANGES)('%s with its %s %s off: axis %i times %i', (...change) => {
  const file = changed(change);
  let plan: ReturnType<typeof planOfFile>;
  try {
    plan = planOfFile(file, { style: 'practical', live: ['camber', 'toe'] });
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    return;
  }
  for (const { setBy, watched } of plan.moves) {
    const numbers = [setBy?.value, watched?.from, watched?.within].filter((one) => one !== undefined);
    expect(numbers.every(Number.isFinite)).toBe(true);
    expect(numbers.length).toBe(setBy ? 3 : 0);
  }
  for (const corner of CORNERS.filter((one) => file.visits?.at(-1)?.rounds.at(-1)?.reading[one])) {
    const { all } = reachOfFile(file, {}, corner, plan.positions);
    expect([...all.places.flat(), ...all.within].every(Number.isFinite)).toBe(true);
  }
});
