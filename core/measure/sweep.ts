/**
 * Caster and SAI from a steering sweep. The steering axis k ∝ (−tan τ, −tan σ, 1) stays put while the wheel turns about
 * it, so a line that is fixed in the wheel keeps its angle to k. For the spin axis that is: sin γ + cos γ (tan σ cos δ −
 * tan τ sin δ) is constant; for a line across it that the held brake keeps: sin ρ cos γ − tan τ (cos ρ cos δ − sin ρ sin γ
 * sin δ) − tan σ (cos ρ sin δ + sin ρ sin γ cos δ) is (γ camber as a gauge reads it, δ turntable angle, + out, ρ roll about
 * the spin axis). Between two places of the wheel each gives one equation, linear in the two tangents. Exact, also at large
 * camber and at two angles that are not alike.
 */
import { cos, degrees, type Radians, radians, sin } from '../geometry/angle.ts';
import { InputError } from '../input-error.ts';
import { USUAL_SCATTER } from './instruments.ts';
import { type Measured, spreadOf } from './spread.ts';
import { given, within } from './within.ts';

export interface CasterSweep {
  /** Camber with the wheel turned out by `steer`, degrees. */
  readonly camberOut: number;
  /** Camber with it turned in by `steer`, degrees. */
  readonly camberIn: number;
  /** Turntable angle each way, degrees. */
  readonly steer: number;
  /** SAI if known, degrees: left out (taken as 0) it costs less than 0.01° of caster on a car. */
  readonly sai?: number;
}

/**
 * Caster, degrees, + top to the rear, by the exact rule for a fixed axis at the head of this file.
 * @throws InputError naming the field that is not within its limits.
 */
export function casterFromSweep(sweep: CasterSweep): number {
  const { camberOut, camberIn, steer, sai = 0 } = given('sweep', sweep);
  const [out, inn] = [
    within('camberOut', camberOut, -30, 30, 'degrees'),
    within('camberIn', camberIn, -30, 30, 'degrees'),
  ];
  const turn = steerAngle(steer);
  return casterGiven(at(turn, out), at(-turn, inn), within('sai', sai, -45, 45, 'degrees'));
}

export interface SaiSweep {
  /** Wheel's roll about its spin axis, brake held, turned out by `steer`: + when the front of the wheel rises; degrees. */
  readonly rollOut: number;
  /** The same turned in. */
  readonly rollIn: number;
  readonly steer: number;
  /** Cambers at the two ends and caster, degrees: with all three the result is exact, else they count as 0. */
  readonly camberOut?: number;
  readonly camberIn?: number;
  readonly caster?: number;
}

/**
 * SAI, degrees, by the same rule for the wheel's forward line. Without camber and caster it reduces to
 * (sin ρ_out − sin ρ_in)/(sin δ (cos ρ_out + cos ρ_in)), which is Δroll/(2 sin δ) for small angles.
 * @throws InputError naming the field that is not within its limits.
 */
export function saiFromSweep(sweep: SaiSweep): number {
  const { rollOut, rollIn, steer, camberOut = 0, camberIn = 0, caster = 0 } = given('sweep', sweep);
  const [ro, ri] = [within('rollOut', rollOut, -45, 45, 'degrees'), within('rollIn', rollIn, -45, 45, 'degrees')];
  const [go, gi] = [
    within('camberOut', camberOut, -30, 30, 'degrees'),
    within('camberIn', camberIn, -30, 30, 'degrees'),
  ];
  const turn = steerAngle(steer);
  const held = within('caster', caster, -45, 45, 'degrees');
  const { a, b, c } = ofForwardLine(at(turn, go, ro), at(-turn, gi, ri));
  return arctan((c - a * tan(radians(held))) / b);
}

/** The wheel at one end of a sweep, degrees. */
export interface SweepEnd {
  /** By how much it is turned, as the turntable shows; + out, − in. */
  readonly turned: number;
  readonly camber: number;
  /** About its spin axis, brake held, from wherever the gauge was zeroed; + when the front of the wheel rises. */
  readonly roll?: number;
}

/** One standard deviation of what was read, degrees. */
export interface SweepScatter {
  readonly camber: number;
  readonly turned: number;
  /** Of the roll. */
  readonly roll: number;
}

const { level, plate } = USUAL_SCATTER;
const USUAL_SWEEP: SweepScatter = { camber: level, turned: plate, roll: level };

/** The steering axis that a sweep shows, degrees. */
export interface SweptAxis {
  readonly caster: Measured;
  /** Only where roll was read at both ends. */
  readonly sai?: Measured;
  /** The difference of camber times a number, as it is done by hand, and by how much that is off. */
  readonly workshop: { readonly factor: number; readonly caster: number; readonly error: number };
}

/** SAI of a car where nobody knows it, degrees: between equal angles it hardly counts. Trade practice, no source. */
export const USUAL_SAI: Measured = { value: 12, sd: 4 };
/** Degrees that the two ends have to be apart. */
const LEAST_SWEEP = 10;

/**
 * Caster, and SAI where roll was read, from the wheel at any two angles of the steering, equal or not, by the exact rules at
 * the head of this file. `workshop`: the same difference of camber times 1/(sin δ₁ − sin δ₂), rounded to a half as the trade
 * has it (3 at ±10°, 2 at ±15°, 1.5 at ±20°); SAI and the size of the cambers are left out of it.
 * @param known SAI where it is known and no roll was read
 * @throws InputError naming the field: `first.camber`, `turned` where the two angles are not 10° apart
 */
export function axisFromSweep(
  first: SweepEnd,
  second: SweepEnd,
  scatter: SweepScatter = USUAL_SWEEP,
  known: Measured = USUAL_SAI,
): SweptAxis {
  const ends = { first, second };
  for (const [name, end] of Object.entries(ends)) {
    given(name, end);
    within(`${name}.turned`, end.turned, -60, 60, 'degrees');
    within(`${name}.camber`, end.camber, -30, 30, 'degrees');
    within(`${name}.roll`, end.roll ?? 0, -60, 60, 'degrees');
  }
  within('sai', known.value, -45, 45, 'degrees');
  const apart = Math.abs(first.turned - second.turned);
  if (!(apart >= LEAST_SWEEP)) throw new InputError('turned', apart, { is: 'apart', least: LEAST_SWEEP });
  const read = {
    turned1: { value: first.turned, sd: scatter.turned },
    camber1: { value: first.camber, sd: scatter.camber },
    turned2: { value: second.turned, sd: scatter.turned },
    camber2: { value: second.camber, sd: scatter.camber },
  };
  const workshop = byHand(first, second);
  const off = (caster: Measured) => ({ ...workshop, error: workshop.caster - caster.value });
  if (first.roll === undefined || second.roll === undefined) {
    const { caster } = spreadOf({ ...read, sai: known }, ({ turned1, camber1, turned2, camber2, sai }) => ({
      caster: casterGiven(at(turned1, camber1), at(turned2, camber2), sai),
    }));
    return { caster, workshop: off(caster) };
  }
  const rolls = { roll1: { value: first.roll, sd: scatter.roll }, roll2: { value: second.roll, sd: scatter.roll } };
  const axis = spreadOf({ ...read, ...rolls }, ({ turned1, camber1, roll1, turned2, camber2, roll2 }) =>
    both(at(turned1, camber1, roll1), at(turned2, camber2, roll2)),
  );
  return { ...axis, workshop: off(axis.caster) };
}

function byHand(first: SweepEnd, second: SweepEnd) {
  const exactly = 1 / (sin(radians(first.turned)) - sin(radians(second.turned)));
  const factor = Math.round(exactly * 2) / 2 || exactly;
  return { factor, caster: (first.camber - second.camber) * factor };
}

interface Place {
  readonly turn: Radians;
  readonly camber: Radians;
  readonly roll: Radians;
}
const at = (turn: number, camber: number, roll = 0): Place => ({
  turn: radians(turn),
  camber: radians(camber),
  roll: radians(roll),
});

/** a·tan τ + b·tan σ = c */
interface Line {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

function ofSpinAxis(one: Place, other: Place): Line {
  const part = (of: (place: Place) => number): number => of(one) - of(other);
  return {
    a: part(({ turn, camber }) => cos(camber) * sin(turn)),
    b: -part(({ turn, camber }) => cos(camber) * cos(turn)),
    c: part(({ camber }) => sin(camber)),
  };
}

function ofForwardLine(one: Place, other: Place): Line {
  const part = (of: (place: Place) => number): number => of(one) - of(other);
  return {
    a: part(({ turn, camber, roll }) => cos(roll) * cos(turn) - sin(roll) * sin(camber) * sin(turn)),
    b: part(({ turn, camber, roll }) => cos(roll) * sin(turn) + sin(roll) * sin(camber) * cos(turn)),
    c: part(({ camber, roll }) => sin(roll) * cos(camber)),
  };
}

/** @param sai degrees */
function casterGiven(one: Place, other: Place, sai: number): number {
  const { a, b, c } = ofSpinAxis(one, other);
  return arctan((c - b * tan(radians(sai))) / a);
}

function both(one: Place, other: Place): { caster: number; sai: number } {
  const [p, q] = [ofSpinAxis(one, other), ofForwardLine(one, other)];
  const size = p.a * q.b - q.a * p.b;
  return { caster: arctan((p.c * q.b - q.c * p.b) / size), sai: arctan((p.a * q.c - q.a * p.c) / size) };
}

const tan = (a: Radians): number => sin(a) / cos(a);
const arctan = (ratio: number): number => degrees(Math.atan(ratio) as Radians);

function steerAngle(steer: number): number {
  const [low, high] = [5, 45];
  if (!(typeof steer === 'number' && steer >= low && steer <= high))
    throw new InputError('steer', steer, { is: 'steer', low, high });
  return steer;
}
