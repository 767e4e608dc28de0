/** Where the adjusters stand before a visit's first moves: remembered, corrected, or not known. */

import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import { adjustersOf } from '../../core/adjuster/of-corner.ts';
import type { Adjuster, CarPacks, CarSettings, Corner, Position, ShimCount } from '../../core/contract.ts';
import { CORNERS } from '../../core/contract.ts';
import { InputError } from '../../core/input-error.ts';
import type { CarRecord } from '../../core/records/stored.ts';
import type { Bearing } from '../../core/said.ts';
import { bareLength, figure } from '../../core/units/shop.ts';
import { packKey, shimsOfText, thicknessOf } from './packs.ts';
import { units } from './preferences.ts';
import { refKey } from './visits.ts';
import { words } from './words.ts';

export interface Standing {
  readonly corner: Corner;
  readonly adjuster: Adjuster;
  readonly position: Position;
  /** What is in it, of a pack of which that is known. */
  readonly shims?: readonly ShimCount[];
  /** "Don't know": counted from the position at which the geometry was taken. */
  readonly unknown: boolean;
}

/** Key of an adjuster's position in the entry draft and among the typed texts of a reading. */
export const standingKey = (corner: Corner, adjuster: string): string => `at:${refKey({ corner, adjuster })}`;
export const UNKNOWN = '?';

/** Every adjuster of the car, corner by corner, with what the draft says, else what is remembered, else its reference. */
export function standings(
  car: CarRecord,
  texts: Readonly<Record<string, string>>,
  remembered: CarSettings,
  packs: CarPacks = {},
): readonly Standing[] {
  return CORNERS.flatMap((corner) =>
    adjustersOf(car.car, corner).map((adjuster) => {
      const text = texts[standingKey(corner, adjuster.id)];
      const unknown = text === UNKNOWN;
      const found = text === undefined || unknown ? undefined : positionOf(adjuster, text);
      const known = found ?? remembered[corner]?.[adjuster.id];
      const position = known !== undefined && accepts(adjuster, known) ? known : adjuster.reference;
      const said = texts[packKey({ corner, adjuster: adjuster.id })];
      const shims = said === undefined ? packs[corner]?.[adjuster.id] : shimsOfText(said);
      // A pack that was stepped to another thickness holds something else.
      const isKnown = shims && !unknown && Math.abs(thicknessOf(shims) - Number(position)) < 1e-6;
      return { corner, adjuster, position, unknown, ...(isKnown && { shims }) };
    }),
  );
}

export function settingsOf(list: readonly Standing[]): CarSettings {
  const settings: Partial<Record<Corner, Record<string, Position>>> = {};
  for (const { corner, adjuster, position } of list) {
    settings[corner] = { ...settings[corner], [adjuster.id]: position };
  }
  return settings;
}

/** A position from its text: a number where the adjuster counts in numbers, else the label. */
function positionOf(adjuster: Adjuster, text: string): Position {
  return typeof adjuster.reference === 'number' ? Number(text) : text;
}

/** A remembered position may be of an adjuster that was described otherwise then. */
const accepts = (adjuster: Adjuster, position: Position): boolean =>
  adjusterKinds[adjuster.kind]?.accepts(adjuster, position) ?? false;

/** Whether a position is said as this adjuster says it: a label of what was fitted before it is no number of its scale. */
export const isOfItsScale = ({ reference }: Adjuster, position: Position): boolean =>
  typeof reference !== 'number' || typeof position === 'number';

export function positionText(adjuster: Adjuster, position: Position): string {
  const kind = isOfItsScale(adjuster, position) ? adjusterKinds[adjuster.kind] : undefined;
  const place = kind?.place(adjuster, position);
  return place ? words.place(place, units.value) : String(position);
}

/** The way its point goes as a cam's angle grows, of which nobody said which way its marks count; nothing for any other. */
export function unsidedWay(adjuster: Adjuster): Bearing | 'end' | undefined {
  const last = positionsOf(adjuster).at(-1) ?? adjuster.reference;
  const place = adjusterKinds[adjuster.kind]?.place(adjuster, last);
  return place?.as === 'mark' ? place.side : undefined;
}

/** A position without its unit, for the head of a column: lengths in the shop's, labels as they are stamped. */
export function bareText(adjuster: Adjuster, position: Position): string {
  const place = adjusterKinds[adjuster.kind]?.place(adjuster, position);
  if (place?.as === 'thickness' || place?.as === 'scale') return bareLength(place.mm, units.value);
  return typeof position === 'number' ? figure(position, units.value) : position;
}

/** Of a car on file that the core would refuse, such as one of an earlier version with too fine a step, none is known. */
export function positionsOf(adjuster: Adjuster): readonly Position[] {
  try {
    return adjusterKinds[adjuster.kind]?.positions(adjuster) ?? [adjuster.reference];
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return [adjuster.reference];
  }
}

/** The position `steps` further along the adjuster's own list; from between two, the next one that way. */
export function stepped(adjuster: Adjuster, from: Position, steps: 1 | -1): Position {
  const all = positionsOf(adjuster);
  const here = all.indexOf(from);
  if (here >= 0) return all[here + steps] ?? from;
  const beyond = typeof from === 'number' ? all.filter((one) => (Number(one) - from) * steps > 0) : all;
  return (steps > 0 ? beyond[0] : beyond.at(-1)) ?? from;
}

export function atEnd(adjuster: Adjuster, from: Position, steps: 1 | -1): boolean {
  return stepped(adjuster, from, steps) === from;
}
