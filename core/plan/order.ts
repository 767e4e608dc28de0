/**
 * In which order the moves are made. Trade practice, seen in makers' manuals: the rear before the front, since it sets
 * the thrust line; camber and caster before toe, since they change it. Data, as cars differ.
 */
import { adjusterKinds } from '../adjuster/catalogue.ts';
import { type Adjuster, type AxleName, CORNERS, type Corner } from '../contract.ts';
import { CAMBER, CASTER, type CornerModel, TOE } from '../pose/corner.ts';
import { axleOf } from './car-model.ts';

/** What an adjuster is for: the wheel's lean, or its toe alone. */
export type Role = 'lean' | 'toe';

export const WORKING_ORDER: readonly { readonly axle: AxleName; readonly role: Role }[] = [
  { axle: 'rear', role: 'lean' },
  { axle: 'rear', role: 'toe' },
  { axle: 'front', role: 'lean' },
  { axle: 'front', role: 'toe' },
];

/** An adjuster whose step turns the wheel at least this many times as much as it leans it is there for toe. */
const MOSTLY_TOE = 2;

export function roleOf(model: CornerModel, adjuster: Adjuster): Role {
  const kind = adjusterKinds[adjuster.kind];
  if (!kind) return 'lean';
  const { from, to } = kind.step(adjuster);
  const a = new Float64Array(3);
  const b = new Float64Array(3);
  const solved =
    model.angles(model.parameters({ [adjuster.id]: from }), a) &&
    model.angles(model.parameters({ [adjuster.id]: to }), b);
  if (!solved) return 'lean';
  const change = (k: number): number => Math.abs((b[k] as number) - (a[k] as number));
  return change(TOE) > MOSTLY_TOE * Math.max(change(CAMBER), change(CASTER)) ? 'toe' : 'lean';
}

/** Where a move stands in the working order: less is earlier. */
export function rankOf(corner: Corner, role: Role): number {
  const step = WORKING_ORDER.findIndex((place) => place.axle === axleOf(corner) && place.role === role);
  return step * CORNERS.length + CORNERS.indexOf(corner);
}
