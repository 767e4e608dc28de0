/** Which mutants of a room are tried: all, or those of some places in its code that a seed draws. */

/** As Stryker reports it: lines and columns from 1 on, the end not included. */
export interface Mutant {
  readonly fileName: string;
  readonly location: { readonly start: Position; readonly end: Position };
  readonly mutatorName: string;
  readonly replacement: string;
}
export interface Position {
  readonly line: number;
  readonly column: number;
}

/** The place of a mutant: file and range as Stryker takes them, columns from 0 on. */
export const rangeOf = ({ fileName, location: { start, end } }: Mutant): string =>
  `${fileName}:${start.line}:${start.column - 1}-${end.line}:${end.column - 1}`;

/** Places in the order in which a seed draws them, until they hold `least` mutants. */
export function draw(mutants: readonly Mutant[], seed: number, least: number): string[] {
  const count = new Map<string, number>();
  for (const mutant of mutants) count.set(rangeOf(mutant), (count.get(rangeOf(mutant)) ?? 0) + 1);
  const order = [...count.keys()].sort((a, b) => hash(`${seed} ${a}`) - hash(`${seed} ${b}`));
  let held = 0;
  return order.filter((place) => {
    const wanted = held < least;
    held += count.get(place) ?? 0;
    return wanted;
  });
}

/** FNV-1a and a last mix: the same number for the same text on every machine. */
function hash(text: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  return (h ^ (h >>> 13)) >>> 0;
}
