/** What is in shim packs: remembered as the app had them built, or said once where the adjusters stand. */
import type { AdjusterRef, CarPacks, Corner, Move, ShimCount } from '../../core/contract.ts';
import { packsAfter } from '../../core/records/rounds.ts';
import { tidy } from '../../core/units/plain.ts';
import type { Records } from './records.ts';
import { refKey, visitsOf, visitView } from './visits.ts';

/** Key of a pack's shims in the entry draft and among the typed texts of a reading. */
export const packKey = (ref: AdjusterRef): string => `in:${refKey(ref)}`;

/** What is in a car's packs as far as its records tell: after the last move of its last visit. */
export function lastPacks(all: Records, carId: string): CarPacks {
  for (const visit of visitsOf(all, carId)) {
    const round = visitView(all, visit.id)?.rounds.at(-1);
    if (round) return packsAfter(round.record.packs ?? {}, round.moves);
  }
  return {};
}

/** `3 1.5 1.5`, mm, shim by shim. */
export const packText = (shims: readonly ShimCount[]): string => oneByOne(shims).join(' ');

/** Thickest first. */
export function shimsOfText(text: string): readonly ShimCount[] {
  return counted(text.split(' ').filter(Boolean).map(Number));
}

/** mm */
export const thicknessOf = (shims: readonly ShimCount[]): number =>
  tidy(shims.reduce((sum, { size, count }) => sum + size * count, 0));

export const oneByOne = (shims: readonly ShimCount[]): number[] =>
  shims.flatMap(({ size, count }) => Array<number>(count).fill(size));

export function counted(sizes: readonly number[]): readonly ShimCount[] {
  const sorted = [...new Set(sizes)].sort((a, b) => b - a);
  return sorted.map((size) => ({ size, count: sizes.filter((one) => one === size).length }));
}

/** What a pack is built of when a move is done as its card says; nothing of what is no pack, or is none of its sizes. */
export function builtOf({ act, shims }: Move): readonly ShimCount[] | undefined {
  if (act.act !== 'change-shims') return undefined;
  const built = shims ?? counted(act.stack);
  return built.length > 0 || act.to === 0 ? built : undefined;
}

/** The packs of a list of what stands where. */
export function packsOf(
  list: readonly {
    readonly corner: Corner;
    readonly adjuster: { readonly id: string };
    readonly shims?: readonly ShimCount[];
  }[],
): CarPacks {
  const packs: Partial<Record<Corner, Record<string, readonly ShimCount[]>>> = {};
  for (const { corner, adjuster, shims } of list) if (shims) packs[corner] = { ...packs[corner], [adjuster.id]: shims };
  return packs;
}
