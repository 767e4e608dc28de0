/** Adjusters of which nobody knows where they stand; cams, sleeves and wedges among them cannot be planned from just anywhere. */
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import { adjustersOf } from '../../core/adjuster/of-corner.ts';
import { type AdjusterRef, CORNERS } from '../../core/contract.ts';
import { standingKey, UNKNOWN } from './standing.ts';
import { type RoundView, sameRef, type VisitView } from './visits.ts';

/** As of a round: what was last said of each adjuster's place up to then, or where it was set since. */
export const unknownPlaces = (view: VisitView, last: RoundView): readonly AdjusterRef[] =>
  unknownIn(view, last, last.moves).filter((ref) => isUneven(view, ref));

/** The same as the round was read: what it does hangs on its place, which is learned as it is turned on. */
export const unevenUnknown = (view: VisitView, last: RoundView): readonly AdjusterRef[] =>
  unknownIn(view, last, []).filter((ref) => isUneven(view, ref));

function isUneven({ car }: VisitView, { corner, adjuster }: AdjusterRef): boolean {
  const one = adjustersOf(car.car, corner).find(({ id }) => id === adjuster);
  return one !== undefined && !adjusterKinds[one.kind]?.even?.(one);
}

/** All that nobody knew the place of when a round was read, rods and packs with them. */
export const unknownAtReading = (view: VisitView, last: RoundView): readonly AdjusterRef[] => unknownIn(view, last, []);

/** @param since what was done after the round's reading that counts */
function unknownIn({ car, rounds }: VisitView, last: RoundView, since: RoundView['moves']): readonly AdjusterRef[] {
  const place = rounds.findIndex(({ record }) => record.id === last.record.id);
  const past = [...(place < 0 ? rounds : rounds.slice(0, place)), { ...last, moves: since }];
  const isUnknown = (ref: AdjusterRef): boolean =>
    past.reduce((unknown, { record, moves }) => {
      const said = record.typed[standingKey(ref.corner, ref.adjuster)];
      const begins = said === undefined ? unknown : said === UNKNOWN;
      return begins && !moves.some((move) => sameRef(move, ref) && move.outcome === 'set-to');
    }, false);
  return CORNERS.flatMap((corner) =>
    adjustersOf(car.car, corner)
      .map(({ id }) => ({ corner, adjuster: id }))
      .filter(isUnknown),
  );
}
