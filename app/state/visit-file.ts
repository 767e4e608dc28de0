/**
 * A visit as the car file that the engine is asked about: its rounds up to one of them, what was done after each, and
 * nothing that the answer does not hang on, so that the same question is asked in the same words. An adjuster that was
 * taken off the car, or off one side of it, since a round was read is history: no plan is made with it.
 */
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import { adjustersOf } from '../../core/adjuster/of-corner.ts';
import {
  type AdjusterRef,
  type Car,
  type CarFile,
  type CarPacks,
  CORNERS,
  type Moved,
  type Round,
} from '../../core/contract.ts';
import type { MoveRecord } from '../../core/records/stored.ts';
import type { RoundView, VisitView } from './visits.ts';

/** @param moves those that count as done in the last of the rounds */
export function visitFile(
  { car: { car, spec }, rounds }: VisitView,
  last: RoundView,
  moves: readonly MoveRecord[],
): CarFile {
  const place = rounds.findIndex(({ record }) => record.id === last.record.id);
  const before = place < 0 ? rounds : rounds.slice(0, place);
  const told = [...before.map((one) => roundOf(car, one, one.moves)), roundOf(car, last, moves)];
  return { format: 'cornerwright', version: 1, car, spec, visits: [{ ...THIS_VISIT, carId: car.id, rounds: told }] };
}

/** The one visit of the file: which and when it was makes no difference. */
const THIS_VISIT = { id: 'visit', opened: '2000-01-01' };

function roundOf(car: Car, { record: { reading, settings, packs } }: RoundView, moves: readonly MoveRecord[]): Round {
  const fitted = ({ corner, adjuster }: AdjusterRef) => adjustersOf(car, corner).find(({ id }) => id === adjuster);
  const stands = CORNERS.filter((corner) => settings[corner]).map((corner) => {
    const all = Object.entries(settings[corner] ?? {});
    return [corner, Object.fromEntries(all.filter(([adjuster]) => fitted({ corner, adjuster })))] as const;
  });
  const isPack = (ref: AdjusterRef) => adjusterKinds[fitted(ref)?.kind ?? '']?.stack !== undefined;
  return {
    reading,
    settings: Object.fromEntries(stands),
    ...(packs && { packs: packsThat(isPack, packs) }),
    moved: moves.filter(fitted).map(({ corner, adjuster, from, to, outcome, shims }): Moved => {
      const built = shims && isPack({ corner, adjuster }) ? { shims } : {};
      return { corner, adjuster, from, to, outcome, ...built };
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
