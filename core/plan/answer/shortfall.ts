/** What is left out of its window, and why. */
import { adjustersOf } from '../../adjuster/of-corner.ts';
import type { Adjuster, AdjusterRef, AxleName, Car, Corner, Position, Shortfall } from '../../contract.ts';
import { cornersOf } from '../../corners.ts';
import { outside } from '../../reading/spec-terms.ts';
import { type Evaluation, kindOfAdjuster, type Positions, type Problem } from '../problem.ts';
import { positionsOf, samePosition } from '../states/axis.ts';

export function shortfallOf({ request, terms }: Problem, { values }: Evaluation, positions: Positions): Shortfall[] {
  return terms.flatMap((term) => {
    const predicted = values.get(term)!;
    const by = outside(predicted, term.window);
    // What nobody typed falls short of nothing: a note tells of it.
    if (by === 0 || term.window.assumed) return [];
    return [
      { where: term.where, angle: term.angle, predicted, by, atStop: atStopAt(request.car, term.where, positions) },
    ];
  });
}

/** Adjusters of a wheel's or an axle's corners that stand at the end of their travel. */
export const atStopAt = (car: Car, where: Corner | AxleName, positions: Positions): AdjusterRef[] =>
  cornersOf(where).flatMap((corner) =>
    adjustersOf(car, corner)
      .filter((adjuster) => isAtStop(adjuster, positions[corner][adjuster.id]!))
      .map(({ id }) => ({ corner, adjuster: id })),
  );

/** Numbers end at both ends of their range; a numbered cam goes round and has no stop. */
export function isAtStop(adjuster: Adjuster, position: Position): boolean {
  if (typeof position !== 'number') return false;
  const all = positionsOf(kindOfAdjuster(adjuster), adjuster);
  return samePosition(position, all[0]!) || samePosition(position, all.at(-1)!);
}
