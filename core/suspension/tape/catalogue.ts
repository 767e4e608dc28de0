import { byKind } from '../by-kind.ts';
import { doubleWishboneTape } from './double-wishbone.tape.ts';
import { fiveLinkTape } from './five-link.tape.ts';
import { strutTape } from './strut.tape.ts';
import type { TapeLayout } from './tape.ts';

/**
 * The dimensions that a tape can take of a suspension kind, and how its points are built from them, by kind: one that a
 * tape can take adds its file and a line here. Apart from the kinds themselves, which are on the first load.
 */
export const tapeLayouts: Readonly<Record<string, TapeLayout>> = byKind([doubleWishboneTape, strutTape, fiveLinkTape]);
