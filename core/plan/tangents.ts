/**
 * A close bound for corners that pull on one another.
 *
 * A shared term about v costs ((v − aim)/h)². That is its tangent at any v₀ plus ((v − v₀)/h)², and as v is linear in the
 * corners' angles the tangent splits over the corners and joins what their states cost by themselves: a corner's least
 * cost then knows what the others want. Any v₀ gives a true bound; the best is where the problem settles when every
 * corner may mix its states freely. The conditional gradient method goes there: each step asks every corner for its
 * best state under the present tangents and moves part of the way to it (Frank and Wolfe 1956, from memory).
 */
import type { Corner } from '../contract.ts';
import type { Side } from './boxes.ts';
import { distanceOf, type Term } from './terms.ts';

/** A term that ties corners together; `meeting` is the v₀ about which it is split. */
export interface Shared {
  readonly term: Term;
  readonly parts: readonly { readonly side: number; readonly angle: number; readonly factor: number }[];
  meeting: number;
}

export function sharedTerm(term: Term, corners: readonly Corner[]): Shared {
  return {
    term,
    parts: term.parts.map(({ corner, angle, factor }) => ({ side: corners.indexOf(corner), angle, factor })),
    meeting: term.window.aim,
  };
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
export function takeTangents(sides: readonly Side[], shared: readonly Shared[]): number {
  const chosen = descend(sides, shared);
  const among = sides.map((side, s) => side.near(chosen[s] as number, REACH));
  const at = chosen.map((state, s) => numbers(sides[s] as Side, state));
  const own = sides.map((side, s) => side.cost(chosen[s] as number));
  for (let step = 0; step < STEPS; step++) {
    for (const one of shared) one.meeting = value(one, at);
    const slopes = slopesAt(sides, shared);
    const to = sides.map((side, s) => {
      const slope = slopes[s] as Float64Array;
      return side.least((values, i) => {
        let cost = 0;
        for (let k = 0; k < slope.length; k++) cost += (slope[k] as number) * (values[i + k] as number);
        return cost;
      }, among[s]);
    });
    const way = sides.map((side, s) => numbers(side, to[s] as number).map((x, k) => x - (at[s]?.[k] as number)));
    // Along the way the cost is a parabola: its first and second derivative tell how far to go.
    const gain = sides.map((side, s) => side.cost(to[s] as number) - (own[s] as number));
    let first = gain.reduce((sum, x) => sum + x, 0);
    let second = 0;
    for (const one of shared) {
      const change = value(one, way, 0);
      first += slope(one.term, one.meeting) * change;
      second += 2 * (change / one.term.window.half) ** 2;
    }
    if (first > -CLOSE_ENOUGH) break;
    const share = second > 0 ? Math.min(1, -first / second) : 1;
    sides.forEach((_, s) => {
      at[s] = (at[s] as Float64Array).map((x, k) => x + share * (way[s]?.[k] as number));
      own[s] = (own[s] as number) + share * (gain[s] as number);
    });
  }
  for (const one of shared) one.meeting = value(one, at);
  const slopes = slopesAt(sides, shared);
  sides.forEach((side, s) => {
    side.tilt(slopes[s] as Float64Array);
  });
  return shared.reduce(
    (sum, { term, meeting }) => sum + distanceOf(term, meeting) + slope(term, meeting) * (term.constant - meeting),
    0,
  );
}

/** A choice of states that no change of one corner alone betters. */
function descend(sides: readonly Side[], shared: readonly Shared[]): number[] {
  const chosen = sides.map((side) => side.least(() => 0));
  for (let round = 0; round < ROUNDS; round++) {
    let changed = false;
    sides.forEach((side, s) => {
      const points = chosen.map((state, i) => numbers(sides[i] as Side, state));
      (points[s] as Float64Array).fill(0);
      const tied = shared.filter(({ parts }) => parts.some((part) => part.side === s));
      const rest = tied.map((one) => value(one, points) - one.term.window.aim);
      const part = tied.map(({ parts }) => parts.find(({ side: i }) => i === s) as Shared['parts'][number]);
      const best = side.least((values, at) => {
        let cost = 0;
        for (let t = 0; t < tied.length; t++) {
          const { angle, factor } = part[t] as Shared['parts'][number];
          const off =
            ((rest[t] as number) + factor * (values[at + angle] as number)) / (tied[t] as Shared).term.window.half;
          cost += off * off;
        }
        return cost;
      });
      if (best !== chosen[s]) changed = true;
      chosen[s] = best;
    });
    if (!changed) break;
  }
  return chosen;
}

/** A state's angles and ties. */
function numbers({ states: { values, stride } }: Side, state: number): Float64Array {
  return values.slice(state * stride, (state + 1) * stride);
}

/** What a shared term is where the corners' numbers are these. */
function value({ term, parts }: Shared, points: readonly Float64Array[], constant = term.constant): number {
  return parts.reduce((sum, { side, angle, factor }) => sum + factor * (points[side]?.[angle] as number), constant);
}

const slope = ({ window }: Term, meeting: number): number => (2 * (meeting - window.aim)) / window.half ** 2;

/** What the tangents add to each of a corner's numbers. */
function slopesAt(sides: readonly Side[], shared: readonly Shared[]): Float64Array[] {
  const slopes = sides.map(({ states }) => new Float64Array(states.stride));
  for (const { term, parts, meeting } of shared) {
    for (const { side, angle, factor } of parts) {
      const own = slopes[side] as Float64Array;
      own[angle] = (own[angle] as number) + slope(term, meeting) * factor;
    }
  }
  return slopes;
}
