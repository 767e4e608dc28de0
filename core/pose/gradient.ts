/**
 * What an assembly's numbers gain by each of its parameters, at a pose that is solved: directly, and by where the bodies then
 * stand (pull-back.ts). Parameters as `Mechanism.parameters` gives them: a clamped strut's normals before its tilt.
 */
import type { Vec3 } from '../contract.ts';
import { cos, degrees, type Radians, radians, sin } from '../geometry/angle.ts';
import { cross, dot, sub } from '../geometry/vector.ts';
import { spinAxis } from '../geometry/wheel-angles.ts';
import type { Linkage } from './linkage.ts';
import { ANGLES_A_WHEEL, CAMBER, CASTER, TOE } from './numbers.ts';
import { FREEDOMS, pullBack } from './pull-back.ts';
import { ADD_CAMBER, ADD_CASTER, ADD_TOE, SPIN_CAMBER, SPIN_TOE, TILT, type Wheel } from './wheel.ts';

/** Degrees in a radian. */
const DEGREES = degrees(1 as Radians);
const UPRIGHT = Float64Array.of(1, 0, 0, 0, 1, 0, 0, 0, 1);

/**
 * @param linkage right after it was solved for these parameters
 * @param numbers how many it has
 * @returns number by number what each gains by each parameter; nothing where the rows do not hold a body there
 */
export function gradientOf(linkage: Linkage, numbers: number, params: Float64Array): Float64Array | undefined {
  const { wheels, bodies, crossRod, origin, reference } = linkage;
  const gradient = new Gradient(linkage, numbers, params);
  for (const [w, wheel] of wheels.entries()) gradient.addWheel(wheel, ANGLES_A_WHEEL * w);
  if (origin !== undefined) gradient.addBody(origin, ANGLES_A_WHEEL * wheels.length);
  const first = crossRod?.first ?? 0;
  // What hangs on another body comes before it.
  for (let body = bodies.length - 1; body >= 0; body--) {
    const own = first === 1 ? bodies.length - 1 - body : body;
    if (!gradient.pull(own)) return undefined;
    if (crossRod && own !== first) gradient.carry(crossRod.end, crossRod.arm, first);
  }
  for (const wheel of wheels) gradient.beforeTilt(wheel, reference);
  return gradient.out;
}

class Gradient {
  readonly out: Float64Array;
  /** Of each body, number by number what each gains by a step of its pose. */
  readonly #seeds: readonly Float64Array[];

  constructor(
    private readonly linkage: Linkage,
    private readonly numbers: number,
    private readonly params: Float64Array,
  ) {
    this.out = new Float64Array(numbers * params.length);
    this.#seeds = linkage.bodies.map(() => new Float64Array(numbers * FREEDOMS));
  }

  /** @param first the first of the wheel's numbers */
  addWheel(wheel: Wheel, first: number): void {
    const { angles, outboard, suspension, body } = wheel;
    const camber = suspension.camber + this.params[angles + SPIN_CAMBER]!;
    const toe = suspension.toe + this.params[angles + SPIN_TOE]!;
    const inCar = ([x, y, z]: Vec3): Vec3 => this.#turned(body, [x, outboard * y, z]);
    const spin = inCar(spinAxis(camber, toe));
    const [x, y, z] = spin;
    const [c, t] = [radians(camber), radians(toe)];
    const byCamber = inCar([-sin(c) * sin(t), -sin(c) * cos(t), -cos(c)]);
    const byToe = inCar([cos(c) * cos(t), -cos(c) * sin(t), 0]);
    const flat = (DEGREES * outboard) / (x * x + y * y);
    const bySpin: readonly (readonly [number, Vec3])[] = [
      [first + CAMBER, [0, 0, -DEGREES / Math.sqrt(1 - z * z)]],
      [first + TOE, [flat * y, -flat * x, 0]],
    ];
    for (const [number, by] of bySpin) {
      this.#addStep(body, number, STILL, cross(spin, by));
      this.#add(number, angles + SPIN_CAMBER, dot(by, byCamber) / DEGREES);
      this.#add(number, angles + SPIN_TOE, dot(by, byToe) / DEGREES);
    }
    this.#addCaster(wheel, first + CASTER);
    this.#add(first + CAMBER, angles + ADD_CAMBER, 1);
    this.#add(first + CASTER, angles + ADD_CASTER, 1);
    this.#add(first + TOE, angles + ADD_TOE, 1);
  }

  #addCaster(wheel: Wheel, number: number): void {
    const ends = this.linkage.kind.steeringAxis;
    if (!ends) return;
    const [low, high] = ends.map((name) => this.#end(wheel, name)) as [End, End];
    const [x, , z] = sub(high.place, low.place);
    const flat = DEGREES / (x * x + z * z);
    const by: Vec3 = [-flat * z, 0, flat * x];
    this.#addEnd(number, high, by);
    this.#addEnd(number, low, [-by[0], 0, -by[2]]);
  }

  /** One end of a steering axis: on what carries the body, or on the body. */
  #end({ slots, onUpright, body }: Wheel, name: string): End {
    const at = slots.get(name)![0]!;
    const own: Vec3 = [this.params[at]!, this.params[at + 1]!, this.params[at + 2]!];
    const pose = this.linkage.bodies[body]!.solver?.pose;
    if (!onUpright.has(name) || !pose) return { at, place: own };
    const arm = this.#turned(body, own);
    return { at, place: [pose[0]! + arm[0], pose[1]! + arm[1], pose[2]! + arm[2]], on: { body, arm } };
  }

  /** A number gains `by` for each mm of a point. */
  #addEnd(number: number, { at, on }: Pick<End, 'at' | 'on'>, by: Vec3): void {
    const own = on ? this.#turnedBack(on.body, by) : by;
    for (let i = 0; i < 3; i++) this.#add(number, at + i, own[i]!);
    if (on) this.#addStep(on.body, number, by, cross(on.arm, by));
  }

  /** How the body of an axle on links stands. @param first the first of its numbers */
  addBody(origin: number, first: number): void {
    const nose = this.#turned(0, [1, 0, 0]);
    this.#addStep(0, first, STILL, cross(nose, [0, 0, DEGREES / Math.sqrt(1 - nose[2] ** 2)]));
    this.#addStep(0, first + 1, [0, 1, 0], STILL);
    this.#add(first + 1, origin + 1, -1);
  }

  /** Takes what numbers gain by a body's pose to the parameters of what holds it; false where that does not. */
  pull(body: number): boolean {
    const { solver } = this.linkage.bodies[body]!;
    return !solver || pullBack(solver, this.params, this.#seeds[body]!, this.out);
  }

  /** What numbers gain by the end of a rod goes to the body that carries it. @param end, arm as `CrossRod` has them */
  carry(end: number, arm: number, body: number): void {
    const own = this.#turned(body, [this.params[arm]!, this.params[arm + 1]!, this.params[arm + 2]!]);
    for (let number = 0; number < this.numbers; number++) {
      const at = number * this.params.length + end;
      const by: Vec3 = [this.out[at]!, this.out[at + 1]!, this.out[at + 2]!];
      this.out.fill(0, at, at + 3);
      this.#addEnd(number, { at: arm, on: { body, arm: own } }, by);
    }
  }

  /** What numbers gain by a clamped strut's normals as they are tilted, by those that are not, and by the tilt. */
  beforeTilt({ normals, angles, outboard }: Wheel, reference: Float64Array): void {
    const tilt = radians(outboard * this.params[angles + TILT]!);
    const [c, s] = [cos(tilt), sin(tilt)];
    for (let number = 0; number < this.numbers; number++) {
      for (const slot of normals) {
        const at = number * this.params.length + slot;
        const [byY, byZ] = [this.out[at + 1]!, this.out[at + 2]!];
        const [y, z] = [reference[slot + 1]!, reference[slot + 2]!];
        this.out[at + 1] = c * byY + s * byZ;
        this.out[at + 2] = c * byZ - s * byY;
        this.#add(number, angles + TILT, (outboard * (byZ * (y * c - z * s) - byY * (y * s + z * c))) / DEGREES);
      }
    }
  }

  #add(number: number, parameter: number, by: number): void {
    this.out[number * this.params.length + parameter]! += by;
  }

  #addStep(body: number, number: number, place: Vec3, turn: Vec3): void {
    const seeds = this.#seeds[body]!;
    for (let i = 0; i < 3; i++) {
      seeds[number * FREEDOMS + i]! += place[i]!;
      seeds[number * FREEDOMS + 3 + i]! += turn[i]!;
    }
  }

  #turned(body: number, [x, y, z]: Vec3): Vec3 {
    const r = this.linkage.bodies[body]!.solver?.rotation ?? UPRIGHT;
    return [r[0]! * x + r[1]! * y + r[2]! * z, r[3]! * x + r[4]! * y + r[5]! * z, r[6]! * x + r[7]! * y + r[8]! * z];
  }

  #turnedBack(body: number, [x, y, z]: Vec3): Vec3 {
    const r = this.linkage.bodies[body]!.solver?.rotation ?? UPRIGHT;
    return [r[0]! * x + r[3]! * y + r[6]! * z, r[1]! * x + r[4]! * y + r[7]! * z, r[2]! * x + r[5]! * y + r[8]! * z];
  }
}

const STILL: Vec3 = [0, 0, 0];

interface End {
  /** Its parameters. */
  readonly at: number;
  /** Where it is, mm, in the bodies' frame. */
  readonly place: Vec3;
  /** The body that it is fixed in, and its arm there as that stands; absent where it is on what carries the body. */
  readonly on?: { readonly body: number; readonly arm: Vec3 };
}
