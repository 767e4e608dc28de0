/**
 * A close bound for assemblies that pull on one another.
 *
 * A shared term about v costs ((v − aim)/h)². That is its tangent at any v₀ plus ((v − v₀)/h)², and as v is linear in the
 * assemblies' angles the tangent splits over the assemblies and joins what their states cost by themselves: an assembly's least
 * cost then knows what the others want. Any v₀ gives a true bound; the best is where the problem settles when every
 * assembly may mix its states freely. The conditional gradient method goes there: each step asks every assembly for its
 * best state under the present tangents and moves part of the way to it (Frank and Wolfe 1956, from memory).
 */

import { type IndexedTerm, termAt } from '../states/indexed-term.ts';
import { distanceOf, type Term } from '../terms.ts';
import type { StateTree } from './state-tree.ts';

/** A term that ties assemblies together; `meeting` is the v₀ about which it is split. */
export interface SharedTerm extends IndexedTerm {
  meeting: number;
}

const ROUNDS = 12;
const STEPS = 12;
/** Half windows about where the descent ends within which states are mixed: far ones only make the steps zigzag. */
const REACH = 1;
const CLOSE_ENOUGH = 0.02;

/**
 * Finds v₀ of every shared term and gives the sides their tangents.
 * @returns the sum of the tangents' constants
 */
export function relax(sides: readonly StateTree[], shared: readonly SharedTerm[]): number {
  const chosen = descend(sides, shared);
  const among = sides.map((side, s) => side.near(chosen[s]!, REACH));
  const at = chosen.map((state, s) => numbers(sides[s]!, state));
  const own = sides.map((side, s) => side.cost(chosen[s]!));
  for (let step = 0; step < STEPS; step++) {
    for (const one of shared) one.meeting = termAt(one, at);
    const slopes = slopesAt(sides, shared);
    const to = sides.map((side, s) => side.least(slopes[s]!, undefined, among[s]));
    const way = sides.map((side, s) => numbers(side, to[s]!).map((x, k) => x - at[s]![k]!));
    // Along the way the cost is a parabola: its first and second derivative tell how far to go.
    const gain = sides.map((side, s) => side.cost(to[s]!) - own[s]!);
    let first = gain.reduce((sum, x) => sum + x, 0);
    let second = 0;
    for (const one of shared) {
      const change = termAt(one, way, 0);
      first += slope(one.term, one.meeting) * change;
      second += 2 * (change / one.term.window.half) ** 2;
    }
    if (first > -CLOSE_ENOUGH) break;
    const share = second > 0 ? Math.min(1, -first / second) : 1;
    sides.forEach((_, s) => {
      at[s] = at[s]!.map((x, k) => x + share * way[s]![k]!);
      own[s]! += share * gain[s]!;
    });
  }
  for (const one of shared) one.meeting = termAt(one, at);
  const slopes = slopesAt(sides, shared);
  sides.forEach((side, s) => {
    side.tilt(slopes[s]!);
  });
  return shared.reduce(
    (sum, { term, meeting }) => sum + distanceOf(term, meeting) + slope(term, meeting) * (term.constant - meeting),
    0,
  );
}

/** A choice of states that no change of one assembly alone betters. */
export function descend(sides: readonly StateTree[], shared: readonly SharedTerm[]): number[] {
  const chosen = sides.map((side) => side.cheapest);
  for (let round = 0; round < ROUNDS; round++) {
    let changed = false;
    sides.forEach((side, s) => {
      const points = chosen.map((state, i) => numbers(sides[i]!, state));
      points[s]!.fill(0);
      // Σ((rest + factors·v − aim)/half)² of the assembly's own numbers v, multiplied out.
      const { stride } = side.states;
      const linear = new Float64Array(stride);
      const square = new Float64Array(stride * stride);
      for (const one of shared) {
        const { window } = one.term;
        const off = termAt(one, points) - window.aim;
        const own = one.parts.filter(({ assembly }) => assembly === s);
        for (const a of own) {
          const weight = a.factor / window.half ** 2;
          linear[a.at]! += 2 * weight * off;
          for (const b of own) {
            const place = stride * a.at + b.at;
            square[place]! += weight * b.factor;
          }
        }
      }
      const best = side.least(linear, square);
      if (best !== chosen[s]) changed = true;
      chosen[s] = best;
    });
    if (!changed) break;
  }
  return chosen;
}

/** A state's angles and ties. */
function numbers({ states: { values, stride } }: StateTree, state: number): Float64Array {
  return values.slice(state * stride, (state + 1) * stride);
}

const slope = ({ window }: Term, meeting: number): number => (2 * (meeting - window.aim)) / window.half ** 2;

/** What the tangents add to each of an assembly's numbers. */
function slopesAt(sides: readonly StateTree[], shared: readonly SharedTerm[]): Float64Array[] {
  const slopes = sides.map(({ states }) => new Float64Array(states.stride));
  for (const { term, parts, meeting } of shared) {
    for (const { assembly, at, factor } of parts) {
      const own = slopes[assembly] as Float64Array;
      own[at]! += slope(term, meeting) * factor;
    }
  }
  return slopes;
}
