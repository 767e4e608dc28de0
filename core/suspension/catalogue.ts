import { doubleWishbone } from './double-wishbone.ts';
import { fiveLink } from './five-link.ts';
import type { SuspensionKind } from './kind.ts';

/** Every suspension kind: adding one is its file and a line here. */
export const suspensionKinds: Readonly<Record<string, SuspensionKind>> = Object.fromEntries(
  [doubleWishbone, fiveLink].map((kind) => [kind.kind, kind]),
);
