/**
 * A reading under the thumb: what each key does to the cells, so that a figure lands in its own, however
 * fast it is typed. Pure: the time of a key comes with it.
 *
 * A cell walks on by itself once it has as many decimals as the rack shows. What comes next may be the next figure, or one
 * more decimal of the one before: only the keys after it tell. So a digit just after a walk-on stays with the cell before,
 * as a decimal more, until a point shows that it began the next figure: a decimal too many changes a figure by next to
 * nothing, a whole number on the wrong wheel by all of it.
 */
import { type Field, isTape, isToe } from './fields.ts';
import type { Units } from './preferences.ts';

/** The caret of an entry that has been walked through. */
export const END = 'end';

/** ms after a walk-on in which a digit still counts as one of the figure before. */
export const GRACE = 500;

const LONGEST = 16;

/** The last step to the next cell that the form took by itself, as long as it bears on the keys that come. */
interface Walk {
  readonly from: string;
  /** When its last digit was typed, ms. */
  readonly at: number;
  /** Digits since, that stay with the cell before until a point claims them. */
  readonly spilt: string;
  /** The only digit of the cell that is up, where it came later than that. */
  readonly begun?: string;
  /** Whether that digit is a decimal of the cell before was asked. */
  readonly asked?: true;
  /** Next has said that the figure was complete. */
  readonly complete?: true;
}

/** Why a key did not do what it usually does. */
export type Word = 'empty' | 'alone' | 'not-empty';

export interface Typing {
  readonly texts: Readonly<Record<string, string>>;
  /** The cell that is up, or `END`. */
  readonly cursor: string;
  readonly walk?: Walk | undefined;
  /** The cell that was up before this one, with a figure in it. */
  readonly taken?: string | undefined;
  /** The caret has come to a cell with a figure in it: what is typed now is another figure. */
  readonly fresh?: boolean;
  /** ± was the last key: digits after it are a figure below zero. */
  readonly signed?: true | undefined;
  readonly word?: Word | undefined;
}

/** What the keys stand on. */
export interface Pad {
  /** In the order in which they are walked through. */
  readonly fields: readonly Field[];
  readonly units: Units;
  /** How many decimals the rack shows of it; 0 never walks on by itself. */
  readonly decimals: (field: Field) => number;
  /** One figure is corrected: there is no next cell. */
  readonly alone?: boolean;
}

const SKIPPED = '@skip:';
/** Among the typed texts: the cell was skipped. */
export const skipKey = (field: string): string => SKIPPED + field;

const isDigit = (key: string): boolean => /^\d$/.test(key);
/** A sign or a point alone is nothing yet; a word is something, and no reading. */
export const isEmpty = (text = ''): boolean => !/[\p{L}\d]/u.test(text);

/** The text after a key: a digit, `.`, `±`, `⌫`, or any other character of a real keyboard, kept as typed. */
export function typed(text: string, key: string, units: Units, angle: Field['angle']): string {
  if (key === '±') return text.startsWith('−') ? text.slice(1) : `−${text}`;
  if (key === '⌫') return text.slice(0, -1);
  const minutes = units.angle === 'degrees-minutes' && !isLength(units, angle);
  const point = isFraction(units, angle) ? '/' : minutes ? '°' : units.decimal;
  const character = key === '.' ? point : key;
  return text.length >= LONGEST ? text : text + character;
}

/** Digits after the point. */
export const decimalsIn = (text: string): number => /^[−+-]?\d*[.,](\d*)$/.exec(text)?.[1]?.length ?? 0;

/** Whether the text has all the digits that the rack shows: its decimals, two digits of minutes, or the parts of an inch. */
export const isFull = (text: string, decimals: number, fraction = false): boolean =>
  fraction
    ? /\/(2|4|8|16|32)$/.test(text)
    : (decimals > 0 && decimalsIn(text) >= decimals) || /^−?\d*°\d{2}$/.test(text);

/** Whether a figure is typed as parts of an inch, as a tape has them. */
export const isFraction = (units: Units, angle: Field['angle']): boolean =>
  isToe(angle) && units.toe === 'inch' && units.toeParts !== 'decimal';

export const isLength = (units: Units, angle: Field['angle']): boolean =>
  isTape(angle) || (isToe(angle) && units.toe !== 'angle');

/** The entry after a key: one of the pad's, or a character of a real keyboard. `at`: when it was touched, ms. */
export function press(typing: Typing, key: string, at: number, pad: Pad): Typing {
  const { word: _, ...asked } = typing;
  if (key === 'next') return next(asked, pad);
  if (key === 'skip') return skip(asked, pad);
  if (key === '⌫') return rubOut(asked, pad);
  const entry = key === '.' ? asked : answered(asked);
  if (isDigit(key)) return digit(entry, key, at, pad);
  return other(entry, key, at, pad);
}

/** A cell that was touched is up, as it is. */
export const pick = (typing: Typing, cursor: string): Typing =>
  cursor === typing.cursor ? typing : { texts: typing.texts, taken: typing.taken, ...arrived(typing.texts, cursor) };

const arrived = (texts: Typing['texts'], cursor: string) => ({ cursor, fresh: Boolean(texts[cursor]) });

function next(entry: Typing, pad: Pad): Typing {
  const { texts, cursor, walk } = entry;
  const text = texts[cursor] ?? '';
  // After a walk-on it says that the figure before was complete, and passes nothing.
  if (walk && !walk.complete && walk.begun === undefined) {
    return { ...entry, walk: { ...walk, spilt: '', complete: true } };
  }
  if (cursor === END) return entry;
  if (isEmpty(text)) return { ...entry, word: 'empty' };
  if (walk?.begun !== undefined && text === walk.begun && !walk.asked) {
    return { ...entry, walk: { ...walk, asked: true }, word: 'alone' };
  }
  return { texts, taken: cursor, ...arrived(texts, after(cursor, pad)) };
}

/** A digit that was asked about and is followed by another figure: it was a decimal of the one before. */
function answered(entry: Typing): Typing {
  const { walk, texts, cursor } = entry;
  if (!walk?.asked || texts[cursor] !== walk.begun) return entry;
  const before = written(texts, walk.from, `${texts[walk.from] ?? ''}${walk.begun}`);
  return { ...entry, texts: written(before, cursor, ''), walk: undefined };
}

function skip(entry: Typing, pad: Pad): Typing {
  const { texts, cursor } = entry;
  if (cursor === END) return entry;
  if (!isEmpty(texts[cursor])) return { ...entry, word: 'not-empty' };
  const put = { ...written(texts, cursor, ''), [skipKey(cursor)]: 'yes' };
  return { ...entry, texts: put, walk: undefined, ...arrived(texts, after(cursor, pad)) };
}

function rubOut(entry: Typing, pad: Pad): Typing {
  const { texts, cursor, walk } = entry;
  // A decimal too many goes from where it went; the figure that was complete stays.
  const at = walk?.spilt ? walk.from : cursor;
  const field = fieldOf(at, pad);
  if (!field) return entry;
  const put = written(texts, at, typed(texts[at] ?? '', '⌫', pad.units, field.angle));
  if (!walk?.spilt) return { ...entry, texts: put, walk: undefined, fresh: false };
  return { ...entry, texts: put, walk: { ...walk, spilt: walk.spilt.slice(0, -1) } };
}

function digit(entry: Typing, key: string, at: number, pad: Pad): Typing {
  const { walk, texts, cursor } = entry;
  if (walk && !walk.complete && walk.begun === undefined && at - walk.at <= GRACE && canGrow(texts[walk.from])) {
    const before = (texts[walk.from] ?? '') + key;
    // No figure begins with 0 and another digit: that 0 was a decimal.
    const spilt = walk.spilt.startsWith('0') ? key : walk.spilt + key;
    return { ...entry, texts: written(texts, walk.from, before), walk: { ...walk, at, spilt } };
  }
  if (cursor === END) return entry;
  const begins = walk && !walk.complete && walk.begun === undefined && (entry.fresh || isEmpty(texts[cursor]));
  if (begins && canGrow(texts[walk.from])) {
    const on = typeIn({ ...entry, walk: undefined }, key, at, pad);
    return { ...on, walk: { ...walk, spilt: '', begun: key } };
  }
  if (walk?.begun && texts[cursor] === walk.begun && isNoBeginning(walk.begun + key, cursor, pad)) {
    return wasADecimal(entry, walk, key);
  }
  return typeIn(entry, key, at, pad);
}

/** Whether no figure of the cell begins like this: with 0 and a digit, or with more than it can have. */
function isNoBeginning(two: string, cursor: string, pad: Pad): boolean {
  const field = fieldOf(cursor, pad);
  return two.startsWith('0') || (field !== undefined && Number(two) > mostBefore(field, pad.units));
}

/** The digit that stands alone in the cell that is up, and another after it: it belongs to the figure before. */
function wasADecimal(entry: Typing, walk: Walk, key: string): Typing {
  const { texts, cursor } = entry;
  const before = written(texts, walk.from, `${texts[walk.from] ?? ''}${walk.begun}`);
  return { ...entry, texts: written(before, cursor, key), walk: { ...walk, begun: key } };
}

/** A point, a sign, or what else a real keyboard has: it is of the cell that is up, with the digits that began it. */
function other(entry: Typing, key: string, at: number, pad: Pad): Typing {
  const { walk, texts, cursor } = entry;
  const field = fieldOf(cursor, pad);
  if (!field) return entry;
  if (key !== '.' || !walk?.spilt) return typeIn({ ...entry, walk: undefined }, key, at, pad);
  const claimed = beginning(walk.spilt, field, pad.units);
  const before = texts[walk.from] ?? '';
  const back = written(texts, walk.from, before.slice(0, before.length - claimed.length));
  return typeIn({ texts: written(back, cursor, claimed), cursor, taken: walk.from }, key, at, pad);
}

/** Of the digits before a point, the last ones: as many as a figure of this field can have there. */
function beginning(spilt: string, field: Field, units: Units): string {
  const most = mostBefore(field, units);
  for (let i = 0; i < spilt.length; i++) {
    const part = spilt.slice(i);
    if (part.length === 1 || (!part.startsWith('0') && Number(part) <= most)) return part;
  }
  return spilt.slice(-1);
}

/** The largest whole number that stands before the point of such a figure, a wreck’s among them. Trade practice, no source. */
function mostBefore({ angle }: Field, units: Units): number {
  if (isLength(units, angle) && isToe(angle)) return units.toe === 'inch' ? 9 : 99;
  return {
    ...{ camber: 19, toe: 19, totalToe: 19, caster: 19, sai: 29, pinionAngle: 29 },
    ...{ steeringWheel: 99, lateral: 99, rideHeight: 1999 },
  }[angle];
}

function typeIn(entry: Typing, key: string, at: number, pad: Pad): Typing {
  const { texts, cursor, signed, fresh } = entry;
  const field = fieldOf(cursor, pad);
  if (!field) return entry;
  const decimals = pad.decimals(field);
  const fraction = isFraction(pad.units, field.angle);
  const old = texts[cursor] ?? '';
  // A figure that is complete is typed anew, not made longer.
  const anew = (isDigit(key) || key === '.') && (fresh || isFull(old, decimals, fraction));
  const text = typed(anew ? (signed ? '−' : '') : old, key, pad.units, field.angle);
  const put = written(texts, cursor, text);
  if (isDigit(key) && isFull(text, decimals, fraction)) {
    return { texts: put, taken: cursor, walk: { from: cursor, at, spilt: '' }, ...arrived(put, after(cursor, pad)) };
  }
  const { signed: __, walk: ___, ...rest } = entry;
  return { ...rest, texts: put, ...(key === '±' ? !signed && { signed: true } : { fresh: false }) };
}

/** A text in its cell; one that holds anything is not skipped any more. */
function written(texts: Typing['texts'], field: string, text: string): Typing['texts'] {
  const { [skipKey(field)]: _, ...rest } = texts;
  return { ...rest, [field]: text };
}

/** Minutes have two digits and no more; a decimal number can always have one more. */
const canGrow = (text = ''): boolean => decimalsIn(text) > 0 && text.length < LONGEST;

const fieldOf = (id: string, { fields }: Pad): Field | undefined => fields.find((field) => field.id === id);

function after(cursor: string, { fields, alone }: Pad): string {
  return alone ? END : (fields[fields.findIndex(({ id }) => id === cursor) + 1]?.id ?? END);
}
