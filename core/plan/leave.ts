/** A plan of which some moves are left this time: the others stand, and what that breaks is said. */
import { adjustersOf } from '../adjuster/of-corner.ts';
import { type AdjusterRef, CORNERS } from '../contract.ts';
import { AXLES } from '../corners.ts';
import type { Named, Note } from '../said.ts';
import { kindOfAdjuster, nameOf, type Positions, type Problem } from './problem.ts';
import { samePosition } from './states/axis.ts';
import { isKnownApart, mostApart, tiesOf } from './terms.ts';

/** The positions of a plan without the moves that are left: those adjusters stay where they stand. */
export function leaving({ request, now }: Problem, planned: Positions): { positions: Positions; asPlanned: boolean } {
  const positions = { ...planned };
  let asPlanned = true;
  for (const { corner, adjuster } of request.leave ?? []) {
    const stays = now[corner][adjuster]!;
    asPlanned &&= samePosition(planned[corner][adjuster]!, stays);
    positions[corner] = { ...positions[corner], [adjuster]: stays };
  }
  return { positions, asPlanned };
}

/** Two adjusters of which one is moved and the other left. */
interface Apart {
  readonly both: readonly [AdjusterRef, AdjusterRef];
  readonly most: number;
  /** How far apart they are where all stands so. */
  readonly at: (positions: Positions) => number;
}

/** Limits between two adjusters that hold in every plan, and not where one of them is left. */
export function limitNotes({ request, now }: Problem, positions: Positions): Note[] {
  const named = (ref: AdjusterRef): Named => ({ ...ref, name: nameOf(request, ref) });
  return [...sides(request), ...pairs(request)].flatMap(({ both, most, at }): Note[] => {
    const [before, after] = [at(now), at(positions)];
    if (after <= Math.max(most, before) + 1e-9) return [];
    return [{ note: 'too-far-apart', both: [named(both[0]), named(both[1])], most, by: after }];
  });
}

const sides = ({ car }: Problem['request']): Apart[] =>
  (['front', 'rear'] as const).flatMap((axle) => {
    const corners = AXLES[axle];
    return tiesOf(car[axle]).map((tie): Apart => {
      const place = (side: 0 | 1, positions: Positions): number => {
        const one = tie[side];
        const { value, start = 0 } = kindOfAdjuster(one).bothSides!(one, positions[corners[side]][one.id]!)!;
        return value + (isKnownApart(tie) ? start : 0);
      };
      return {
        both: [
          { corner: corners[0], adjuster: tie[0].id },
          { corner: corners[1], adjuster: tie[1].id },
        ],
        most: mostApart(tie),
        at: (positions) => Math.abs(place(0, positions) - place(1, positions)),
      };
    });
  });

const pairs = ({ car }: Problem['request']): Apart[] =>
  CORNERS.flatMap((corner) =>
    adjustersOf(car, corner).flatMap((one): Apart[] => {
      const pair = kindOfAdjuster(one).pair?.(one);
      if (!pair) return [];
      const at = ({ [corner]: own }: Positions): number => Math.abs(Number(own[one.id]) - Number(own[pair.with]));
      return [
        {
          both: [
            { corner, adjuster: one.id },
            { corner, adjuster: pair.with },
          ],
          most: pair.most,
          at,
        },
      ];
    }),
  );
