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

/** `a` without what `b` does: an adjuster's effect relative to its reference. */
export function without(a: Effect, b: Effect): Effect {
  const names = (x = {}, y = {}): string[] => [...new Set([...Object.keys(x), ...Object.keys(y)])];
  const from = <K extends string>(x: Partial<Record<K, number>> | undefined, y: typeof x, keys: readonly K[]) =>
    Object.fromEntries(keys.map((key) => [key, (x?.[key] ?? 0) - (y?.[key] ?? 0)])) as Record<K, number>;
  return {
    shift: Object.fromEntries(
      names(a.shift, b.shift).map((name) => [name, sub(a.shift?.[name] ?? NOWHERE, b.shift?.[name] ?? NOWHERE)]),
    ),
    lengthen: from(a.lengthen, b.lengthen, names(a.lengthen, b.lengthen)),
    tilt: (a.tilt ?? 0) - (b.tilt ?? 0),
    spin: from(a.spin, b.spin, ['camber', 'toe']),
    add: from(a.add, b.add, ['camber', 'caster', 'toe']),
  };
}
const NOWHERE: Vec3 = [0, 0, 0];

/** The parameters that an effect on a wheel's corner changes. */
export function changeOf({ slots, lengths, angles, outboard }: Wheel, effect: Effect): Change {
  const at: number[] = [];
  const by: number[] = [];
  const put = (slot: number, change: number): void => {
    if (change === 0) return;
    at.push(slot);
    by.push(change);
  };
  const putPoint = (slot: number, by: Vec3): void => {
    for (let i = 0; i < 3; i++) put(slot + i, by[i]!);
  };
  for (const [name, shift] of Object.entries(effect.shift ?? {})) {
    for (const slot of slots.get(name) ?? []) putPoint(slot, turned(shift, outboard));
  }
  for (const [link, growth] of Object.entries(effect.lengthen ?? {})) put(lengths.get(link)!, growth);
  const { spin, add, tilt } = effect;
  put(angles + TILT, tilt ?? 0);
  put(angles + SPIN_CAMBER, spin?.camber ?? 0);
  put(angles + SPIN_TOE, spin?.toe ?? 0);
  put(angles + ADD_CAMBER, add?.camber ?? 0);
  put(angles + ADD_CASTER, add?.caster ?? 0);
  put(angles + ADD_TOE, add?.toe ?? 0);
  return { at, by };
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
