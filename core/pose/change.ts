/** What adjusters do to the parameters of a compiled suspension. */
import type { Effect } from '../adjuster/kind.ts';
import type { Vec3 } from '../contract.ts';
import { cos, radians, sin } from '../geometry/angle.ts';
import { sub } from '../geometry/vector.ts';
import { ADD_CAMBER, ADD_CASTER, ADD_TOE, SPIN_CAMBER, SPIN_TOE, TILT, turned, type Wheel } from './wheel.ts';

/** A sparse change of parameters: what an adjuster at one position does. */
export interface Change {
  readonly at: readonly number[];
  readonly by: readonly number[];
}

/**
 * The parameters that an effect on a wheel's corner changes.
 * @param zero what counts as none: an adjuster's effect at its reference
 */
export function changeOf({ slots, lengths, angles, outboard }: Wheel, effect: Effect, zero: Effect = NONE): Change {
  const at: number[] = [];
  const by: number[] = [];
  const put = (slot: number, change: number): void => {
    if (change === 0) return;
    at.push(slot);
    by.push(change);
  };
  for (const name of namesIn(effect.shift, zero.shift)) {
    const shift = turned(sub(effect.shift?.[name] ?? NOWHERE, zero.shift?.[name] ?? NOWHERE), outboard);
    for (const slot of slots.get(name) ?? []) for (let i = 0; i < 3; i++) put(slot + i, shift[i]!);
  }
  for (const link of namesIn(effect.lengthen, zero.lengthen)) {
    put(lengths.get(link)!, (effect.lengthen?.[link] ?? 0) - (zero.lengthen?.[link] ?? 0));
  }
  put(angles + TILT, (effect.tilt ?? 0) - (zero.tilt ?? 0));
  put(angles + SPIN_CAMBER, (effect.spin?.camber ?? 0) - (zero.spin?.camber ?? 0));
  put(angles + SPIN_TOE, (effect.spin?.toe ?? 0) - (zero.spin?.toe ?? 0));
  put(angles + ADD_CAMBER, (effect.add?.camber ?? 0) - (zero.add?.camber ?? 0));
  put(angles + ADD_CASTER, (effect.add?.caster ?? 0) - (zero.add?.caster ?? 0));
  put(angles + ADD_TOE, (effect.add?.toe ?? 0) - (zero.add?.toe ?? 0));
  return { at, by };
}
const NONE: Effect = {};
const NOWHERE: Vec3 = [0, 0, 0];

/** The names in both, each once. */
function namesIn(a: object | undefined, b: object | undefined): readonly string[] {
  const names = a ? Object.keys(a) : [];
  if (b) for (const name in b) if (!names.includes(name)) names.push(name);
  return names;
}

/**
 * Writes a clamped strut's normals for its tilt. Tilts of two bolts add up as angles, which changes of the normals
 * themselves would not.
 */
export function tiltLine({ normals, angles, outboard }: Wheel, reference: Float64Array, params: Float64Array): void {
  if (normals.length === 0) return;
  const tilt = radians(outboard * params[angles + TILT]!);
  const [c, s] = [cos(tilt), sin(tilt)];
  for (const slot of normals) {
    const [y, z] = [reference[slot + 1]!, reference[slot + 2]!];
    params[slot + 1] = y * c - z * s;
    params[slot + 2] = y * s + z * c;
  }
}

/** What takes the parameters from `b` to `a`. */
export const changeBetween = (a: Change, b: Change): Change => ({
  at: [...a.at, ...b.at],
  by: [...a.by, ...b.by.map((x) => -x)],
});

/** Adds a change to a parameter array. */
export function applyChange(params: Float64Array, { at, by }: Change): void {
  for (let i = 0; i < at.length; i++) {
    const slot = at[i]!;
    params[slot]! += by[i]!;
  }
}

/** So many times a change. */
export const scaled = ({ at, by }: Change, times: number): Change => ({ at, by: by.map((x) => times * x) });

/**
 * Adds to each number what it gains by a change.
 * @param gradient number by number what each gains by each parameter
 * @param first where the first of the numbers stands in `out`
 */
export function gainBy(
  gradient: Float64Array,
  numbers: number,
  { at, by }: Change,
  out: Float64Array,
  first = 0,
): void {
  const width = gradient.length / numbers;
  for (let k = 0; k < numbers; k++) {
    let sum = 0;
    for (let i = 0; i < at.length; i++) sum += gradient[k * width + at[i]!]! * by[i]!;
    out[first + k]! += sum;
  }
}
