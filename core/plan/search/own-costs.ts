/** What each state of an assembly costs by the terms that the assembly decides alone. */
import { EDGE_NOISE } from '../../reading/spec-terms.ts';
import type { IndexedTerm } from '../states/indexed-term.ts';
import type { StateSpace } from '../states/state-space.ts';
import type { Term } from '../terms.ts';

interface OwnCosts {
  /** State by state, at the least that the slack allows; 0 where a term is out. */
  readonly costs: Float64Array;
  /** The states with a pose and every term where it has to be. */
  readonly within: Uint32Array;
}

/** What was worked out before: a plan asks for the same again and again, with other goals beside. */
const known = new WeakMap<StateSpace, { terms: readonly Term[]; inWindow: boolean; costs: OwnCosts }[]>();

/**
 * Not to be changed by who asks.
 * @param inWindow whether every term has to be in its window, or only those that are limits
 */
export function ownCosts(states: StateSpace, terms: readonly IndexedTerm[], inWindow: boolean): OwnCosts {
  const before = known.get(states) ?? [];
  const same = before.find(
    (one) =>
      one.inWindow === inWindow &&
      one.terms.length === terms.length &&
      one.terms.every((term, t) => term === terms[t]!.term),
  );
  if (same) return same.costs;
  const costs = workedOut(states, terms, inWindow);
  known.set(states, [...before, { terms: terms.map(({ term }) => term), inWindow, costs }]);
  return costs;
}

function workedOut(states: StateSpace, terms: readonly IndexedTerm[], inWindow: boolean): OwnCosts {
  const { values, count, stride } = states;
  const { first, at, factor, aim, scale, loose, low, high } = flattened(terms, states.slack, inWindow);
  const costs = new Float64Array(count);
  const within = new Uint32Array(count);
  let found = 0;
  next: for (let state = 0; state < count; state++) {
    if (Number.isNaN(values[state * stride]!)) continue;
    let cost = 0;
    for (let t = 0; t < aim.length; t++) {
      let value = 0;
      for (let p = first[t]!; p < first[t + 1]!; p++) value += values[state * stride + at[p]!]! * factor[p]!;
      if (value < low[t]! || value > high[t]!) continue next;
      const off = Math.max(0, Math.abs(value - aim[t]!) - loose[t]!) * scale[t]!;
      cost += off * off;
    }
    costs[state] = cost;
    within[found++] = state;
  }
  return { costs, within: within.subarray(0, found) };
}

/** Terms as flat lists, without their constants: the loop over them runs over every state that there is. */
function flattened(terms: readonly IndexedTerm[], slack: number, inWindow: boolean) {
  const parts = terms.flatMap((one) => one.parts);
  /** Where each term's parts begin; at last where all end. */
  const first = [0];
  for (const one of terms) first.push(first.at(-1)! + one.parts.length);
  const loose = terms.map((one) => slack * one.parts.reduce((sum, { factor }) => sum + Math.abs(factor), 0));
  const limit = (t: number, end: 'low' | 'high', sign: 1 | -1): number => {
    const { hard, window, constant } = terms[t]!.term;
    if (!inWindow && !hard) return sign * Infinity;
    return window[end] - constant + sign * (loose[t]! + EDGE_NOISE);
  };
  return {
    first,
    at: parts.map(({ at }) => at),
    factor: parts.map(({ factor }) => factor),
    aim: terms.map(({ term }) => term.window.aim - term.constant),
    scale: terms.map(({ term }) => 1 / term.window.half),
    /** How far off interpolation may have each. */
    loose,
    low: terms.map((_, t) => limit(t, 'low', -1)),
    high: terms.map((_, t) => limit(t, 'high', 1)),
  };
}
