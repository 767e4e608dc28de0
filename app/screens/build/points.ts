/** Where the points of a suspension are as far as they are typed, for its drawing. */
import type { Vec3 } from '../../../core/contract.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import type { SuspensionKind } from '../../../core/suspension/kind.ts';
import { pointsFromTape } from '../../../core/suspension/tape/points-from-tape.ts';
import type { Texts } from './numbers.ts';
import { isByTape, PLACES, placeOf, suspensionOf } from './suspension-texts.ts';

/** Points that a kind may do without, all or none. */
export const optionalPoints = (kind: SuspensionKind | undefined): readonly string[] => kind?.optionalPoints ?? [];

export function pointsOf(texts: Texts, path: string): Readonly<Record<string, Vec3>> {
  const kind = texts[`${path}.kind`] ?? '';
  if (isByTape(texts, path)) return builtPoints(texts, path, kind);
  const found: Record<string, Vec3> = {};
  for (const name of suspensionKinds[kind]?.points ?? []) {
    const [x, y, z] = PLACES.map((i) => placeOf(texts, path, name, i));
    if (typeof x === 'number' && typeof y === 'number' && typeof z === 'number') found[name] = [x, y, z];
  }
  return found;
}

/** Nothing until the tape has all that it must have. */
function builtPoints(texts: Texts, path: string, kind: string): Readonly<Record<string, Vec3>> {
  try {
    const { tape } = suspensionOf(texts, path, undefined) as { tape: Readonly<Record<string, unknown>> };
    return pointsFromTape({ ...tape, kind }).points;
  } catch {
    return {};
  }
}
