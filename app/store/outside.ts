/**
 * First load. What is remembered outside the database, so that the loss of it is known: how many writes were said to be
 * saved, and a loss that nobody has seen yet. Where the browser gives no such place, nothing is remembered.
 */

import { type Mark, type MarkFile, markFile } from './mark-file.ts';

export type { Mark };

/** What the browser has lost of what was said to be saved. `backup`: when all was last saved to a file, ISO 8601. */
export type Loss =
  /** There is no database where there was one. */
  | { readonly kind: 'gone'; readonly backup?: string }
  /** It is an older state of it, by so many writes. */
  | { readonly kind: 'behind'; readonly writes: number; readonly backup?: string }
  /** It was cleared while the app was open; so many records were written back from memory. */
  | { readonly kind: 'put-back'; readonly records: number };

/** A restore or an undo. */
export interface Done {
  /** When it began, ISO 8601; its name as well. */
  readonly at: string;
  readonly kind: 'restore' | 'undo';
}
/** A restore or an undo that has begun to write and has not ended. */
export interface UnderWay extends Done {
  /** Of an undo: of what. */
  readonly of?: string;
  /** Of a restore: when its backup was made, ISO 8601. */
  readonly made?: string;
  /** Records that it goes through. */
  readonly all: number;
}

export interface Outside {
  readonly mark: Kept<Mark>;
  readonly markFile: MarkFile;
  readonly loss: Kept<Loss>;
  /** When all was last saved to a file. */
  readonly backup: Kept<string>;
  /** A restore that has begun to write and not ended. */
  readonly underWay: Kept<UnderWay>;
}
export interface Kept<T> {
  read(): T | undefined;
  keep(value: T | undefined): void;
}

/** @param name of the database that it is about */
export function outsideOf(name: string): Outside {
  const isMark = (value: unknown): value is Mark =>
    isObject(value) && typeof value.database === 'string' && Number.isInteger(value.writes);
  const isLoss = (value: unknown): value is Loss =>
    isObject(value) && ['gone', 'behind', 'put-back'].includes(value.kind as string);
  const isUnderWay = (value: unknown): value is UnderWay =>
    isObject(value) && typeof value.at === 'string' && (value.kind === 'restore' || value.kind === 'undo');
  const isText = (value: unknown): value is string => typeof value === 'string';
  return {
    mark: kept(`${name}-writes`, isMark),
    markFile: markFile(`${name}-writes`, isMark),
    loss: kept(`${name}-loss`, isLoss),
    backup: kept(`${name}-backup`, isText),
    underWay: kept(`${name}-restoring`, isUnderWay),
  };
}

/** Private windows and strict settings throw at the first touch, or when there is no room. */
function kept<T>(key: string, is: (value: unknown) => value is T): Kept<T> {
  return {
    read() {
      try {
        const value: unknown = JSON.parse(localStorage.getItem(key) ?? 'null');
        return is(value) ? value : undefined;
      } catch {
        return undefined;
      }
    },
    keep(value) {
      try {
        if (value === undefined) localStorage.removeItem(key);
        else localStorage.setItem(key, JSON.stringify(value));
      } catch {
        // What cannot be remembered here is only a check less.
      }
    },
  };
}

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;
