/**
 * Where to split the shared terms so that the bound is close: where the problem settles when every assembly may mix its
 * states freely. The conditional gradient method goes there: each step asks every assembly for its best state under the
 * present tangents and moves part of the way to it (Frank and Wolfe 1956, from memory).
 */
import { type IndexedTerm, termAt } from '../states/indexed-term.ts';
import type { Candidates } from './candidates.ts';
import { descend } from './descent.ts';
import { slopeAt, type Tangents, tangentsAt } from './tangents.ts';

const STEPS = 12;
/** Half windows about where the descent ends within which states are mixed: far ones only make the steps zigzag. */
const REACH = 1;
const CLOSE_ENOUGH = 0.02;

/** The tangents that bound best. */
export function relax(candidates: readonly Candidates[], shared: readonly IndexedTerm[]): Tangents {
  const chosen = descend(candidates, shared);
  const among = candidates.map((own, a) => own.near(chosen[a]!, REACH));
  const at = chosen.map((state, a) => candidates[a]!.states.near(state));
  const costs = chosen.map((state, a) => candidates[a]!.costs[state]!);
  for (let step = 0; step < STEPS; step++) {
    const { meetings, slopes } = tangentsOf(at);
    const to = candidates.map((own, a) => own.least(slopes[a]!, undefined, among[a]));
    const way = candidates.map((own, a) => own.states.near(to[a]!).map((x, k) => x - at[a]![k]!));
    const gains = candidates.map((own, a) => own.costs[to[a]!]! - costs[a]!);
    const share = shareOf(way, gains, meetings, shared);
    if (share === 0) break;
    candidates.forEach((_, a) => {
      at[a] = at[a]!.map((x, k) => x + share * way[a]![k]!);
      costs[a]! += share * gains[a]!;
    });
  }
  return tangentsOf(at);

  function tangentsOf(numbers: readonly Float64Array[]): Tangents {
    return tangentsAt(
      shared.map((one) => termAt(one, numbers)),
      shared,
      candidates,
    );
  }
}

/**
 * How much of the way to go: along it the cost is a parabola, of which the first and second derivative tell. 0 where no
 * more than a little is to be gained.
 * @param gains what each assembly's states cost more at the end of the way
 */
function shareOf(
  way: readonly Float64Array[],
  gains: readonly number[],
  meetings: readonly number[],
  shared: readonly IndexedTerm[],
): number {
  let first = gains.reduce((sum, x) => sum + x, 0);
  let second = 0;
  shared.forEach((one, t) => {
    const change = termAt(one, way, 0);
    first += slopeAt(one.term, meetings[t]!) * change;
    second += 2 * (change / one.term.window.half) ** 2;
  });
  if (first > -CLOSE_ENOUGH) return 0;
  return second > 0 ? Math.min(1, -first / second) : 1;
}
