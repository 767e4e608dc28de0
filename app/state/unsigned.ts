/** First load. A visit that was closed as it stood, without anybody signing it off: one of its marks, of that closing. */
import type { Facts } from '../../core/records/visit-facts.ts';

/** A visit may be closed so on one phone and signed off on another: each closing says it of itself. */
export const unsignedKey = (closed: string): string => `unsigned:${closed}`;

export const isUnsigned = ({ closed, checks }: Facts): boolean =>
  closed !== undefined && checks?.[unsignedKey(closed)] === 'ok';
