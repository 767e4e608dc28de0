/**
 * JSON text from outside. What it holds is counted before anything is made of it: a text of millions of empty objects, or
 * of an object with millions of names, takes a phone's memory and half a minute to build, and a moment to count.
 */
import { InputError } from '../input-error.ts';

const LONGEST_FILE = 50_000_000;
/** Values that any text may hold, and how many characters each more takes at the least, blanks apart: ours take twice as many. */
const ALWAYS = 200_000;
const EACH = 6;
/** Names in one object, and items in one list; ours have fewer. */
const MOST_NAMES = 200_000;
const MOST_ITEMS = 1_000_000;

/** What a text may hold beside what any may. */
interface Bounds {
  /** However long it is. */
  readonly values?: number;
  readonly deepest?: number;
}

/** Levels beyond which a text is no file of anybody's. */
const DEEPEST_TEXT = 1000;

/**
 * @param most characters
 * @throws InputError when the text is not JSON, is longer, holds more or is deeper
 */
export function parseJson(text: string, field: string, most = LONGEST_FILE, bounds: Bounds = {}): unknown {
  if (typeof text !== 'string' || text.length > most) {
    throw new InputError(field, typeof text, { is: 'text', least: 0, most });
  }
  refuseWide(text, field, { values: Number.POSITIVE_INFINITY, deepest: DEEPEST_TEXT, ...bounds });
  try {
    // A byte order mark is what some editors put before it.
    return JSON.parse(text.replace(/^\ufeff/, ''));
  } catch (error) {
    const reason = error instanceof Error ? error.message : 'not JSON';
    throw new InputError(field, text.slice(0, 40), { is: 'json', reason });
  }
}

const [BLANK, QUOTE, COMMA] = [0x20, 0x22, 0x2c];
const [OPEN_LIST, CLOSE_LIST, OPEN_OBJECT, CLOSE_OBJECT] = [0x5b, 0x5d, 0x7b, 0x7d];

/** One pass over the characters outside strings: every value but the first of all follows a bracket or a comma. */
function refuseWide(text: string, field: string, { values: most, deepest }: Required<Bounds>): void {
  /** Of each object and list that is open how many values it may hold, and how many it does. */
  const limits: number[] = [];
  const counts: number[] = [];
  let values = 0;
  let blanks = 0;
  const another = (i: number): void => {
    values += 1;
    const may = Math.min(most, ALWAYS + Math.floor((i - blanks) / EACH));
    if (values > may) throw new InputError(field, values, { is: 'values', most: may });
  };
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code <= BLANK) {
      blanks += 1;
    } else if (code === QUOTE) {
      i = endOfString(text, i);
    } else if (code === OPEN_OBJECT || code === OPEN_LIST) {
      limits.push(code === OPEN_OBJECT ? MOST_NAMES : MOST_ITEMS);
      counts.push(1);
      // The outermost is at no level yet.
      if (limits.length > deepest + 1) throw new InputError(field, limits.length, { is: 'levels', most: deepest });
      another(i);
    } else if (code === CLOSE_OBJECT || code === CLOSE_LIST) {
      limits.pop();
      counts.pop();
    } else if (code === COMMA) {
      another(i);
      const here = counts.length - 1;
      if (here < 0) continue;
      counts[here]! += 1;
      if (counts[here]! > limits[here]!)
        throw new InputError(field, counts[here], { is: 'values', most: limits[here]! });
    }
  }
}

/** Where the string that begins at a place ends. */
function endOfString(text: string, from: number): number {
  for (let end = text.indexOf('"', from + 1); end >= 0; end = text.indexOf('"', end + 1)) {
    let slashes = 0;
    while (text.charCodeAt(end - 1 - slashes) === 0x5c) slashes += 1;
    if (slashes % 2 === 0) return end;
  }
  return text.length;
}

/** Refuses what is nested deeper than so many levels, before anything walks into it. */
export function checkDepth(value: unknown, field: string, most: number): void {
  if (isDeeper(value, most)) throw new InputError(field, most + 1, { is: 'levels', most });
}

function isDeeper(value: unknown, most: number): boolean {
  if (typeof value !== 'object' || value === null) return false;
  if (Array.isArray(value)) return value.length > 0 && (most === 0 || value.some((one) => isDeeper(one, most - 1)));
  for (const name in value) {
    if (!Object.hasOwn(value, name)) continue;
    if (most === 0 || isDeeper((value as Readonly<Record<string, unknown>>)[name], most - 1)) return true;
  }
  return false;
}
