/**
 * A move that goes by the rack, under the hand: where it ended and what else the rack shows then. Kept in the visit's draft at
 * every touch, until the move is booked with it.
 */
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import { isLive } from '../../core/adjuster/live.ts';
import type { Adjuster, Car, LiveAngle, Move, Position, SetByRack } from '../../core/contract.ts';
import type { Rule } from '../../core/rule.ts';
import { adjusterPictures } from '../parts/drawings/catalogue.ts';
import { type Field, figureOf, readField } from './fields.ts';
import { adjusterOf } from './move-words.ts';
import { shownLive } from './planning.ts';
import { rack, units } from './preferences.ts';
import { choice, choose } from './stage.ts';
import { positionsOf } from './standing.ts';
import { isEmpty, isFraction, isFull, typed } from './typing.ts';
import { unitsFor, valueText } from './units.ts';
import { type RoundView, refKey, type VisitView } from './visits.ts';

/** A move of the plan of a round of a visit. */
export interface Of {
  readonly view: VisitView;
  readonly round: RoundView;
  readonly move: Move;
}

/** The more a place is coarser than how well a hand sets it, the more is read off between two. */
const COARSE = 4;
/** Places that are offered to either side of the guess. */
const BESIDE = 1;
/** Standard deviations beyond which a figure is not what was to be expected. */
const FAR = 3;
/** What is said as "within": where 95 of 100 lie. */
const SAID = 2;

/** How fine its place is read off: its own steps, or halves of them where they are coarse. */
function grainOf(adjuster: Adjuster): number {
  const all = positionsOf(adjuster);
  // Of all of them: each is rounded, and what two are off by adds up over a rod's flats.
  const step = (Number(all.at(-1)) - Number(all[0])) / (all.length - 1);
  return step > COARSE * (adjusterKinds[adjuster.kind]?.tolerance.usual ?? step) ? step / 2 : step;
}

/** The nearest place that a hand reads off. */
export function guessOf(adjuster: Adjuster, { from, to }: Pick<Move, 'from' | 'to'>): number {
  const all = positionsOf(adjuster).map(Number);
  const [grain, low, high] = [grainOf(adjuster), all[0]!, all.at(-1)!];
  const at = low + Math.round((Number(to) - low) / grain) * grain;
  // What is turned at all is not read off as if it had not been.
  const gone = Math.abs(at - Number(from)) < grain / 2 ? at + Math.sign(Number(to) - Number(from)) * grain : at;
  return tidy(Math.min(high, Math.max(low, gone)));
}

/** Places near the guess, in order. */
export function placesNear(adjuster: Adjuster, move: Pick<Move, 'from' | 'to'>): readonly number[] {
  const all = positionsOf(adjuster).map(Number);
  const [grain, guess] = [grainOf(adjuster), guessOf(adjuster, move)];
  return Array.from({ length: 2 * BESIDE + 1 }, (_, i) => tidy(guess + (i - BESIDE) * grain)).filter(
    (at) => at >= all[0]! && at <= all.at(-1)!,
  );
}
/** And no 0 below zero. */
const tidy = (x: number): number => Number(x.toFixed(6)) + 0;

/** A place as a hand counts it there, such as `+2.5` or `3 flats`, and which way it is turned to it. */
export function placeWord(adjuster: Adjuster, { corner, from }: Pick<Move, 'corner' | 'from'>, to: Position) {
  const words = adjusterPictures[adjuster.kind]?.words({ adjuster, corner, from, to, units: units.value });
  if (!words) return { text: String(to), unit: '', way: '' };
  // Counted from where it stands it says by itself which way, with a unit or without.
  if (words.from === '') return { text: words.to, unit: from === to ? '' : (words.unit ?? words.note), way: '' };
  return { text: words.to, unit: words.unit ?? '', way: words.note };
}

const standKey = ({ round, move }: Of): string => `stand:${round.record.id}:${refKey(move)}`;
/** With the unit of toe in it: another one chosen half way makes no other figure of what was typed. */
const shownKey = ({ view, round, move }: Of, angle: LiveAngle): string =>
  `shown:${round.record.id}:${refKey(move)}:${angle}:${unitsFor(view.car.car).toe}`;

/** Where it was read off to stand; nothing as long as it is left at the guess. */
export function standOf(of: Of): number | undefined {
  const text = choice(of.view.visit.id, standKey(of));
  return text === '' ? undefined : Number(text);
}
/** @param at nothing: the guess */
export const setStand = (of: Of, at: number | undefined): void =>
  choose(of.view.visit.id, { [standKey(of)]: at === undefined ? '' : String(at) });

/** What the rack shows beside the angle that it is set by, and what of that was typed. */
export interface Other {
  readonly angle: LiveAngle;
  readonly text: string;
  readonly value?: number;
  readonly error?: Rule;
  readonly expected: number;
  /** 95 of 100 lie within it either way, degrees. */
  readonly within: number;
  /** It is further off than what is not known makes likely. */
  readonly isApart: boolean;
}

export function othersOf(of: Of): readonly Other[] {
  const { view, round, move } = of;
  return shownLive(round).flatMap((angle): Other[] => {
    const expected = move.expectAfter[move.corner]?.[angle];
    const sigma = move.watched?.deviation[angle];
    if (angle === move.setBy?.angle || expected === undefined || sigma === undefined) return [];
    const text = choice(view.visit.id, shownKey(of, angle));
    const { value, error } = isEmpty(text)
      ? {}
      : readField(fieldOf(move, angle), text, unitsFor(view.car.car), view.car.car.wheel.rimDiameter);
    const isApart = value !== undefined && Math.abs(value - expected) > FAR * sigma;
    const told = { ...(value !== undefined && { value }), ...(error && { error }) };
    return [{ angle, text, expected, within: SAID * sigma, isApart, ...told }];
  });
}

const fieldOf = ({ corner }: Move, angle: LiveAngle): Field => ({ id: `${corner}.${angle}`, where: corner, angle });

/** Where ± was the last key: digits after it are a figure below zero. Of the moment only. */
let signed: string | undefined;

/** A key of the pad. @returns whether the figure has all that the rack shows */
export function typeShown(of: Of, angle: LiveAngle, key: string): boolean {
  const { view, move } = of;
  const own = unitsFor(view.car.car);
  const at = shownKey(of, angle);
  const figure = figureOf(fieldOf(move, angle), own);
  const decimals = figure ? rack.value.decimals[figure] : 0;
  const fraction = isFraction(own, angle);
  const old = choice(view.visit.id, at);
  const anew = /^[\d.]$/.test(key) && isFull(old, decimals, fraction);
  const text = typed(anew ? (signed === at ? '−' : '') : old, key, own, angle);
  signed = key === '±' && signed !== at ? at : undefined;
  choose(view.visit.id, { [at]: text });
  return /^\d$/.test(key) && isFull(text, decimals, fraction);
}
export const clearShown = (of: Of, angle: LiveAngle): void => choose(of.view.visit.id, { [shownKey(of, angle)]: '' });

/** What a rack of the app's own showed as it was turned. */
export function putTurned(of: Of, { at, shown }: { readonly at: number; readonly shown: Shown }): void {
  const { car } = of.view.car;
  const figures = othersOf(of).flatMap(({ angle }) => {
    const value = shown[angle];
    return value === undefined
      ? []
      : [[shownKey(of, angle), valueText(angle, value, car.wheel.rimDiameter, unitsFor(car).toe)]];
  });
  choose(of.view.visit.id, { [standKey(of)]: String(tidy(at)), ...Object.fromEntries(figures) });
}
type Shown = Readonly<Partial<Record<LiveAngle, number>>>;

/** What its record says of a move by the rack: where it stands, by the guess unless it was read off, and what was shown. */
export function bookedBy(of: Of): { readonly to: Position; readonly setBy: SetByRack } {
  const { move } = of;
  const stand = standOf(of);
  const shown = Object.fromEntries(
    othersOf(of).flatMap(({ angle, value }) => (value === undefined ? [] : [[angle, value]])),
  );
  return {
    to: stand ?? move.to,
    setBy: {
      ...move.setBy!,
      ...(Object.keys(shown).length > 0 && { shown }),
      ...(stand === undefined && move.watched && { within: move.watched.within }),
    },
  };
}

/** Degrees within which a figure is expected, as the shop writes it. */
export const withinText = (car: Car, angle: LiveAngle, degrees: number): string =>
  valueText(angle, degrees, car.wheel.rimDiameter);

/** Whether any adjuster of the car can be turned while the rack is watched. */
export const canWatch = (car: Car): boolean =>
  [car.front, car.rear].some(({ adjusters, rightAdjusters = [] }) => [...adjusters, ...rightAdjusters].some(isLive));

export const adjusterIn = ({ view, move }: Of): Adjuster | undefined => adjusterOf(view.car.car, move);
