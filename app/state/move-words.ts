/** A plan's moves and shortfalls in the words and drawings of the cards. */

import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import { adjusterName } from '../../core/adjuster/names.ts';
import { adjustersOf } from '../../core/adjuster/of-corner.ts';
import type { Adjuster, AdjusterRef, Car, Move, Shortfall } from '../../core/contract.ts';
import { adjusterPictures } from '../parts/drawings/catalogue.ts';
import { placeWord } from './judge.ts';
import { counted } from './packs.ts';
import { units } from './preferences.ts';
import { isOfItsScale } from './standing.ts';
import { valueText } from './units.ts';

export function adjusterOf(car: Car, { corner, adjuster }: AdjusterRef): Adjuster | undefined {
  return adjustersOf(car, corner).find((one) => one.id === adjuster);
}

/** What it is called; its id where the car has it no more. */
export function nameIn(car: Car, ref: AdjusterRef): string {
  const adjuster = adjusterOf(car, ref);
  return adjuster ? adjusterName(adjuster) : ref.adjuster;
}

/** A move in one short line: `3 → 5`, `4.5 → 6 mm`, `3½ flats shorter`. */
export function wayText(adjuster: Adjuster, { corner, from, to }: Pick<Move, 'corner' | 'from' | 'to'>): string {
  const known = [from, to].every((position) => isOfItsScale(adjuster, position));
  const words = known && adjusterPictures[adjuster.kind]?.words({ adjuster, corner, from, to, units: units.value });
  if (!words) return `${from} → ${to}`;
  if (words.from === '') return `${words.to} ${words.note.split(',')[0]}`;
  return `${words.from} → ${words.to}${words.unit ? ` ${words.unit}` : ''}`;
}

/** Never 100 %, never 0 %: a model is not a promise. */
export const chanceText = (chance: number): string => `${Math.min(99, Math.max(1, Math.round(chance * 100)))} %`;

/** `LF camber 0.12 too high` */
export function offText(car: Car, { where, angle, by }: Shortfall): string {
  const rim = car.wheel.rimDiameter;
  const far = (of: string): string => valueText(of, Math.abs(by), rim);
  if (angle === 'pinionChange') return `${capital(where)} pinion ${far(angle)} too far ${by > 0 ? 'up' : 'down'}`;
  if (angle === 'lateralChange') {
    return `${capital(where)} axle ${far('lateral')} too far to the ${by > 0 ? 'left' : 'right'}`;
  }
  const size = far(angle === 'thrustAngle' ? 'camber' : angle);
  return `${capital(placeWord(car, where, angle))} ${size} too ${by > 0 ? 'high' : 'low'}`;
}

const capital = (text: string): string => `${text[0]?.toUpperCase()}${text.slice(1)}`;

/** The shims that a pack is to hold, and where it is known those that it holds. */
export function stacks(adjuster: Adjuster, { act }: Move) {
  if (!adjusterKinds[adjuster.kind]?.stack || act.act !== 'change-shims' || (act.stack.length === 0 && act.to > 0))
    return {};
  return { stackTo: counted(act.stack), ...(act.holds && { stackFrom: counted(act.holds) }) };
}
