/** A plan's moves and shortfalls in the words and drawings of the cards. */
import type { Adjuster, AdjusterRef, Car, Move, Plan, Shortfall } from '../../core/contract.ts';
import { shimStack } from '../../core/units/shim-stack.ts';
import { adjusterPictures } from '../parts/drawings/catalogue.ts';
import { axleOf } from './fields.ts';
import { placeWord } from './judge.ts';
import { valueText } from './units.ts';
import { type RoundView, sameRef } from './visits.ts';

/** Moves of the plan that are not marked yet. */
export function movesLeft(plan: Plan, round: RoundView): readonly Move[] {
  return plan.moves.filter((move) => !round.done.some((made) => sameRef(made, move)));
}

export function adjusterOf(car: Car, { corner, adjuster }: AdjusterRef): Adjuster | undefined {
  return car[axleOf(corner)].adjusters.find((one) => one.id === adjuster);
}

/** A move in one short line: `3 → 5`, `4.5 → 6 mm`, `3.5 flats shorter`. */
export function wayText(adjuster: Adjuster, { corner, from, to }: Pick<Move, 'corner' | 'from' | 'to'>): string {
  const words = adjusterPictures[adjuster.kind]?.words({ adjuster, corner, from, to });
  if (!words) return `${from} → ${to}`;
  if (words.from === '') return `${words.to} ${words.note.split(',')[0]}`;
  return `${words.from} → ${words.to}${words.unit ? ` ${words.unit}` : ''}`;
}

/** "LF camber stays 0.12 high. LF upper front shims: at the end of their travel." */
export function shortfallText(car: Car, { where, angle, by, atStop }: Shortfall): string {
  const place = placeWord(car, where, angle);
  const size = valueText(angle === 'thrustAngle' ? 'camber' : angle, Math.abs(by), car.wheel.rimDiameter);
  const stops = atStop.map((ref) => `${ref.corner} ${adjusterOf(car, ref)?.name ?? ref.adjuster}`);
  const why = stops.length > 0 ? ` At the end of travel: ${stops.join(', ')}.` : '';
  return `${place[0]?.toUpperCase()}${place.slice(1)} stays ${size} too ${by > 0 ? 'high' : 'low'}.${why}`;
}

/** The shims that the pack holds and is to hold, where the adjuster is a pack; those of the plan where they are counted. */
export function stacks(adjuster: Adjuster, { from, to, shims }: Move) {
  if (adjuster.kind !== 'shim-pack' || typeof from !== 'number' || typeof to !== 'number') return {};
  const of = (thickness: number) => shimStack(thickness, adjuster.sizes, { max: adjuster.max }).shims;
  return { stackFrom: of(from), stackTo: shims ?? of(to) };
}
