/**
 * Rounds as what can be held against each other. Readings of one sitting differ by what was moved and by the gauge alone:
 * tyres, load and what has worn since are the same. So a car is learned from differences within a sitting, never between.
 */
import type { Car, Round } from '../contract.ts';
import { levelled } from '../reading/steering-wheel.ts';
import { readAgainst } from '../reading/toe-reference.ts';
import { canonical } from '../records/canonical.ts';
import { byText, byTime, secondsOf } from '../records/order.ts';
import { current } from '../records/rounds.ts';

/** Rounds that were read in one go, the first one first. */
export interface Sitting {
  readonly rounds: readonly Round[];
  /** Whether the order is the one in which they were read; else it is any that does not hang on who lists them. */
  readonly inOrder: boolean;
}

/** Seconds without a reading after which the car has been on the road. */
const APART = 12 * 3600;

/**
 * Rounds in any order, each record once, corrected ones replaced. Those of a time are of one sitting with those less than
 * twelve hours from them; those without are all of one.
 */
export function sittingsOf(given: readonly Round[]): readonly Sitting[] {
  const rounds = [...current(once(given))].sort(inTime);
  const sittings: Round[][] = [];
  for (const round of rounds) {
    const last = sittings.at(-1);
    if (last && !isApart(last.at(-1)!, round)) last.push(round);
    else sittings.push([round]);
  }
  return sittings.map((own) => ({ rounds: own, inOrder: own.every(({ at }) => at !== undefined) }));
}

/** Rounds of one visit, in the order in which they were read. */
export const sittingOf = (rounds: readonly Round[]): Sitting => ({ rounds: current(rounds), inOrder: true });

/** Each id once. Records never change; where two of one id differ all the same, it hangs on their content which one holds. */
function once(rounds: readonly Round[]): readonly Round[] {
  const known = new Map<string, Round>();
  for (const round of [...rounds].sort(inTime)) if (round.id !== undefined) known.set(round.id, round);
  return [...rounds.filter(({ id }) => id === undefined), ...known.values()].sort(inTime);
}

const inTime = (a: Round, b: Round): number =>
  byTime(a.at, b.at) || byText(a.id ?? '', b.id ?? '') || byText(canonical(a), canonical(b));

const isApart = (a: Round, b: Round): boolean =>
  (a.at === undefined) !== (b.at === undefined) ||
  (a.at !== undefined && b.at !== undefined && secondsOf(b.at) - secondsOf(a.at) > APART);

/**
 * A reading as the model has it: with the steering wheel level and front toe against the centre line. Front toe against a
 * thrust line that was not read says nothing of the wheel alone, and is left away.
 */
export function asModelled(round: Round, car: Car): Round {
  const level = levelled(round.reading, car);
  const reading = readAgainst(level, 'centreline');
  if (reading) return { ...round, reading };
  const { LF, RF, ...rest } = level;
  const { toe: _, ...left } = LF ?? {};
  const { toe: __, ...right } = RF ?? {};
  return { ...round, reading: { ...rest, toeReference: 'centreline', LF: left, RF: right } };
}
