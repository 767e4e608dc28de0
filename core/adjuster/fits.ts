import { jointsOf, rodsOf, type SuspensionKind } from '../suspension/kind.ts';
import type { AdjusterKind } from './kind.ts';

/** What an adjuster kind needs that this suspension lacks, in words; nothing where it fits. */
export function misfit(kind: AdjusterKind, held: SuspensionKind): string | undefined {
  const { at, links } = { at: '', links: [''] };
  const needs = kind.touches({
    ...kind.sample.adjuster,
    id: '',
    kind: kind.kind,
    reference: kind.sample.from,
    at,
    links,
  });
  if (needs.line && !held.clamped) return 'a suspension with a strut';
  const seats = [...(held.seats ?? []), ...(held.lines ?? []).flat()];
  if (needs.seats?.some((seat) => !seats.includes(seat))) return 'an axle with ball joints of its own';
  if (needs.points && jointsOf(held).length === 0) return 'a suspension with points that can move';
  if (needs.links && rodsOf(held).length === 0) return 'a suspension with rods';
  return undefined;
}
