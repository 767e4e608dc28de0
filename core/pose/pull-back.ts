/**
 * What numbers that hang on a body's pose q gain by each parameter p of the rows f(q; p) that hold it, without solving anew.
 * Where the rows stay zero, f_q·dq + f_p·dp = 0: a number that gains s·dq by the pose gains −λ·f_p·dp, with f_qᵀ·λ = s. One
 * matrix serves all numbers and all parameters (the implicit function theorem, in its adjoint form; any text on
 * sensitivities, such as J. Nocedal, S. J. Wright, Numerical Optimization, ch. 8; from memory).
 *
 * Of more rows than freedoms the sum of squares stays least: what stays zero is Σ w·f_i·J_i, whose derivative has beside
 * w·J_i·J_iᵀ, as strained as a row is, how its direction turns.
 */
import type { Vec3 } from '../contract.ts';
import { add, cross, dot, scale, sub } from '../geometry/vector.ts';
import { HEIGHT, LINE, ROW_SIZE, type RowType } from './rows.ts';
import { HEIGHT_WEIGHT, type PoseSolver } from './solver.ts';

/** Of a body: 3 of its place, 3 of its rotation. */
export const FREEDOMS = 6;
const N = FREEDOMS;
const W = N + 1;
/** A pivot that is none. */
const SINGULAR = 1e-12;

/**
 * @param solver right after it has solved for these parameters
 * @param seeds number by number what each gains by a step of the pose: 3 of its place, 3 of its rotation, as the solver steps
 * @param out number by number what each gains by each parameter, to which it is added
 * @returns whether the rows hold the body at all: nothing is added where they do not
 */
export function pullBack(solver: PoseSolver, params: Float64Array, seeds: Float64Array, out: Float64Array): boolean {
  const { spare, rows, types, at } = solver;
  const many = seeds.length / N;
  const weights = seeds.slice();
  if (!solved(spare ? turnedBack(solver, params) : transposed(rows), weights, many)) return false;
  const own = new Float64Array(MOST_PARAMETERS);
  for (let i = 0; i < types.length; i++) {
    const count = byParameters(solver, params, i, own);
    for (let k = 0; k < many; k++) {
      const step = weights.subarray(k * N, (k + 1) * N);
      // Six rows have a weight each; of more each has what the six equations of the pose make of it.
      const weight = spare ? along(solver, i, step) : step[i]!;
      const first = k * params.length + at[i]!;
      for (let j = 0; j < count; j++) out[first + j]! -= weight * own[j]!;
      if (spare) addBend(solver, i, bent(solver, params, i, step), out, first);
    }
  }
  return true;
}

/** What a row gains by each of its own parameters; returns how many those are. */
function byParameters(
  { rows, types, at, rotation: r, pose }: PoseSolver,
  params: Float64Array,
  i: number,
  out: Float64Array,
) {
  const type = types[i] as RowType;
  const [first, o] = [at[i]!, i * W];
  const body = type === HEIGHT ? 0 : 3;
  for (let c = 0; c < 3; c++) {
    if (body) out[c] = -rows[o + c]!;
    out[body + c] = r[c]! * rows[o]! + r[3 + c]! * rows[o + 1]! + r[6 + c]! * rows[o + 2]!;
  }
  if (type !== LINE) out[body + 3] = -1;
  else {
    const arm = armOf(r, params, first + 3);
    const [x, y, z] = arm.map((u, c) => params[first + c]! - pose[c]! - u) as unknown as Vec3;
    for (let c = 0; c < 3; c++) out[6 + c] = r[c]! * x + r[3 + c]! * y + r[6 + c]! * z;
  }
  return ROW_SIZE[type];
}
const MOST_PARAMETERS = Math.max(...ROW_SIZE);

/** How a strained row's direction turns: with the place of its point on the body, and with the body's rotation beside. */
interface Bend {
  readonly place: Vec3;
  readonly turn: Vec3;
}
const STILL: Vec3 = [0, 0, 0];

/** What that adds by the row's parameters. @param first where they begin */
function addBend(
  { types, rotation: r }: PoseSolver,
  i: number,
  { place, turn }: Bend,
  out: Float64Array,
  first: number,
) {
  const body = types[i] === HEIGHT ? 0 : 3;
  for (let c = 0; c < 3; c++) {
    if (body) out[first + c]! += place[c]!;
    for (let k = 0; k < 3; k++) out[first + body + c]! -= r[3 * k + c]! * (place[k]! + turn[k]!);
  }
}

const armOf = (r: Float64Array, params: Float64Array, body: number): Vec3 =>
  [0, 3, 6].map(
    (k) => r[k]! * params[body]! + r[k + 1]! * params[body + 1]! + r[k + 2]! * params[body + 2]!,
  ) as unknown as Vec3;

const weightOf = ({ types }: PoseSolver, i: number): number => (types[i] === HEIGHT ? HEIGHT_WEIGHT ** 2 : 1);

/** What a row gains by a step of the pose, weighed. */
function along(solver: PoseSolver, i: number, step: ArrayLike<number>): number {
  let sum = 0;
  for (let c = 0; c < N; c++) sum += solver.rows[i * W + c]! * step[c]!;
  return weightOf(solver, i) * sum;
}

/** How what a row gains by a step changes as its direction turns. A line's own stays: no kind has lines beside spare rows. */
function bent(solver: PoseSolver, params: Float64Array, i: number, step: ArrayLike<number>): Bend {
  const { rows, types, at, rotation } = solver;
  if (types[i] === LINE) return { place: STILL, turn: STILL };
  const [x, y, z, f] = [0, 1, 2, N].map((c) => rows[i * W + c]!) as [number, number, number, number];
  const direction: Vec3 = [x, y, z];
  const force = weightOf(solver, i) * f;
  const turning: Vec3 = [step[3]!, step[4]!, step[5]!];
  const turn = scale(cross(direction, turning), force);
  if (types[i] === HEIGHT) return { place: STILL, turn };
  const first = at[i]!;
  const going = add([step[0]!, step[1]!, step[2]!], cross(turning, armOf(rotation, params, first + 3)));
  const length = params[first + 6]! + f;
  return { place: scale(sub(going, scale(direction, dot(going, direction))), force / length), turn };
}

function transposed(rows: Float64Array): Float64Array {
  return Float64Array.from({ length: N * N }, (_, at) => rows[(at % N) * W + Math.floor(at / N)]!);
}

/** The derivative of the six equations of the pose, transposed, where there are more rows. */
function turnedBack(solver: PoseSolver, params: Float64Array): Float64Array {
  const { rows, types, at, rotation } = solver;
  const out = new Float64Array(N * N);
  for (let c = 0; c < N; c++) {
    const unit = Float64Array.from({ length: N }, (_, k) => (k === c ? 1 : 0));
    types.forEach((type, i) => {
      const weight = along(solver, i, unit);
      const { place, turn } = bent(solver, params, i, unit);
      const turning = cross(armOf(rotation, params, at[i]! + (type === HEIGHT ? 0 : 3)), add(place, turn));
      for (let k = 0; k < N; k++) {
        out[k * N + c]! += weight * rows[i * W + k]! + (k < 3 ? place[k]! : turning[k - 3]!);
      }
    });
  }
  return out;
}

/** A·x = b for many b, each N in a row, in their place: Gauss with pivots. */
function solved(a: Float64Array, b: Float64Array, many: number): boolean {
  for (let c = 0; c < N; c++) {
    let pivot = c;
    for (let r = c + 1; r < N; r++) if (Math.abs(a[r * N + c]!) > Math.abs(a[pivot * N + c]!)) pivot = r;
    if (!(Math.abs(a[pivot * N + c]!) > SINGULAR)) return false;
    if (pivot !== c) {
      for (let k = c; k < N; k++) [a[c * N + k], a[pivot * N + k]] = [a[pivot * N + k]!, a[c * N + k]!];
      for (let k = 0; k < many; k++) [b[k * N + c], b[k * N + pivot]] = [b[k * N + pivot]!, b[k * N + c]!];
    }
    for (let r = c + 1; r < N; r++) {
      const share = a[r * N + c]! / a[c * N + c]!;
      if (share === 0) continue;
      for (let k = c + 1; k < N; k++) a[r * N + k]! -= share * a[c * N + k]!;
      for (let k = 0; k < many; k++) b[k * N + r]! -= share * b[k * N + c]!;
    }
  }
  for (let k = 0; k < many; k++) {
    for (let c = N - 1; c >= 0; c--) {
      let x = b[k * N + c]!;
      for (let r = c + 1; r < N; r++) x -= a[c * N + r]! * b[k * N + r]!;
      b[k * N + c] = x / a[c * N + c]!;
    }
  }
  return true;
}
