import type { Lack } from '../rule.ts';
import { jointsOf, rodsOf } from '../suspension/joints.ts';
import type { SuspensionKind } from '../suspension/kind.ts';
import type { AdjusterKind } from './kind.ts';

/** What an adjuster kind needs that this suspension lacks; nothing where it fits. */
export function misfit(kind: AdjusterKind, held: SuspensionKind): Lack | undefined {
  const { at, links } = { at: '', links: [''] };
  const needs = kind.touches({
    ...kind.sample.adjuster,
    id: '',
    kind: kind.kind,
    reference: kind.sample.from,
    at,
    links,
  });
  if (needs.line && !held.clamped) return 'strut';
  const seats = [...(held.seats ?? []), ...(held.lines ?? []).flat()];
  if (needs.seats?.some((seat) => !seats.includes(seat))) return 'ball-joints';
  if (needs.points && jointsOf(held).length === 0) return 'moving-points';
  if (needs.links && rodsOf(held).length === 0) return 'rods';
  return undefined;
}
