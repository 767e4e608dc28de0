/**
 * Every combination of positions that a corner's adjusters can take, as angles that the rack would read there.
 *
 * The adjuster with the most numeric positions (a rod, nearly always) is not solved position by position: along it the
 * angles are smooth, so that for each combination of the others a few solves at Chebyshev nodes give them all by
 * interpolation. How far interpolation is off is measured beside it, and the search allows for several times that and
 * settles every candidate by a full solve: interpolation chooses where to look, never what is answered.
 */
import { adjusterKinds } from '../adjuster/catalogue.ts';
import type { Adjuster, Position, Settings, WheelReading } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { CAMBER, CASTER, type CornerModel, TOE } from '../pose/corner.ts';
import { applyChange, type Change } from '../pose/linkage.ts';
import { ANGLES, type Axis, difference, Line, NODES } from './line.ts';

/** How many positions make interpolation worth while. */
const WORTH = 12;
const SAFETY = 8;
const LEAST_SLACK = 1e-9;
const MOST_STATES = 4e6;

export class CornerStates {
  readonly count: number;
  /** Numbers a state: its angles, then the value of each tie. */
  readonly stride: number;
  /** Angles as the rack would read them, degrees, then ties; NaN where no pose exists or a limit forbids it. */
  readonly values: Float64Array;
  /** Minutes of work that a state takes. */
  readonly effort: Float32Array;
  /** Most that an angle here may differ from a full solve, degrees. */
  slack = LEAST_SLACK;

  readonly #axes: readonly Axis[];
  /** measured − model at the present positions. */
  readonly #offset = new Float64Array(ANGLES);
  readonly #exact = new Map<number, Float64Array>();
  readonly #changes: readonly (readonly Change[])[];
  readonly #base: Float64Array;
  readonly #params: Float64Array;

  constructor(
    private readonly model: CornerModel,
    measured: WheelReading,
    private readonly current: Settings,
    movable: readonly Adjuster[],
    ties: readonly Adjuster[],
    field: string,
  ) {
    this.stride = ANGLES + ties.length;
    const now = new Float64Array(ANGLES);
    this.#base = model.parameters(current).slice();
    this.#params = new Float64Array(this.#base.length);
    if (!model.angles(this.#base, now)) {
      throw new InputError(field, current, 'positions at which the links meet: at these an arm cannot reach');
    }
    // An angle that was not measured counts from 0: no window is judged by it, only its change may matter.
    this.#offset[CAMBER] = (measured.camber ?? 0) - (now[CAMBER] as number);
    this.#offset[CASTER] = (measured.caster ?? 0) - (now[CASTER] as number);
    this.#offset[TOE] = (measured.toe ?? 0) - (now[TOE] as number);

    const axes = movable.map((adjuster) => axisOf(adjuster, current));
    const fine = finest(axes);
    // The interpolated adjuster is the innermost, so that its positions lie side by side.
    this.#axes = fine < 0 ? axes : [...axes.filter((_, i) => i !== fine), axes[fine] as Axis];
    this.count = this.#axes.reduce((n, axis) => n * axis.positions.length, 1);
    if (this.count > MOST_STATES) {
      throw new InputError(
        field,
        `${this.count} combinations`,
        `up to ${MOST_STATES} combinations a corner: lock an adjuster or widen its step`,
      );
    }
    this.#changes = this.#axes.map((axis) => {
      const here = model.change(axis.adjuster.id, axis.positions[axis.current] as Position);
      return axis.positions.map((position) => difference(model.change(axis.adjuster.id, position), here));
    });
    this.values = new Float64Array(this.count * this.stride);
    this.effort = new Float32Array(this.count);
    this.#fill(fine >= 0);
    this.#fillEffort();
    ties.forEach((adjuster, k) => {
      this.#fillTie(adjuster, ANGLES + k);
    });
    this.#forbid();
  }

  /** The positions of a state; adjusters that are not moved among them stay where they stand. */
  settings(state: number): Settings {
    const settings: Record<string, Position> = { ...this.current };
    this.#axes.forEach((axis, i) => {
      settings[axis.adjuster.id] = axis.positions[this.#digit(state, i)] as Position;
    });
    return settings;
  }

  /** Angles of a state by a full solve, as the rack would read them. NaN where no pose exists. */
  exact(state: number): Float64Array {
    let known = this.#exact.get(state);
    if (!known) {
      known = this.values.slice(state * this.stride, (state + 1) * this.stride);
      this.#solve(
        this.#axes.map((_, i) => this.#digit(state, i)),
        known,
        0,
      );
      this.#exact.set(state, known);
    }
    return known;
  }

  #digit(state: number, axis: number): number {
    let rest = state;
    for (let i = this.#axes.length - 1; i > axis; i--)
      rest = Math.floor(rest / (this.#axes[i] as Axis).positions.length);
    return rest % (this.#axes[axis] as Axis).positions.length;
  }

  #solve(digits: readonly number[], out: Float64Array, at: number, extra?: Change): void {
    const params = this.#params;
    params.set(this.#base);
    for (let i = 0; i < digits.length; i++) {
      applyChange(params, this.#changes[i]?.[digits[i] as number] as Change);
    }
    if (extra) applyChange(params, extra);
    const angles = this.#scratch;
    const solved = this.model.angles(params, angles);
    for (let k = 0; k < ANGLES; k++) {
      out[at + k] = solved ? (angles[k] as number) + (this.#offset[k] as number) : Number.NaN;
    }
  }
  readonly #scratch = new Float64Array(ANGLES);

  #fill(interpolate: boolean): void {
    const sizes = this.#axes.map((axis) => axis.positions.length);
    const digits = sizes.map(() => 0);
    const outer = interpolate ? sizes.length - 1 : sizes.length;
    const inner = interpolate ? (sizes[outer] as number) : 1;
    const line = interpolate ? new Line(this.#axes[outer] as Axis, this.model) : undefined;
    for (let state = 0; state < this.count; state += inner) {
      if (line) this.#fillLine(line, digits, state);
      else this.#solve(digits, this.values, state * this.stride);
      for (let i = outer - 1; i >= 0; i--) {
        digits[i] = (digits[i] as number) + 1;
        if ((digits[i] as number) < (sizes[i] as number)) break;
        digits[i] = 0;
      }
    }
  }

  /** All positions of the innermost adjuster at one combination of the others. */
  #fillLine(line: Line, digits: readonly number[], state: number): void {
    const outer = digits.slice(0, -1);
    const nodes = line.values;
    for (let n = 0; n < NODES; n++) this.#solve(outer, nodes, n * ANGLES, line.changes[n]);
    const positions = line.weights.length / NODES;
    if (line.hasGap()) {
      for (let p = 0; p < positions; p++) this.#solve([...outer, p], this.values, (state + p) * this.stride);
      return;
    }
    for (let p = 0; p < positions; p++) {
      for (let k = 0; k < ANGLES; k++) {
        let sum = 0;
        for (let n = 0; n < NODES; n++) {
          sum += (line.weights[p * NODES + n] as number) * (nodes[n * ANGLES + k] as number);
        }
        this.values[(state + p) * this.stride + k] = sum;
      }
    }
    this.#measureSlack(outer, state, positions);
  }

  /** Interpolation is worst between the outer nodes: two positions there tell how far it is off. */
  #measureSlack(outer: readonly number[], state: number, positions: number): void {
    for (const share of [0.03, 0.5, 0.97]) {
      const p = Math.round(share * (positions - 1));
      const full = this.#check;
      this.#solve([...outer, p], full, 0);
      for (let k = 0; k < ANGLES; k++) {
        const off = Math.abs((full[k] as number) - (this.values[(state + p) * this.stride + k] as number));
        if (off * SAFETY > this.slack) this.slack = off * SAFETY;
      }
    }
  }
  readonly #check = new Float64Array(ANGLES);

  #fillEffort(): void {
    let block = this.count;
    for (const { positions, current, minutes } of this.#axes) {
      const round = block;
      block /= positions.length;
      this.effort.forEach((_, state) => {
        const place = state % round;
        if (place < current * block || place >= (current + 1) * block) {
          this.effort[state] = (this.effort[state] as number) + minutes;
        }
      });
    }
  }

  /** What the other side must agree with, one number a state. */
  #fillTie(adjuster: Adjuster, place: number): void {
    const value = (position: Position): number =>
      adjusterKinds[adjuster.kind]?.bothSides?.(adjuster, position)?.value ?? 0;
    const axis = this.#axes.findIndex((one) => one.adjuster.id === adjuster.id);
    const fixed = value(this.current[adjuster.id] ?? adjuster.reference);
    const values = this.#axes[axis]?.positions.map(value);
    for (let state = 0; state < this.count; state++) {
      this.values[state * this.stride + place] = values ? (values[this.#digit(state, axis)] as number) : fixed;
    }
  }

  /** Two positions that may not differ by more than so much: what exceeds it is forbidden, unless it is so now. */
  #forbid(): void {
    for (const { adjuster } of this.model.fitted.values()) {
      const pair = adjusterKinds[adjuster.kind]?.pair?.(adjuster);
      if (!pair) continue;
      const [own, other] = [this.#positionOf(adjuster.id), this.#positionOf(pair.with)];
      const gap = (state: number): number => Math.abs((own(state) as number) - (other(state) as number));
      const now = Math.abs((this.current[adjuster.id] as number) - (this.current[pair.with] as number));
      const most = Math.max(pair.most, now) + 1e-9;
      for (let state = 0; state < this.count; state++) {
        if (gap(state) > most) this.values[state * this.stride] = Number.NaN;
      }
    }
  }

  /** Where an adjuster stands in a state, whether or not it is moved. */
  #positionOf(id: string): (state: number) => Position | undefined {
    const axis = this.#axes.findIndex((one) => one.adjuster.id === id);
    const positions = this.#axes[axis]?.positions;
    return positions ? (state) => positions[this.#digit(state, axis)] : () => this.current[id];
  }
}

/** The positions of an adjuster and where it stands among them; a stand between marks is a position of its own. */
function axisOf(adjuster: Adjuster, settings: Settings): Axis {
  const kind = adjusterKinds[adjuster.kind];
  if (!kind) throw new Error(`no adjuster kind ${adjuster.kind}`);
  const stands = settings[adjuster.id] ?? adjuster.reference;
  let positions = kind.positions(adjuster);
  let current = positions.findIndex((position) => samePosition(position, stands));
  if (current < 0) {
    positions = [...positions, stands];
    current = positions.length - 1;
  }
  return { adjuster, positions, current, minutes: adjuster.effort ?? kind.effort };
}

/** Numbers that differ by binary noise are one position; so are a stamped 3 and "3". */
export const samePosition = (a: Position, b: Position): boolean =>
  typeof a === 'number' && typeof b === 'number' ? Math.abs(a - b) < 1e-6 : String(a) === String(b);

function finest(axes: readonly Axis[]): number {
  let best = -1;
  axes.forEach((axis, i) => {
    const numeric =
      axis.positions.every((position) => typeof position === 'number') && typeof axis.adjuster.reference === 'number';
    const size = axis.positions.length;
    if (numeric && size >= WORTH && size > (axes[best]?.positions.length ?? 0)) best = i;
  });
  return best;
}
