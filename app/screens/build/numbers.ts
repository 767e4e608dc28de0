/** Numbers of the build card between their texts and the core. */
import { formatLength, parseLength } from '../../../core/units/length.ts';
import { lengthToToe, toeToLength } from '../../../core/units/toe.ts';
import { type Units, units } from '../../state/preferences.ts';
import { angleText, readAngle } from '../../state/units.ts';

/** What is typed, by the path that the core names in its errors. */
export type Texts = Readonly<Record<string, string>>;

/**
 * The units of the card that is open: those of when its draft was begun, so that another choice in the settings half
 * way changes nothing that was typed.
 */
let card: Pick<Units, 'toe' | 'length'> | undefined;
export const cardUnits = (): Pick<Units, 'toe' | 'length'> => card ?? units.value;
const KEPT = { toe: '@toe', length: '@length' } as const;

export function useCardUnits(texts: Texts | undefined): void {
  const [toe, length] = [texts?.[KEPT.toe], texts?.[KEPT.length]];
  card = toe && length ? { toe: toe as Units['toe'], length: length as Units['length'] } : undefined;
}
export const keptUnits = (): Texts => ({ [KEPT.toe]: cardUnits().toe, [KEPT.length]: cardUnits().length });

/** What is shown for a length on file; as typed, it is read back to the same length. */
export function lengthText(mm: number): string {
  return cardUnits().length === 'mm'
    ? String(Number(mm.toFixed(6))).replace('-', '−')
    : formatLength(mm, { unit: 'inch', digits: 4, bare: true });
}

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

/** A ratio to 1: `16` or `16:1`. */
export const ratioOf = (text: string | undefined): unknown => {
  const ratio = plainOf(text?.replace(/\s*:\s*1\s*$/, ''));
  return typeof ratio === 'string' ? text : ratio;
};

/** A bare number as it is typed, with all its digits. */
export const plainText = (x: unknown): string =>
  typeof x === 'number' ? String(Number(x.toFixed(6))).replace('-', '−') : '';

/** An angle in the chosen way of writing where that says it exactly, else in decimal degrees with all its digits. */
export function exactAngle(degrees: number): string {
  const text = angleText(degrees);
  return Math.abs(readAngle(text) - degrees) < 1e-7 ? text : plainText(degrees);
}

/** What is on file where the text still shows just that, so that no edit elsewhere rounds it; else what was typed. */
export function unlessTyped<T>(
  text: string | undefined,
  onFile: T | undefined,
  show: (value: T) => string,
  read: (text: string | undefined) => unknown,
): unknown {
  return onFile !== undefined && text === show(onFile) ? onFile : read(text);
}

/** A window of toe in the chosen unit; a length has more digits here than a rack shows, so that it stays the same angle. */
export function toeWindowText(degrees: number, rimDiameter: number): string {
  const { toe } = cardUnits();
  if (toe === 'angle') return exactAngle(degrees);
  return formatLength(toeToLength(degrees, rimDiameter), {
    unit: toe,
    digits: toe === 'mm' ? 2 : 3,
    bare: true,
    decimal: units.value.decimal,
  });
}

/** @throws InputError */
export function toeWindowOf(text: string, rimDiameter: number): number {
  const { toe } = cardUnits();
  return toe === 'angle' ? readAngle(text) : lengthToToe(parseLength(text, { unit: toe }), rimDiameter);
}
