/** A good choice of states, found fast. */
import { type IndexedTerm, termAt } from '../states/indexed-term.ts';
import type { Candidates } from './candidates.ts';

const ROUNDS = 12;

/** A choice of states that no change of one assembly alone betters, going out from what suits each assembly alone. */
export function descend(candidates: readonly Candidates[], shared: readonly IndexedTerm[]): number[] {
  const chosen = candidates.map(({ cheapest }) => cheapest);
  for (let round = 0; round < ROUNDS; round++) {
    let changed = false;
    chosen.forEach((_, a) => {
      const best = bestBeside(chosen, a, candidates, shared);
      if (best !== chosen[a]) changed = true;
      chosen[a] = best;
    });
    if (!changed) break;
  }
  return chosen;
}

/**
 * An assembly's best state while the others have theirs: Σ((rest + factors·v − aim)/half)² of its own numbers v,
 * multiplied out.
 */
function bestBeside(
  chosen: readonly number[],
  assembly: number,
  candidates: readonly Candidates[],
  shared: readonly IndexedTerm[],
): number {
  const rest = chosen.map((state, i) => candidates[i]!.states.near(state));
  rest[assembly]!.fill(0);
  const { stride } = candidates[assembly]!.states;
  const linear = new Float64Array(stride);
  const square = new Float64Array(stride * stride);
  for (const one of shared) {
    const { window } = one.term;
    const off = termAt(one, rest) - window.aim;
    const own = one.parts.filter((part) => part.assembly === assembly);
    for (const a of own) {
      const weight = a.factor / window.half ** 2;
      linear[a.at]! += 2 * weight * off;
      for (const b of own) square[stride * a.at + b.at]! += weight * b.factor;
    }
  }
  return candidates[assembly]!.least(linear, square);
}
