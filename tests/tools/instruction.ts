import type { AdjusterKind } from '../../core/adjuster/kind.ts';
import type { Adjuster, Corner, Position } from '../../core/contract.ts';
import { wordsOf } from '../../core/words/catalogue.ts';

/** What an adjuster's move is in English. */
export const instruction = (
  kind: AdjusterKind,
  adjuster: Adjuster,
  from: Position,
  to: Position,
  corner: Corner,
): string => wordsOf().act(kind.act(adjuster, from, to, { corner }));
