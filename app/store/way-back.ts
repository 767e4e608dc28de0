/**
 * What is kept beside the database of a restore or an undo: what each record was before, in pieces, each kept before its
 * piece is written; which of them is the last that was done; and which one is under way.
 */
import type { Beside } from './kept-beside.ts';
import type { Done, Kept as KeptOutside, UnderWay } from './outside.ts';
import { join, type Step } from './undo.ts';

export interface WayBack {
  /** The last one that was done. */
  last(): Promise<Done | undefined>;
  underWay(): Promise<UnderWay | undefined>;
  begin(what: UnderWay): Promise<void>;
  /** It is done, and nothing of those before it is of use. */
  end(what: Done): Promise<void>;
  /**
   * Kept again under its number, a piece takes the place of what it was.
   * @param through how many records it has gone through with this piece
   */
  keepPiece(at: string, number: number, through: number, steps: readonly Step[]): Promise<void>;
  /** All steps of it, those of one record as one. */
  steps(at: string): Promise<readonly Step[]>;
  /** How many pieces there are of it, and how many records it has gone through. */
  progress(at: string): Promise<{ readonly pieces: number; readonly through: number }>;
}

const LAST = 'last';
const UNDER_WAY = 'under-way';
const digits = (n: number): string => String(n).padStart(9, '0');

/** @param outside the flag once more, for a browser that loses databases and has no files */
export function wayBack(beside: Beside, outside: KeptOutside<UnderWay>): WayBack {
  // Names of files: no colons.
  const prefix = (at: string): string => `step-${at.replace(/\W/g, '-')}-`;
  const keep = (name: string, value: unknown) => beside.keep(name, new Blob([JSON.stringify(value)]));
  async function read<T>(name: string): Promise<T | undefined> {
    const content = await beside.read(name);
    // It was written here, as such.
    return content && (JSON.parse(await content.text()) as T);
  }
  const piecesOf = async (at: string): Promise<readonly string[]> =>
    (await beside.names()).filter((name) => name.startsWith(prefix(at)));
  const last = () => read<Done>(LAST);

  return {
    last,
    async underWay() {
      const found = (await read<UnderWay>(UNDER_WAY)) ?? outside.read();
      const done = await last();
      // A flag that was taken away may come back with a browser that was killed.
      return found && (!done || found.at > done.at) ? found : undefined;
    },
    async begin(what) {
      outside.keep(what);
      await keep(UNDER_WAY, what);
    },
    async end({ at, kind }) {
      await keep(LAST, { at, kind } satisfies Done);
      await beside.forget(UNDER_WAY);
      outside.keep(undefined);
      const old = (await beside.names()).filter((name) => name.startsWith('step-') && !name.startsWith(prefix(at)));
      for (const name of old) await beside.forget(name);
    },
    keepPiece: (at, number, through, steps) => keep(`${prefix(at)}${digits(number)}-${digits(through)}`, steps),
    async steps(at) {
      const all = new Map<string, Step>();
      for (const name of await piecesOf(at)) join(all, (await read<readonly Step[]>(name)) ?? []);
      return [...all.values()];
    },
    async progress(at) {
      const pieces = await piecesOf(at);
      return { pieces: pieces.length, through: Math.max(0, ...pieces.map((name) => Number(name.slice(-9)))) };
    },
  };
}
