/** The practice rack leads a move, as a live rack does: the adjuster is turned until its gauge shows the figure. */
import { type LiveAngle, WHEEL_ANGLES } from '../../core/contract.ts';
import { angleAgainst } from '../../core/reading/toe-reference.ts';
import { movedOn } from '../../core/records/rounds.ts';
import type { Of } from '../state/by-rack.ts';
import { entryForm } from '../state/visit-actions.ts';
import { scatterOf, trulyAt, truth, turnedUntil } from './truth.ts';

/** Where the adjuster then stands, and what the rack shows of the wheel's other angles, degrees. */
export async function practiceTurn({ view, round, move }: Of) {
  const { corner, adjuster, setBy } = move;
  const place = view.rounds.findIndex(({ record }) => record.id === round.record.id);
  const before = await trulyAt(view, round.record.settings);
  const at = await turnedUntil(view, place, before, { corner, adjuster, to: move.to, setBy: setBy! });
  const there = await truth(view, movedOn(before, [{ corner, adjuster, from: move.from, to: at }]));
  const gauge = scatterOf(view, place, corner, adjuster);
  const { reference } = entryForm(view);
  const shown = WHEEL_ANGLES.flatMap((angle: LiveAngle) => {
    const value = angleAgainst(there, corner, angle, reference);
    return value === undefined || angle === setBy?.angle ? [] : [[angle, value + gauge(angle)] as const];
  });
  return { at, shown: Object.fromEntries(shown) as Partial<Record<LiveAngle, number>> };
}
