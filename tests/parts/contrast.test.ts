/** WCAG 2.2 contrast of every pair of tokens that meet on a screen, in each theme, read from the style sheet itself. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const css = readFileSync(new URL('../../app/style/tokens.css', import.meta.url), 'utf8').replace(
  /\/\*[\s\S]*?\*\//g,
  '',
);

type Tokens = Record<string, string>;
/** Declarations of the rule with this selector; for nested rules the selector is what stands before its brace. */
function rule(selector: string): Tokens {
  const start = css.indexOf(`${selector} {`);
  if (start < 0) throw new Error(`no rule ${selector} in tokens.css`);
  const body = css.slice(css.indexOf('{', start) + 1, css.indexOf('}', start));
  return Object.fromEntries(
    [...body.matchAll(/--([\w-]+):\s*([^;]+);/g)].map(([, name, value]) => [name, value?.trim()]),
  );
}

const root = rule(':root');
/** `light-dark(a, b)` taken apart: 0 the light colour, 1 the dark. */
function side(which: 0 | 1): Tokens {
  const colours = Object.entries(root).filter(([, value]) => value.startsWith('light-dark('));
  return Object.fromEntries(
    colours.map(([name, value]) => [name, value.slice(11, -1).split(',')[which]?.trim() ?? '']),
  );
}
const themes: Record<string, Tokens> = {
  light: side(0),
  dark: side(1),
  'high-contrast': rule(':root[data-theme="high-contrast"]'),
  'more contrast asked of the phone': rule(':root:not([data-theme])'),
};

/** Relative luminance, WCAG 2.2. */
function luminance(hex: string): number {
  if (!/^#[0-9a-f]{6}$/.test(hex)) throw new Error(`not a colour: ${hex}`);
  const [r, g, b] = [1, 3, 5].map((i) => {
    const c = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

const papers = ['bench', 'card', 'second'];
const on = (names: readonly string[], grounds: readonly string[]) =>
  names.flatMap((name) => grounds.map((ground) => [name, ground] as const));
/** Words and figures, and the size on a shim in ink: 4.5. */
const text: (readonly [string, string])[] = [
  ...on(['ink', 'soft'], papers),
  ...on(['next', 'in', 'edge', 'out'], ['card', 'second']),
  ['on-next', 'next'],
  ['card', 'ink'],
];
/** Marks, rings and rules that carry meaning: 3. */
const marks = on(['next', 'in', 'edge', 'out', 'soft'], papers);

describe.each(Object.entries(themes))('%s', (_, tokens) => {
  const ratio = (front: string, ground: string) => contrast(tokens[front] ?? '', tokens[ground] ?? '');

  it.each(text)('text %s on %s is readable', (front, ground) => {
    expect(ratio(front, ground)).toBeGreaterThanOrEqual(4.5);
  });
  it.each(marks)('mark %s on %s is seen', (front, ground) => {
    expect(ratio(front, ground)).toBeGreaterThanOrEqual(3);
  });
});

it('measures what is known: black on white is 21, #777777 on white 4.48', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
  expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
});

it('high contrast is 7 or more throughout, and the same whether the app or the phone asks for it', () => {
  const { 'high-contrast': chosen = {}, 'more contrast asked of the phone': asked } = themes;
  expect(asked).toEqual(chosen);
  for (const [front, ground] of text) {
    expect(contrast(chosen[front] ?? '', chosen[ground] ?? ''), `${front} on ${ground}`).toBeGreaterThanOrEqual(7);
  }
});
