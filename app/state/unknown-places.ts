/** Adjusters of which nobody knows where they stand, and which cannot be planned from just anywhere: cams, sleeves, wedges. */
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import { adjustersOf } from '../../core/adjuster/of-corner.ts';
import { type AdjusterRef, CORNERS } from '../../core/contract.ts';
import { standingKey, UNKNOWN } from './standing.ts';
import { type RoundView, sameRef, type VisitView } from './visits.ts';

/** As of a round: what was last said of each adjuster's place up to then, or where it was set since. */
export function unknownPlaces({ car, rounds }: VisitView, last: RoundView): readonly AdjusterRef[] {
  const place = rounds.findIndex(({ record }) => record.id === last.record.id);
  const past = [...(place < 0 ? rounds : rounds.slice(0, place)), last];
  const isUnknown = (ref: AdjusterRef): boolean =>
    past.reduce((unknown, { record, moves }) => {
      const said = record.typed[standingKey(ref.corner, ref.adjuster)];
      const begins = said === undefined ? unknown : said === UNKNOWN;
      return begins && !moves.some((move) => sameRef(move, ref) && move.outcome === 'set-to');
    }, false);
  return CORNERS.flatMap((corner) =>
    adjustersOf(car.car, corner)
      .filter((one) => !adjusterKinds[one.kind]?.even?.(one))
      .map(({ id }) => ({ corner, adjuster: id }))
      .filter(isUnknown),
  );
}
