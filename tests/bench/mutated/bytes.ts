/** A text changed as a fault of a disk, a line or an editor would: cut off, flipped, doubled, a line lost. */
import { BAD_TEXTS, type Dice } from './bad.ts';

export function damaged(text: string, dice: Dice): { readonly text: string; readonly says: string } {
  const at = Math.floor(dice.next() * text.length);
  const to = Math.min(text.length, at + 1 + Math.floor(dice.next() ** 3 * 200));
  const [before, piece, after] = [text.slice(0, at), text.slice(at, to), text.slice(to)];
  const lines = text.split('\n');
  const line = Math.floor(dice.next() * lines.length);
  const flipped = String.fromCharCode(text.charCodeAt(at) ^ (1 << Math.floor(dice.next() * 8)));
  const ways: readonly (readonly [string, () => string])[] = [
    ['cut off', () => before],
    ['begins in the middle', () => piece + after],
    ['a piece is lost', () => before + after],
    ['a piece is doubled', () => before + piece + piece + after],
    ['a piece is a stranger', () => before + dice.one(BAD_TEXTS) + after],
    ['a byte is flipped', () => before + flipped + text.slice(at + 1)],
    [
      'a figure is another',
      () => before + (text[at]?.replace(/\d/, String(Math.floor(dice.next() * 10))) ?? '') + text.slice(at + 1),
    ],
    ['twice', () => text + text],
    ['a mark of an editor', () => `\ufeff${text}`],
    ['a line is lost', () => lines.filter((_, i) => i !== line).join('\n')],
    ['a line is doubled', () => lines.flatMap((one, i) => (i === line ? [one, one] : [one])).join('\n')],
    ['other ends of lines', () => lines.join('\r\n')],
    ['a name is there twice', () => text.replace(/"(\w+)":/, (all) => `${all}1,${all}`)],
    ['empty', () => ''],
  ];
  const [says, work] = dice.one(ways);
  return { text: work(), says: `${says} at ${at}` };
}
