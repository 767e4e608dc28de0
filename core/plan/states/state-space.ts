/**
 * Every combination of positions that an assembly's adjusters can take, as angles that the rack would read there. An assembly is
 * one corner, or both corners of a rigid axle, which move together.
 *
 * The adjuster with the most numeric positions (a rod, nearly always) is not solved position by position: along it the
 * angles are smooth, so that for each combination of the others a few solves at Chebyshev nodes give them all by
 * interpolation. How far interpolation is off is measured beside it, and the search allows for several times that and
 * settles every candidate by a full solve: interpolation chooses where to look, never what is answered.
 */
import { adjusterKinds } from '../../adjuster/catalogue.ts';
import type { Adjuster, Corner, Position, Settings, WheelReading } from '../../contract.ts';
import { InputError } from '../../input-error.ts';
import type { Assembly } from '../../pose/car-model.ts';
import { applyChange, type Change } from '../../pose/change.ts';
import { ANGLES_A_WHEEL, CAMBER, CASTER, TOE } from '../../pose/mechanism.ts';
import { type Axis, axisOf, finest } from './axis.ts';
import { changeBetween, Interpolation, NODES } from './interpolation.ts';

const SAFETY = 8;
const LEAST_SLACK = 1e-9;
/** Of one corner; an assembly of two has half as many. */
const MOST_STATES = 4e6;

/** One corner of an assembly: what was read, where its adjusters stand, which of them may be moved, which tie it. */
export interface CornerStand {
  readonly measured: WheelReading;
  readonly current: Settings;
  readonly movable: readonly Adjuster[];
  readonly ties: readonly Adjuster[];
  /** Positions, by adjuster, that are to be tried instead of its own. */
  readonly instead?: Instead;
  /** Whether there are the parts for a position; absent: for all. Where it stands it may always stay. */
  readonly allows?: (adjuster: Adjuster, position: Position) => boolean;
}
export type Instead = ReadonlyMap<string, readonly Position[]>;

export class StateSpace {
  readonly corners: readonly Corner[];
  readonly count: number;
  /** Numbers a state: its angles, corner by corner, then the value of each tie, corner by corner. */
  readonly stride: number;
  /** Angles as the rack would read them, degrees, then ties; NaN where no pose exists or a limit forbids it. */
  readonly values: Float64Array;
  /** Minutes of work that a state takes. */
  readonly effort: Float32Array;
  /** Most that an angle here may differ from a full solve, degrees. */
  slack = LEAST_SLACK;

  /** The adjusters that are moved, the last one varying first. */
  readonly axes: readonly Axis[];
  readonly #angles: number;
  /** measured − model at the present positions. */
  readonly #offset: Float64Array;
  readonly #exact = new Map<number, Float64Array>();
  readonly #changes: readonly (readonly Change[])[];
  readonly #base: Float64Array;
  readonly #params: Float64Array;

  /** @param stands one for each corner of the assembly */
  constructor(
    private readonly assembly: Assembly,
    private readonly stands: readonly CornerStand[],
  ) {
    const { corners, model } = assembly;
    this.corners = corners;
    this.#angles = ANGLES_A_WHEEL * corners.length;
    this.stride = stands.reduce((sum, { ties }) => sum + ties.length, this.#angles);
    const now = new Float64Array(this.#angles);
    this.#base = model.parameters(stands.map(({ current }) => current));
    this.#params = new Float64Array(this.#base.length);
    this.#scratch = new Float64Array(this.#angles);
    this.#check = new Float64Array(this.#angles);
    const field = `settings.${corners[0]}`;
    if (!model.angles(this.#base, now)) {
      throw new InputError(field, stands[0]?.current, { is: 'can-reach' });
    }
    // An angle that was not measured counts from 0: no window is judged by it, only its change may matter.
    this.#offset = now.map((angle) => -angle);
    stands.forEach(({ measured }, side) => {
      for (const [place, angle] of [
        [CAMBER, measured.camber],
        [CASTER, measured.caster],
        [TOE, measured.toe],
      ] as const) {
        const at = ANGLES_A_WHEEL * side + place;
        this.#offset[at] = (angle ?? 0) - now[at]!;
      }
    });

    const axes = stands.flatMap(({ movable, current, instead, allows }, side) =>
      movable.map((adjuster) => axisOf(side, adjuster, current, { among: instead?.get(adjuster.id), allows })),
    );
    const fine = finest(axes);
    // The interpolated adjuster is the innermost, so that its positions lie side by side.
    this.axes = fine < 0 ? axes : [...axes.filter((_, i) => i !== fine), axes[fine]!];
    this.count = this.axes.reduce((n, axis) => n * axis.positions.length, 1);
    const most = MOST_STATES / corners.length;
    if (this.count > most) {
      const of = corners.length > 1 ? 'axle' : 'corner';
      throw new InputError(field, this.count, { is: 'combinations', most, of });
    }
    this.#changes = this.axes.map((axis) => {
      const here = model.change(axis.side, axis.adjuster.id, axis.positions[axis.current]!);
      return axis.positions.map((position) => changeBetween(model.change(axis.side, axis.adjuster.id, position), here));
    });
    this.values = new Float64Array(this.count * this.stride);
    this.effort = new Float32Array(this.count);
    this.#fill(fine >= 0);
    this.#fillEffort();
    stands.forEach(({ ties }, side) => {
      ties.forEach((adjuster, k) => {
        this.#fillTie(side, adjuster, this.placeOf(corners[side]!, ANGLES_A_WHEEL + k));
      });
      this.#forbid(side);
    });
  }

  /** Where an angle of a corner (CAMBER, CASTER or TOE; from ANGLES on its ties) stands among a state's numbers. */
  placeOf(corner: Corner, angle: number): number {
    const side = this.corners.indexOf(corner);
    if (angle < ANGLES_A_WHEEL) return ANGLES_A_WHEEL * side + angle;
    const before = this.stands.slice(0, side).reduce((sum, { ties }) => sum + ties.length, this.#angles);
    return before + angle - ANGLES_A_WHEEL;
  }

  /** The positions of a state, corner by corner; adjusters that are not moved among them stay where they stand. */
  settings(state: number): Settings[] {
    const settings = this.stands.map(({ current }): Record<string, Position> => ({ ...current }));
    this.axes.forEach(({ side, adjuster, positions }, i) => {
      settings[side]![adjuster.id] = positions[this.digit(state, i)]!;
    });
    return settings;
  }

  /** Where some of the axes stand in each state, as one number: the last of them varying first. */
  partOf(axes: readonly number[]): Uint32Array {
    const part = new Uint32Array(this.count);
    for (const axis of axes) {
      const { length } = this.axes[axis]!.positions;
      for (let state = 0; state < this.count; state++) {
        part[state] = part[state]! * length + this.digit(state, axis);
      }
    }
    return part;
  }

  /** Angles of a state by a full solve, as the rack would read them. NaN where no pose exists. */
  exact(state: number): Float64Array {
    let known = this.#exact.get(state);
    if (!known) {
      known = this.values.slice(state * this.stride, (state + 1) * this.stride);
      this.#solve(
        this.axes.map((_, i) => this.digit(state, i)),
        known,
        0,
      );
      this.#exact.set(state, known);
    }
    return known;
  }

  /** Which of its axis's positions an axis has in a state. */
  digit(state: number, axis: number): number {
    let rest = state;
    for (let i = this.axes.length - 1; i > axis; i--) rest = Math.floor(rest / this.axes[i]!.positions.length);
    return rest % this.axes[axis]!.positions.length;
  }

  #solve(digits: readonly number[], out: Float64Array, at: number, extra?: Change): void {
    const params = this.#params;
    params.set(this.#base);
    for (let i = 0; i < digits.length; i++) {
      applyChange(params, this.#changes[i]![digits[i]!]!);
    }
    if (extra) applyChange(params, extra);
    const angles = this.#scratch;
    const solved = this.assembly.model.angles(params, angles);
    for (let k = 0; k < angles.length; k++) {
      out[at + k] = solved ? angles[k]! + this.#offset[k]! : Number.NaN;
    }
  }
  readonly #scratch: Float64Array;

  #fill(interpolate: boolean): void {
    const sizes = this.axes.map((axis) => axis.positions.length);
    const digits = sizes.map(() => 0);
    const outer = interpolate ? sizes.length - 1 : sizes.length;
    const inner = interpolate ? sizes[outer]! : 1;
    const line = interpolate ? new Interpolation(this.axes[outer]!, this.assembly.model, this.#angles) : undefined;
    for (let state = 0; state < this.count; state += inner) {
      if (line) this.#fillLine(line, digits, state);
      else this.#solve(digits, this.values, state * this.stride);
      for (let i = outer - 1; i >= 0; i--) {
        digits[i]! += 1;
        if (digits[i]! < sizes[i]!) break;
        digits[i] = 0;
      }
    }
  }

  /** All positions of the innermost adjuster at one combination of the others. */
  #fillLine(line: Interpolation, digits: readonly number[], state: number): void {
    const outer = digits.slice(0, -1);
    const nodes = line.values;
    const angles = this.#angles;
    for (let n = 0; n < NODES; n++) this.#solve(outer, nodes, n * angles, line.changes[n]);
    const positions = line.weights.length / NODES;
    if (!line.hasGap()) {
      const { values, stride } = this;
      const { weights } = line;
      for (let p = 0; p < positions; p++) {
        for (let k = 0; k < angles; k++) {
          let sum = 0;
          for (let n = 0; n < NODES; n++) sum += weights[p * NODES + n]! * nodes[n * angles + k]!;
          values[(state + p) * stride + k] = sum;
        }
      }
      if (this.#measureSlack(outer, state, line.probes)) return;
    }
    for (let p = 0; p < positions; p++) this.#solve([...outer, p], this.values, (state + p) * this.stride);
  }

  /** False where a probe has no pose: then the line ends there and nothing on it is to be interpolated. */
  #measureSlack(outer: readonly number[], state: number, probes: readonly number[]): boolean {
    const full = this.#check;
    for (const p of probes) {
      this.#solve([...outer, p], full, 0);
      for (let k = 0; k < full.length; k++) {
        const off = Math.abs(full[k]! - this.values[(state + p) * this.stride + k]!);
        if (Number.isNaN(off)) return false;
        if (off * SAFETY > this.slack) this.slack = off * SAFETY;
      }
    }
    return true;
  }
  readonly #check: Float64Array;

  #fillEffort(): void {
    let block = this.count;
    for (const { positions, current, minutes } of this.axes) {
      const round = block;
      block /= positions.length;
      for (let state = 0; state < this.count; state++) {
        const place = state % round;
        if (place >= current * block && place < (current + 1) * block) continue;
        this.effort[state]! += minutes;
      }
    }
  }

  /** What the other side must agree with, one number a state. */
  #fillTie(side: number, adjuster: Adjuster, place: number): void {
    const value = (position: Position): number =>
      adjusterKinds[adjuster.kind]?.bothSides?.(adjuster, position)?.value ?? 0;
    const axis = this.#axisOf(side, adjuster.id);
    const fixed = value(this.stands[side]?.current[adjuster.id] ?? adjuster.reference);
    const values = this.axes[axis]?.positions.map(value);
    for (let state = 0; state < this.count; state++) {
      this.values[state * this.stride + place] = values ? values[this.digit(state, axis)]! : fixed;
    }
  }

  /** Two positions that may not differ by more than so much: what exceeds it is forbidden, unless it is so now. */
  #forbid(side: number): void {
    const { current } = this.stands[side]!;
    for (const { adjuster } of this.assembly.model.fitted[side]?.values() ?? []) {
      const pair = adjusterKinds[adjuster.kind]?.pair?.(adjuster);
      if (!pair) continue;
      const [own, other] = [this.#positionOf(side, adjuster.id), this.#positionOf(side, pair.with)];
      const gap = (state: number): number => Math.abs((own(state) as number) - (other(state) as number));
      const now = Math.abs((current[adjuster.id] as number) - (current[pair.with] as number));
      const most = Math.max(pair.most, now) + 1e-9;
      for (let state = 0; state < this.count; state++) {
        if (gap(state) > most) this.values[state * this.stride] = Number.NaN;
      }
    }
  }

  /** Where an adjuster stands in a state, whether or not it is moved. */
  #positionOf(side: number, id: string): (state: number) => Position | undefined {
    const axis = this.#axisOf(side, id);
    const positions = this.axes[axis]?.positions;
    return positions ? (state) => positions[this.digit(state, axis)] : () => this.stands[side]?.current[id];
  }

  #axisOf(side: number, id: string): number {
    return this.axes.findIndex((one) => one.side === side && one.adjuster.id === id);
  }
}
