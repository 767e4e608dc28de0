/**
 * A visit as the car file that the engine is asked about: its rounds up to one of them, what was done after each, and the
 * visits before it, as the engine learns the car from all that was read by then. Nothing that the answer does not hang on,
 * so that the same question is asked in the same words. An adjuster that was taken off the car, or off one side of it,
 * since a round was read is history: no plan is made with it.
 */
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import { adjustersOf } from '../../core/adjuster/of-corner.ts';
import {
  type AdjusterRef,
  type CarFile,
  type CarPacks,
  CORNERS,
  type Moved,
  type Position,
  type Round,
  type Visit,
} from '../../core/contract.ts';
import type { MoveRecord } from '../../core/records/stored.ts';
import { unevenUnknown } from './unknown-places.ts';
import type { RoundView, VisitView } from './visits.ts';

/**
 * @param moves those that count as done in the last of the rounds
 * @param earlier visits before it, as `visitOf` has them
 */
export function visitFile(
  view: VisitView,
  last: RoundView,
  moves: readonly MoveRecord[],
  earlier: readonly Visit[] = [],
): CarFile {
  const { car, spec } = view.car;
  const place = view.rounds.findIndex(({ record }) => record.id === last.record.id);
  const before = place < 0 ? view.rounds : view.rounds.slice(0, place);
  const rounds = [...before.map((one) => roundOf(view, one, one.moves, last)), roundOf(view, last, moves, last)];
  const { id, opened } = view.visit;
  return { format: 'cornerwright', version: 1, car, spec, visits: [...earlier, { id, carId: car.id, opened, rounds }] };
}

/** All that was read and done in a visit that is past. */
export function visitOf(view: VisitView): Visit {
  const { id, opened } = view.visit;
  const last = view.rounds.at(-1)!;
  return { id, carId: view.car.car.id, opened, rounds: view.rounds.map((one) => roundOf(view, one, one.moves, last)) };
}

function roundOf(view: VisitView, round: RoundView, moves: readonly MoveRecord[], last: RoundView): Round {
  const { car } = view.car;
  const { id, reading, settings, packs } = round.record;
  const fitted = ({ corner, adjuster }: AdjusterRef) => adjustersOf(car, corner).find(({ id }) => id === adjuster);
  const stands = CORNERS.filter((corner) => settings[corner]).map((corner) => {
    // What was taken off since and stood elsewhere then is kept: core sees that such a reading says nothing of the rest.
    const stays = ([adjuster, position]: [string, Position]): boolean =>
      fitted({ corner, adjuster }) !== undefined || position !== last.record.settings[corner]?.[adjuster];
    return [corner, Object.fromEntries(Object.entries(settings[corner] ?? {}).filter(stays))] as const;
  });
  const isPack = (ref: AdjusterRef) => adjusterKinds[fitted(ref)?.kind ?? '']?.stack !== undefined;
  const unknown = unevenUnknown(view, round);
  // How high the body stands changes no move.
  const { rideHeights: _, ...angles } = reading;
  return {
    // Not when: a visit's rounds are in their order, and one that is still typed has another time at every look.
    id,
    reading: angles,
    settings: Object.fromEntries(stands),
    ...(unknown.length > 0 && { unknown }),
    ...(packs && { packs: packsThat(isPack, packs) }),
    moved: moves.filter(fitted).map(({ corner, adjuster, from, to, outcome, shims, setBy }): Moved => {
      const built = shims && isPack({ corner, adjuster }) ? { shims } : {};
      return { corner, adjuster, from, to, outcome, ...built, ...(setBy && { setBy }) };
    }),
  };
}

/** A pack that another adjuster has taken the place of holds nothing that counts. */
function packsThat(count: (ref: AdjusterRef) => boolean, packs: CarPacks): CarPacks {
  const own = CORNERS.filter((corner) => packs[corner]).map((corner) => {
    const all = Object.entries(packs[corner] ?? {});
    return [corner, Object.fromEntries(all.filter(([adjuster]) => count({ corner, adjuster })))] as const;
  });
  return Object.fromEntries(own);
}
