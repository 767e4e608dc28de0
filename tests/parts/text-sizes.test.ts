/** Sizes of letters as they are built: what they were where nobody has chosen a size, and larger where somebody has. */
import { describe, expect, it } from 'vitest';
import { textSize, textSizes } from '../../app/terminal/text-sizes.ts';

/** px of `0.875rem` or `calc(24px + 1rem)` where the phone's letters are `root` px. */
function pxOf(size: string, root: number): number {
  const [, plain, most = '0', rem = '0'] = /^(?:([\d.]+)rem|calc\(([\d.]+)px \+ ([\d.]+)rem\))$/.exec(size) ?? [];
  return plain ? Number(plain) * root : Number(most) + Number(rem) * root;
}

describe('a size of letters', () => {
  it.each([11, 12, 14, 15, 16, 17, 23, 25, 40])('%d px is itself on a phone that nobody has set', (px) => {
    expect(pxOf(textSize(`${px}px`), 16)).toBeCloseTo(px, 9);
  });

  it('doubles with letters of 200 % up to 16 px, and larger ones grow by as much, never one past another', () => {
    const sizes = Array.from({ length: 38 }, (_, i) => i + 10);
    const large = sizes.map((px) => pxOf(textSize(`${px}px`), 32));
    sizes.forEach((px, i) => {
      expect(large[i]).toBeCloseTo(px <= 16 ? 2 * px : px + 16, 9);
    });
    expect([...large].sort((a, b) => a - b)).toEqual(large);
  });

  it.each(['calc(15px)', 'inherit', '1rem', '9pt', '0.8rem'])('%s is left as it is', (size) => {
    expect(textSize(size)).toBe(size);
  });

  it('is found in the short form too, and nothing else there is', () => {
    const short = { value: '400 16px / 1.35 var(--face)' };
    textSizes.Declaration.font(short);
    expect(short.value).toBe('400 1rem / 1.35 var(--face)');
    const other = { value: 'inherit' };
    textSizes.Declaration.font(other);
    expect(other.value).toBe('inherit');
  });
});
