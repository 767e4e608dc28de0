/** Which joints and links a kind has, of those that may be absent the ones that are there. Apart, as the first load needs none. */
import type { SuspensionKind } from './kind.ts';

/** Points by name, as a suspension has them; absent where a kind is asked what it may have. */
type Points = Readonly<Record<string, unknown>> | undefined;
const has = (points: Points, name: string): boolean => !points || name in points;

/** The points at which something is held: all but the wheel centre, in the kind's order; those that are there. */
export function jointsOf({ points, links = [], lines = [], seats = [] }: SuspensionKind, present?: Points): string[] {
  const joints = new Set([...links.flat(), ...lines.flat(), ...seats]);
  return points.filter((name) => joints.has(name) && has(present, name));
}

/** The links that are there, [point on the body, point on the upright]. */
export const linksOf = ({ links = [] }: SuspensionKind, present?: Points) =>
  links.filter((ends) => ends.every((name) => has(present, name)));

/** The links that a thread may lengthen, named by their body point. */
export const rodsOf = (kind: SuspensionKind, present?: Points): string[] =>
  linksOf(kind, present).map(([inner]) => inner);
