/**
 * In which order the moves are made. Trade practice, seen in makers' manuals: the rear before the front, since it sets
 * the thrust line; camber and caster before toe, since they change it. Data, as cars differ.
 */
import { adjusterKinds } from '../adjuster/catalogue.ts';
import { type Adjuster, type AxleName, CORNERS, type Corner } from '../contract.ts';
import type { CornerModel } from '../pose/unit.ts';
import { axleOf } from '../reading/axle-angles.ts';

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
  const a = model.pose({ [adjuster.id]: from });
  const b = model.pose({ [adjuster.id]: to });
  if (!a.reachable || !b.reachable) return 'lean';
  const change = (angle: 'camber' | 'caster' | 'toe'): number => Math.abs((b[angle] ?? 0) - (a[angle] ?? 0));
  return change('toe') > MOSTLY_TOE * Math.max(change('camber'), change('caster')) ? 'toe' : 'lean';
}

/** Where a move stands in the working order: less is earlier. */
export function rankOf(corner: Corner, role: Role): number {
  const step = WORKING_ORDER.findIndex((place) => place.axle === axleOf(corner) && place.role === role);
  return step * CORNERS.length + CORNERS.indexOf(corner);
}
