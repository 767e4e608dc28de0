/** Limits of the parts themselves: what ties the two sides of an axle, and what a corner's own adjusters must not do. */
import { adjusterKinds } from '../../adjuster/catalogue.ts';
import type { Adjuster, Position, Settings } from '../../contract.ts';
import type { Fitted } from '../../pose/mechanism.ts';
import type { Combinations } from './combinations.ts';

/** Combinations with their numbers, `stride` each. */
interface Numbered extends Combinations {
  readonly values: Float64Array;
  readonly stride: number;
}

/** Writes what the other side must agree with, one number a state. */
export function writeTie(states: Numbered, side: number, adjuster: Adjuster, current: Settings, at: number): void {
  const value = (position: Position): number =>
    adjusterKinds[adjuster.kind]?.bothSides?.(adjuster, position)?.value ?? 0;
  const axis = axisOf(states, side, adjuster.id);
  const fixed = value(current[adjuster.id] ?? adjuster.reference);
  const moved = states.axes[axis]?.positions.map(value);
  for (let state = 0; state < states.count; state++) {
    states.values[state * states.stride + at] = moved ? moved[states.digit(state, axis)]! : fixed;
  }
}

/** Two positions that may not differ by more than so much: what exceeds it is forbidden, unless it is so now. */
export function forbid(states: Numbered, side: number, fitted: Iterable<Fitted>, current: Settings): void {
  for (const { adjuster } of fitted) {
    const pair = adjusterKinds[adjuster.kind]?.pair?.(adjuster);
    if (!pair) continue;
    const own = positionOf(states, side, adjuster.id, current);
    const other = positionOf(states, side, pair.with, current);
    const gap = (state: number): number => Math.abs((own(state) as number) - (other(state) as number));
    const now = Math.abs((current[adjuster.id] as number) - (current[pair.with] as number));
    const most = Math.max(pair.most, now) + 1e-9;
    for (let state = 0; state < states.count; state++) {
      if (gap(state) > most) states.values[state * states.stride] = Number.NaN;
    }
  }
}

/** Where an adjuster stands in a state, whether or not it is moved. */
function positionOf(states: Numbered, side: number, id: string, current: Settings): (state: number) => Position {
  const axis = axisOf(states, side, id);
  const positions = states.axes[axis]?.positions;
  return positions ? (state) => positions[states.digit(state, axis)]! : () => current[id]!;
}

const axisOf = ({ axes }: Combinations, side: number, id: string): number =>
  axes.findIndex((one) => one.side === side && one.adjuster.id === id);
