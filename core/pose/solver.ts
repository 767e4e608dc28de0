/**
 * The one pose solver: constraint rows on a rigid body, analytic derivatives, Newton's method.
 *
 * Unknowns: the place p of the body's origin (the wheel centre) and its rotation, kept as a unit quaternion so that
 * links stay rigid however far it turns. A step is a translation and a small rotation in the corner frame. The inner
 * loop allocates nothing. Long because row evaluation and elimination are one unit, kept together for speed.
 *
 * Six rows for six freedoms are met exactly. More than six are met as well as they can be: the sum of their squared
 * residuals is least (Gauss–Newton on the normal equations), heights weighing so much that they are kept. What is left
 * is what a real linkage takes up in its bushes.
 *
 * Source: Newton–Raphson on position constraints as in any text on multibody kinematics
 * (e.g. E. J. Haug, Computer Aided Kinematics and Dynamics of Mechanical Systems, ch. 4; from memory).
 */
import type { Verdict } from '../contract.ts';
import { DISTANCE, HEIGHT, type Row } from './rows.ts';

const N = 6;
const W = N + 1;
const TOLERANCE = 1e-9; // mm; quadratic convergence leaves far less
const MAX_ITERATIONS = 12;
const MAX_STEP = 600; // mm or, ×100, hundredths of a radian: beyond it Newton has lost the branch
const SMALLEST_FRACTION = 1 / 512;

/** More rows than freedoms: steps shrink by a factor only, so that more of them are needed, and a step ends it. */
const MAX_LEAST_STEPS = 40;
const LAST_STEP = 1e-9; // mm
const MOST_STRAIN = 10; // mm that bushes might take up; beyond it the parts do not go together
export const HEIGHT_WEIGHT = 1000; // of a height against a link: 1 mm of strain lifts a wheel by about a millionth

/** Rank test of the reference pose: below this the rows leave the wheel free to move. */
const RANK_TOLERANCE = 1e-7;
const LEVER = 100; // mm that make a radian comparable with a millimetre

/** Pose: px py pz qw qx qy qz. */
export type Pose = Float64Array;
const START: readonly number[] = [0, 0, 0, 1, 0, 0, 0];

export class PoseSolver {
  /** The pose of the last solve. */
  readonly pose: Pose = new Float64Array(7);
  /** Rotation matrix of `pose`, row by row. */
  readonly rotation = new Float64Array(9);
  residual = 0;
  iterations = 0;

  readonly types: Uint8Array;
  readonly at: Uint16Array;
  readonly #matrix = new Float64Array(N * W);
  /** Derivatives and residuals, one row after another, as the last solve left them; the matrix itself where there are six. */
  readonly rows: Float64Array;
  /** There are more than six. */
  readonly spare: boolean;
  readonly #mixed: Float64Array;
  readonly #from: Pose = new Float64Array(7);
  readonly #home = new Float64Array(3);
  #orientation = 0;

  /**
   * @param rows six rows or more
   * @param reference parameters of the reference pose, in which all rows are zero with no rotation
   * @param home the body's origin in the reference pose, mm
   */
  constructor(
    rows: readonly Row[],
    readonly reference: Float64Array,
    home: readonly number[],
  ) {
    this.types = Uint8Array.from(rows, (row) => row.type);
    this.at = Uint16Array.from(rows, (row) => row.at);
    this.spare = rows.length > N;
    this.rows = this.spare ? new Float64Array(rows.length * W) : this.#matrix;
    this.#mixed = new Float64Array(reference.length);
    this.#home.set(home);
  }

  /** Whether the rows hold the body in the reference pose: false where links are missing or fall together. */
  holds(): boolean {
    if (this.types.length < N) return false;
    this.#goHome();
    this.#evaluate(this.reference);
    const m = this.rows;
    for (let r = 0; r < m.length; r += W) {
      for (let c = 3; c < N; c++) m[r + c]! /= LEVER;
      const size = Math.hypot(...m.subarray(r, r + N));
      for (let c = 0; c < N && size > 0; c++) m[r + c]! /= size;
    }
    if (this.spare) this.#square(1);
    const det = this.#eliminate();
    this.#orientation = Math.sign(det);
    return Math.abs(det) > (this.spare ? RANK_TOLERANCE ** 2 : RANK_TOLERANCE);
  }

  /**
   * Solves for the parameters, from the reference pose. Leaves the answer in `pose` and `rotation`.
   * @param near a pose of this branch that is close to the answer: found sooner from there
   * @returns false if no pose on this branch of the linkage satisfies the rows
   */
  solve(params: Float64Array, near?: Pose): boolean {
    this.#goHome();
    if (near) this.pose.set(near);
    if (this.#newton(params)) return true;
    return this.#follow(params);
  }

  /** How the last solve ended. */
  verdict(converged: boolean): Verdict {
    const { residual, iterations } = this;
    return { converged, residual, iterations, reason: converged ? 'ok' : 'cannot-reach' };
  }

  #goHome(): void {
    this.pose.set(START);
    for (let i = 0; i < 3; i++) this.pose[i] = this.#home[i]!;
    this.iterations = 0;
  }

  /**
   * Where Newton from the reference pose does not arrive, the parameters go from the reference to the target in
   * steps that halve when a step fails: either the branch leads there, or it ends and the target cannot be reached.
   */
  #follow(params: Float64Array): boolean {
    const mixed = this.#mixed;
    let done = 0;
    let step = 1 / 4;
    let total = this.iterations;
    this.#goHome();
    while (done < 1) {
      this.#from.set(this.pose);
      const next = Math.min(1, done + step);
      for (let i = 0; i < mixed.length; i++) {
        const a = this.reference[i]!;
        mixed[i] = a + (params[i]! - a) * next;
      }
      this.iterations = 0;
      const arrived = this.#newton(mixed);
      total += this.iterations;
      if (arrived) {
        done = next;
        step *= 1.5;
      } else {
        this.pose.set(this.#from);
        step /= 2;
        if (step < SMALLEST_FRACTION) break;
      }
    }
    this.iterations = total;
    if (done >= 1) return true;
    this.#rotate();
    this.residual = this.#evaluate(params);
    return false;
  }

  /** Newton from the present pose. The determinant's sign tells when it has jumped to the mirrored assembly. */
  #newton(params: Float64Array): boolean {
    const pose = this.pose;
    const m = this.#matrix;
    const spare = this.spare;
    let orientation = this.#orientation;
    for (let i = spare ? MAX_LEAST_STEPS : MAX_ITERATIONS; i > 0; i--) {
      this.residual = this.#evaluate(params);
      if (spare) this.#square(HEIGHT_WEIGHT);
      else if (this.residual < TOLERANCE) return orientation === this.#orientation;
      this.iterations++;
      orientation = Math.sign(this.#eliminate());
      if (orientation === 0) return false;
      const dx = m[6]!;
      const dy = m[13]!;
      const dz = m[20]!;
      const wx = m[27]!;
      const wy = m[34]!;
      const wz = m[41]!;
      const size = Math.abs(dx) + Math.abs(dy) + Math.abs(dz) + LEVER * (Math.abs(wx) + Math.abs(wy) + Math.abs(wz));
      if (!(size < MAX_STEP)) return false;
      pose[0]! -= dx;
      pose[1]! -= dy;
      pose[2]! -= dz;
      const qw = pose[3]!;
      const qx = pose[4]!;
      const qy = pose[5]!;
      const qz = pose[6]!;
      const hx = -wx / 2;
      const hy = -wy / 2;
      const hz = -wz / 2;
      const w = qw - hx * qx - hy * qy - hz * qz;
      const x = qx + hx * qw + hy * qz - hz * qy;
      const y = qy + hy * qw + hz * qx - hx * qz;
      const z = qz + hz * qw + hx * qy - hy * qx;
      const k = 1 / Math.sqrt(w * w + x * x + y * y + z * z);
      pose[3] = w * k;
      pose[4] = x * k;
      pose[5] = y * k;
      pose[6] = z * k;
      if (spare && size < LAST_STEP) {
        this.residual = this.#evaluate(params);
        return this.residual < MOST_STRAIN;
      }
    }
    return false;
  }

  #rotate(): void {
    const pose = this.pose;
    const r = this.rotation;
    const w = pose[3]!;
    const x = pose[4]!;
    const y = pose[5]!;
    const z = pose[6]!;
    r[0] = 1 - 2 * (y * y + z * z);
    r[1] = 2 * (x * y - w * z);
    r[2] = 2 * (x * z + w * y);
    r[3] = 2 * (x * y + w * z);
    r[4] = 1 - 2 * (x * x + z * z);
    r[5] = 2 * (y * z - w * x);
    r[6] = 2 * (x * z - w * y);
    r[7] = 2 * (y * z + w * x);
    r[8] = 1 - 2 * (x * x + y * y);
  }

  /** Fills the rows with derivatives and residuals; returns the largest residual, mm. */
  #evaluate(q: Float64Array): number {
    this.#rotate();
    const m = this.rows;
    const spare = this.spare;
    const count = this.types.length;
    const r = this.rotation;
    const pose = this.pose;
    const px = pose[0]!;
    const py = pose[1]!;
    const pz = pose[2]!;
    const r0 = r[0]!;
    const r1 = r[1]!;
    const r2 = r[2]!;
    const r3 = r[3]!;
    const r4 = r[4]!;
    const r5 = r[5]!;
    const r6 = r[6]!;
    const r7 = r[7]!;
    const r8 = r[8]!;
    let worst = 0;
    for (let i = 0; i < count; i++) {
      const type = this.types[i]!;
      const at = this.at[i]!;
      const body = type === HEIGHT ? at : at + 3;
      const bx = q[body]!;
      const by = q[body + 1]!;
      const bz = q[body + 2]!;
      // u: the body point's arm from the wheel centre; g: the row's direction; c: the arm at which g acts.
      const ux = r0 * bx + r1 * by + r2 * bz;
      const uy = r3 * bx + r4 * by + r5 * bz;
      const uz = r6 * bx + r7 * by + r8 * bz;
      let gx: number;
      let gy: number;
      let gz: number;
      let cx = ux;
      let cy = uy;
      let cz = uz;
      let f: number;
      if (type === DISTANCE) {
        const dx = px + ux - q[at]!;
        const dy = py + uy - q[at + 1]!;
        const dz = pz + uz - q[at + 2]!;
        const length = q[at + 6]!;
        const square = dx * dx + dy * dy + dz * dz;
        // A residual that stays has to be the true one; one that ends at zero can do without the root.
        const k = 1 / (spare ? Math.sqrt(square) : length);
        f = (square * k - length) * (spare ? 1 : 0.5);
        gx = dx * k;
        gy = dy * k;
        gz = dz * k;
      } else if (type === HEIGHT) {
        f = pz + uz - q[at + 3]!;
        gx = 0;
        gy = 0;
        gz = 1;
      } else {
        const ex = q[at + 6]!;
        const ey = q[at + 7]!;
        const ez = q[at + 8]!;
        gx = -(r0 * ex + r1 * ey + r2 * ez);
        gy = -(r3 * ex + r4 * ey + r5 * ez);
        gz = -(r6 * ex + r7 * ey + r8 * ez);
        cx = q[at]! - px;
        cy = q[at + 1]! - py;
        cz = q[at + 2]! - pz;
        f = -(gx * (cx - ux) + gy * (cy - uy) + gz * (cz - uz));
      }
      const o = i * W;
      m[o] = gx;
      m[o + 1] = gy;
      m[o + 2] = gz;
      m[o + 3] = cy * gz - cz * gy;
      m[o + 4] = cz * gx - cx * gz;
      m[o + 5] = cx * gy - cy * gx;
      m[o + 6] = f;
      const size = f < 0 ? -f : f;
      if (!(size <= worst)) worst = size;
    }
    return worst;
  }

  /** The normal equations of more rows than six, `weight` being that of a height against all others. */
  #square(weight: number): void {
    const rows = this.rows;
    const m = this.#matrix.fill(0);
    for (let i = 0; i < this.types.length; i++) {
      const square = this.types[i] === HEIGHT ? weight * weight : 1;
      for (let r = 0; r < N; r++) {
        const a = square * rows[i * W + r]!;
        for (let c = 0; c < W; c++) m[r * W + c]! += a * rows[i * W + c]!;
      }
    }
  }

  /** Gauss–Jordan with row pivoting; leaves the step in the last column; returns the determinant (0: singular). */
  #eliminate(): number {
    const m = this.#matrix;
    let det = 1;
    for (let c = 0; c < N; c++) {
      let pivotRow = c;
      let best = Math.abs(m[c * W + c]!);
      for (let r = c + 1; r < N; r++) {
        const size = Math.abs(m[r * W + c]!);
        if (size > best) {
          best = size;
          pivotRow = r;
        }
      }
      if (!(best > 1e-12)) return 0;
      const top = c * W;
      if (pivotRow !== c) {
        const other = pivotRow * W;
        for (let k = c; k < W; k++) {
          const t = m[top + k]!;
          m[top + k] = m[other + k]!;
          m[other + k] = t;
        }
        det = -det;
      }
      const pivot = m[top + c]!;
      det *= pivot;
      const inverse = 1 / pivot;
      for (let k = c + 1; k < W; k++) m[top + k]! *= inverse;
      for (let r = c + 1; r < N; r++) {
        const o = r * W;
        const factor = m[o + c]!;
        if (factor !== 0) for (let k = c + 1; k < W; k++) m[o + k] = m[o + k]! - factor * m[top + k]!;
      }
    }
    for (let c = N - 1; c > 0; c--) {
      const x = m[c * W + N]!;
      for (let r = 0; r < c; r++) m[r * W + N] = m[r * W + N]! - m[r * W + c]! * x;
    }
    return det;
  }
}
