/** Numbers of the build card between their texts and the core. */
import { isOneOf, UNIT_CHOICES } from '../../../core/records/preferences.ts';
import { exactAngle as exactly } from '../../../core/units/exact-angle.ts';
import { formatLength, parseLength } from '../../../core/units/length.ts';
import { parseAngle } from '../../../core/units/parse.ts';
import { plain } from '../../../core/units/plain.ts';
import { bareLength, type ShopUnits, unitName } from '../../../core/units/shop.ts';
import { lengthToToe, toeToLength } from '../../../core/units/toe.ts';
import { type Units, units } from '../../state/preferences.ts';
import { readAngle } from '../../state/units.ts';

/** What is typed, by the path that the core names in its errors. */
export type Texts = Readonly<Record<string, string>>;

/**
 * The units of the card that is open: those of when its draft was begun, so that another choice in the settings half
 * way changes nothing that was typed.
 */
type CardUnits = Required<ShopUnits> & Pick<Units, 'toe' | 'toeParts'>;
let card: CardUnits | undefined;
export const cardUnits = (): CardUnits => card ?? units.value;
const KEPT = ['toe', 'toeParts', 'length', 'angle', 'decimal'] as const;

export function useCardUnits(texts: Texts | undefined): void {
  // An earlier version kept two of them.
  const kept = KEPT.flatMap((name) => (texts?.[`@${name}`] ? [[name, texts[`@${name}`]] as const] : []));
  const known = kept.every(([name, text]) => isOneOf(UNIT_CHOICES[name], text));
  card = kept.length > 0 && known ? { ...units.value, ...Object.fromEntries(kept) } : undefined;
}
export const keptUnits = (): Texts => Object.fromEntries(KEPT.map((name) => [`@${name}`, cardUnits()[name]]));

const withSign = (x: number): string => plain(x, 6).replace('.', cardUnits().decimal);

/** What is shown for a length on file; as typed, it is read back to the same length. */
export const lengthText = (mm: number): string =>
  cardUnits().length === 'mm' ? withSign(mm) : bareLength(mm, cardUnits());

/** The value of a text, or the text itself where it has none; nothing for an empty one. */
export function typedValue(text: string | undefined, read: (text: string) => number | undefined): unknown {
  if (!text?.trim()) return undefined;
  try {
    return read(text);
  } catch {
    return text;
  }
}
export const lengthOf = (text: string | undefined): unknown =>
  typedValue(text, (typed) => parseLength(typed, { unit: cardUnits().length }));
export const angleOf = (text: string | undefined): unknown => typedValue(text, readAngle);
export const plainOf = (text: string | undefined): unknown =>
  typedValue(text, (typed) => {
    const value = Number(typed.trim().replace('−', '-').replace(',', '.'));
    if (Number.isNaN(value)) throw new Error('not a number');
    return value;
  });

/** A number in a unit of the core as the card shows it: lengths and angles in the shop's. */
export function unitText(x: unknown, unit: string): string {
  if (typeof x !== 'number') return '';
  if (isLengthUnit(unit)) return lengthText(x);
  return unit === 'degrees' && cardUnits().angle === 'degrees-minutes' ? exactAngle(x) : plainText(x);
}

/** The same read back; the text itself where it has no value. */
export function unitOf(text: string | undefined, unit: string): unknown {
  if (isLengthUnit(unit)) return lengthOf(text);
  return unit === 'degrees' ? typedValue(text, (typed) => parseAngle(typed, { limit: 1e6 })) : plainOf(text);
}
const isLengthUnit = (unit: string): boolean => /^mm\b/.test(unit);
/** What stands behind such a field's label. */
export const unitWord = (unit: string): string =>
  unit === 'degrees' && cardUnits().angle === 'degrees-minutes' ? '' : unitName(unit, cardUnits());

/** A ratio to 1: `16` or `16:1`. */
export const ratioOf = (text: string | undefined): unknown => {
  const ratio = plainOf(text?.replace(/\s*:\s*1\s*$/, ''));
  return typeof ratio === 'string' ? text : ratio;
};

/** A bare number as it is typed, with all its digits. */
export const plainText = (x: unknown): string => (typeof x === 'number' ? withSign(x) : '');

/** An angle in the chosen way of writing, with all its digits. */
export const exactAngle = (degrees: number): string => exactly(degrees, cardUnits());

/** What is on file where the text still shows just that, so that no edit elsewhere rounds it; else what was typed. */
export function unlessTyped<T>(
  text: string | undefined,
  onFile: T | undefined,
  show: (value: T) => string,
  read: (text: string | undefined) => unknown,
): unknown {
  return onFile !== undefined && text === show(onFile) ? onFile : read(text);
}

type ToeAngle = 'toe' | 'totalToe';
/** Lengths of both wheels add up; the sine of the sum of their angles does not. */
const wheelsIn = (angle: ToeAngle): number => (angle === 'totalToe' ? 2 : 1);

/**
 * A window of toe in the chosen unit; a length has more digits here than a rack shows, so that it stays the same angle.
 * Without a diameter there is no length: it is shown as an angle, with its mark.
 */
export function toeWindowText(degrees: number, diameter: number | undefined, angle: ToeAngle): string {
  const { toe, toeParts, decimal } = cardUnits();
  if (toe === 'angle') return exactAngle(degrees);
  if (!diameter) return /°/.test(exactAngle(degrees)) ? exactAngle(degrees) : `${exactAngle(degrees)}°`;
  const mm = toeToLength(degrees / wheelsIn(angle), diameter) * wheelsIn(angle);
  const inParts = toe === 'inch' && toeParts !== 'decimal' && fractionOf(mm);
  return inParts || formatLength(mm, { unit: toe, digits: toe === 'mm' ? 2 : 3, bare: true, decimal });
}

/** What is a whole number of parts of an inch, but for what the sine of so small an angle rounds. */
function fractionOf(mm: number): string | undefined {
  const fraction = 128;
  const parts = (mm / 25.4) * fraction;
  return Math.abs(parts - Math.round(parts)) < 0.002
    ? formatLength(mm, { unit: 'inch', fraction, bare: true })
    : undefined;
}

/**
 * What a window of toe is typed in: an angle, or a length at the diameter of the maker's figures; one with its marks is
 * an angle in any shop.
 * @throws InputError
 */
export function toeWindowOf(text: string, diameter: number | undefined, angle: ToeAngle): WindowText {
  const { toe } = cardUnits();
  if (toe === 'angle' || /[°'′’]/.test(text)) return { read: readAngle, from: (degrees) => degrees };
  const wheels = wheelsIn(angle);
  return {
    read: (one) => parseLength(one, { unit: toe }),
    from: (mm) => lengthToToe(mm / wheels, diameter ?? 0) * wheels,
  };
}

/** How a figure of a window is read, and what the core has of it. */
export interface WindowText {
  readonly read: (text: string) => number;
  readonly from: (value: number) => number;
}
