/** What screens called saved, noted outside of all that can be killed, and what a start then shows of it. */
import { canonical } from '../../../core/records/canonical.ts';
import { STORE_NAMES } from '../../../core/records/stored.ts';
import type { Noted, Screen, Written } from './notes.ts';

/** Everything in the database: text of the record by "store id". */
export type Found = ReadonlyMap<string, string>;
const GONE = '';
const keyOf = ([store, id]: Written): string => `${store} ${id}`;
/** What the app keeps for itself says nothing that a person has typed. */
const isInternal = (key: string): boolean => /^preferences (undo-restore|canary)$/.test(key);
/** Of the records; what is kept beside them is no claim. */
const isStore = (name: string): boolean => (STORE_NAMES as readonly string[]).includes(name);

export class Ledger {
  /** What a screen called saved; `GONE` where it was thrown away. */
  #claimed = new Map<string, string>();
  /** What was asked for since and nobody has called saved: either of it may be there. */
  #tried = new Map<string, Set<string>>();
  /** The same of a restore or an undo: all of it or none, or a screen says that it was cut off. */
  #bulk = new Map<string, string>();
  /** The last that called itself saved, and all that came after it. */
  #screens: Screen[] = [];
  /** How often a screen called something saved that it had not called so before. */
  claims = 0;

  /** The browser is dead: what the next one shows claims nothing of what was asked of this one. */
  #isOver = false;

  note(what: Noted): void {
    if (this.#isOver) return;
    if (what.kind === 'asked') this.#ask(what.changes, what.bulk);
    else this.#see(what);
  }

  #ask(changes: readonly Written[], bulk: boolean): void {
    for (const change of changes) {
      const [key, text] = [keyOf(change), change[2] ?? GONE];
      if (isInternal(key) || !isStore(change[0])) continue;
      if (bulk) this.#bulk.set(key, text);
      else {
        const texts = this.#tried.get(key) ?? new Set();
        texts.delete(text);
        this.#tried.set(key, texts.add(text));
      }
    }
  }

  #see({ state, said, screen }: Noted & { kind: 'screen' }): void {
    if (state !== 'saved') {
      this.#screens.push(screen);
      return;
    }
    if (this.#tried.size > 0) this.claims += 1;
    for (const [key, texts] of this.#tried) this.#claimed.set(key, [...texts].at(-1) ?? GONE);
    this.#tried.clear();
    this.#screens = [screen];
    if (this.#bulk.size > 0 && /Restored|Undone/.test(said)) this.#endBulk();
  }

  #endBulk(): void {
    for (const [key, text] of this.#bulk) this.#claimed.set(key, text);
    this.#bulk.clear();
    this.claims += 1;
  }

  end(): void {
    this.#isOver = true;
  }

  get lastSaved(): Screen | undefined {
    return this.#screens[0];
  }

  /** Screens that may come back: the last that called itself saved, or one that followed. */
  get screens(): readonly Screen[] {
    return this.#screens;
  }

  /** Records that were called saved and are not there as they were, nor as something newer. */
  lost(found: Found): string[] {
    const lost = [...this.#claimed].filter(([key, text]) => !this.#isKept(key, text, found));
    return lost.map(([key, text]) => `${key} of ${timeOf(text)}: ${timeOf(found.get(key) ?? GONE) || 'not there'}`);
  }

  #isKept(key: string, text: string, found: Found): boolean {
    const now = found.get(key) ?? GONE;
    if (isSame(now, text)) return true;
    const tried = [...(this.#tried.get(key) ?? []), ...(this.#bulk.has(key) ? [this.#bulk.get(key)!] : [])];
    if (tried.some((one) => isSame(now, one))) return true;
    if (now === GONE || text === GONE) return false;
    // Asked for in the last moment, and killed before the note of it came out; keys that waited come in one millisecond.
    const isLater = timeOf(now) > timeOf(text);
    return isLater || (key.startsWith('drafts ') && timeOf(now) === timeOf(text));
  }

  /** Of a restore or an undo that nobody called saved: how many of its changes are there, and how many there were to be. */
  bulk(found: Found): { readonly there: number; readonly all: number } {
    const changes = [...this.#bulk];
    return { there: changes.filter(([key, text]) => isSame(found.get(key) ?? GONE, text)).length, all: changes.length };
  }

  /** From here on what is there now counts as called saved: a screen shows it. */
  begin(found: Found): void {
    this.#isOver = false;
    this.#claimed = new Map([...found].filter(([key]) => !isInternal(key)));
    this.#tried.clear();
    this.#bulk.clear();
    this.#screens = [];
  }
}

const isSame = (a: string, b: string): boolean =>
  a === b || (a !== GONE && b !== GONE && canonical(JSON.parse(a)) === canonical(JSON.parse(b)));

/** The newest time that a record holds, which is when it was changed. */
const timeOf = (text: string): string =>
  [...text.matchAll(/\d{4}-\d\d-\d\dT[\d:.]+Z/g)]
    .map(([time]) => time)
    .sort()
    .at(-1) ?? '';
