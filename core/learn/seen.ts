/** What was seen as the rack led a move is a reading of its wheel, of an angle or two, between the moves before it and those after. */
import type { Corner, Moved, Reading, Round, WheelReading } from '../contract.ts';
import { axleOf } from '../corners.ts';
import { thrustOf } from '../reading/axle-angles.ts';
import { referenceOf } from '../reading/toe-reference.ts';
import { current, movedOn } from '../records/rounds.ts';

/**
 * A round and after it what was seen on the way to the next, each with the moves that were made after it. Of front toe against
 * the thrust line nothing is known any more once something in the rear has moved.
 * @param round as the model has it: see `asModelled`
 * @param read against what the rack read front toe
 */
export function seenIn(round: Round, read: Reading = round.reading): readonly Round[] {
  const made = current(round.moved ?? []).filter(({ outcome }) => outcome !== 'wont-move');
  if (made.every(({ setBy }) => !setBy)) return [round];
  const { at } = round;
  const seen: { reading: Reading; settings: Round['settings']; moved: Moved[] }[] = [
    { reading: round.reading, settings: round.settings, moved: [] },
  ];
  for (const [i, move] of made.entries()) {
    seen.at(-1)!.moved.push(move);
    const wheel = wheelOf(round, read, made.slice(0, i + 1), move);
    if (!wheel) continue;
    const settings = movedOn(round.settings, made.slice(0, i + 1), round.unknown);
    seen.push({ reading: { [move.corner]: wheel }, settings, moved: [] });
  }
  return seen.map((one) => ({ ...round, ...one, ...(at !== undefined && { at }) }));
}

function wheelOf(
  round: Round,
  read: Reading,
  made: readonly Moved[],
  { corner, setBy }: Moved,
): WheelReading | undefined {
  if (!setBy) return undefined;
  const { toe, ...shown }: WheelReading = { [setBy.angle]: setBy.value, ...setBy.shown };
  const right = toe === undefined ? undefined : turnOf(round, read, made, corner);
  const wheel = toe === undefined || right === undefined ? shown : { ...shown, toe: toe + right };
  return Object.keys(wheel).length > 0 ? wheel : undefined;
}

/** Degrees that a wheel's toe is more against the centre line than as the rack shows it; nothing where that is not known. */
function turnOf({ reading }: Round, read: Reading, made: readonly Moved[], corner: Corner): number | undefined {
  if (axleOf(corner) === 'rear' || referenceOf(read) === 'centreline') return 0;
  const { LR, RR } = reading;
  if (LR?.toe === undefined || RR?.toe === undefined) return undefined;
  if (made.some((one) => axleOf(one.corner) === 'rear')) return undefined;
  const thrust = thrustOf(LR.toe, RR.toe);
  return corner === 'LF' ? thrust : -thrust;
}
