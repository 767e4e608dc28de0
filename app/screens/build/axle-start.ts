/** What an axle starts from, as another car of the build has shown: one text of the card, as nobody types in it. */
import type { AxleName, AxleStart } from '../../../core/contract.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import type { Texts } from './numbers.ts';

export const startPath = (axle: AxleName): string => `car.${axle}.start`;

export const startTexts = (start: AxleStart | undefined, axle: AxleName): Texts =>
  start ? { [startPath(axle)]: JSON.stringify(start) } : {};

/**
 * As the text says. Nothing where the axle is no longer of that build: another suspension, or an adjuster gone whose chart
 * was learned.
 * @param adjusters ids of those that are fitted, of both sides
 */
export function startOf(
  texts: Texts,
  axle: AxleName,
  kind: string,
  adjusters: readonly string[],
): AxleStart | undefined {
  const start = startOfText(texts, axle);
  const points = suspensionKinds[kind]?.points ?? [];
  const isHere = (name: string): boolean => {
    const [, own = ''] = name.split('.');
    return points.includes(own) || adjusters.includes(own);
  };
  return start?.parts.every(({ unknowns }) => unknowns.every(isHere)) ? start : undefined;
}

/** The same, be it of this build or not. */
export const startOfText = (texts: Texts, axle: AxleName): AxleStart | undefined => parsed(texts[startPath(axle)]);

/** A draft may come from a backup: what cannot be read there starts nothing, and what is wrong in it the core refuses. */
function parsed(text: string | undefined): AxleStart | undefined {
  try {
    const start = JSON.parse(text || 'null') as Partial<AxleStart> | null;
    const isList = Array.isArray(start?.parts) && start.parts.every((part) => Array.isArray(part?.unknowns));
    return start && typeof start.of === 'string' && isList ? (start as AxleStart) : undefined;
  } catch {
    return undefined;
  }
}
