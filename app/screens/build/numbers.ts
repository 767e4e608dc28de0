/** Numbers of the build card between their texts and the core. */
import { formatLength, parseLength } from '../../../core/units/length.ts';
import { units } from '../../state/preferences.ts';

/** What is typed, by the path that the core names in its errors. */
export type Texts = Readonly<Record<string, string>>;

/** What is shown for a length on file; as typed, it is read back to the same length. */
export function lengthText(mm: number): string {
  return units.value.length === 'mm'
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
  typedValue(text, (typed) => parseLength(typed, { unit: units.value.length }));
export const plainOf = (text: string | undefined): unknown =>
  typedValue(text, (typed) => {
    const value = Number(typed.trim().replace('−', '-').replace(',', '.'));
    if (Number.isNaN(value)) throw new Error('not a number');
    return value;
  });
