/** What a coordinate of one of an assembly's points, moved by a mm, changes of its parameters. */
import type { Vec3 } from '../contract.ts';
import { dot, norm, scale, sub } from '../geometry/vector.ts';
import type { Change } from './change.ts';
import type { Body, Linkage } from './linkage.ts';
import { DISTANCE, HEIGHT, type HeldRow, LINE } from './rows.ts';
import { CENTRE, outboardOf, turned } from './wheel.ts';

/**
 * To first order: for as small a step, this many times it.
 * @param side whose point it is; @param axis 0, 1 or 2 of its corner's frame
 */
export function changeByPoint(linkage: Linkage, side: number, point: string, axis: number): Change {
  return new ByPoint(linkage, side, point, axis).change();
}

class ByPoint {
  readonly #at: number[] = [];
  readonly #by: number[] = [];
  /** What a mm of it is in the bodies' frame. */
  readonly #step: Vec3;

  constructor(
    private readonly linkage: Linkage,
    private readonly side: number,
    private readonly point: string,
    axis: number,
  ) {
    this.#step = turned(AXES[axis]!, outboardOf(side));
  }

  change(): Change {
    const { bodies, crossRod, origin } = this.linkage;
    for (const body of bodies) {
      const home = this.#home(body);
      for (const row of body.rows) this.#addRow(row, home);
    }
    if (crossRod) {
      this.#put(crossRod.arm, sub(this.#gone(0, crossRod.near), this.#home(bodies[crossRod.first]!)));
    }
    if (origin !== undefined) this.#put(origin, this.#home(bodies[0]!));
    return { at: this.#at, by: this.#by };
  }

  /** How far a point goes. */
  #gone(side: number, point: string): Vec3 {
    return side === this.side && point === this.point ? this.#step : STILL;
  }

  /** How far the body's origin goes: it is the middle of its wheels' centres. */
  #home(body: Body): Vec3 {
    const { wheels, bodies } = this.linkage;
    const own = wheels.flatMap((wheel, side) => (bodies[wheel.body] === body ? [this.#gone(side, CENTRE)] : []));
    return scale(own.find((gone) => gone !== STILL) ?? STILL, 1 / own.length);
  }

  #addRow({ type, at, side, ends: [inner, outer] }: HeldRow, home: Vec3): void {
    const [on, of] = [this.#gone(side, inner), this.#gone(side, outer)];
    const arm = sub(of, home);
    if (type === HEIGHT) {
      this.#put(at, [...arm, of[2]]);
      return;
    }
    this.#put(at, [...on, ...arm]);
    const apart = sub(on, of);
    if (inner === outer || (on === STILL && of === STILL)) return;
    const along = this.#along(side, inner, outer);
    const length = norm(along);
    if (type === DISTANCE) this.#put(at + 6, [dot(along, apart) / length]);
    if (type === LINE) {
      const { reference } = this.linkage;
      const normal: Vec3 = [reference[at + 6]!, reference[at + 7]!, reference[at + 8]!];
      this.#put(at + 6, scale(along, -dot(normal, apart) / length ** 2));
    }
  }

  /** From a point to another. */
  #along(side: number, inner: string, outer: string): Vec3 {
    const { suspension, outboard } = this.linkage.wheels[side]!;
    return turned(sub(suspension.points[inner]!, suspension.points[outer]!), outboard);
  }

  #put(first: number, gains: readonly number[]): void {
    gains.forEach((by, i) => {
      if (by === 0) return;
      this.#at.push(first + i);
      this.#by.push(by);
    });
  }
}

const STILL: Vec3 = [0, 0, 0];
const AXES: readonly Vec3[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];
