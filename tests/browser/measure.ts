/**
 * What a person would call cut or overlapping, measured in the page: letters that leave the glass, what scrolls them or what
 * clips them; letters over letters; targets too small for a thumb.
 */
import type { Page } from '@playwright/test';

/** Least height and width of a target, px; and what may be smaller, each with its reason. */
const TARGET = 56;
const SMALLER: readonly { readonly what: string; readonly why: string }[] = [
  { what: 'input[type="checkbox"], input[type="radio"]', why: 'its label is the target' },
  { what: 'a:not([class])', why: 'a word in a sentence' },
  { what: '.keypad-offer', why: 'repeats a choice that stands in full under the form' },
  { what: '.top-bar-back', why: 'as tall as a thumb, over the edge of the bar' },
];
/** Letters that may lie over others, each with its reason. */
const OVER: readonly { readonly what: string; readonly why: string }[] = [
  { what: '.dock, .card-foot', why: 'stands over the paper that scrolls behind it' },
  { what: '.top-bar', why: 'the paper scrolls behind it' },
  { what: '.build-drawing', why: 'stays while its fields scroll behind it' },
  { what: '.chart-table th', why: 'heads stay while the chart scrolls behind them' },
  { what: '.chart-table thead td', why: 'the corner of the heads' },
  { what: 'svg.picture, svg.reach-picture, .suspension svg', why: 'a drawing has places of its own, tested apart' },
  { what: '.visually-hidden', why: 'not seen' },
];

export interface Limits {
  /** Where the glass itself is lower than a keypad of 56 px keys. */
  readonly target?: number;
}

/** Sentences, none of them where all is well. */
export const measure = (page: Page, { target = TARGET }: Limits = {}): Promise<string[]> =>
  page.evaluate(measureInPage, {
    target,
    smaller: SMALLER.map(({ what }) => what).join(', '),
    over: OVER.map(({ what }) => what).join(', '),
  });

interface Asked {
  readonly target: number;
  readonly smaller: string;
  readonly over: string;
}

/** Runs in the page, all of it. */
function measureInPage({ target, smaller, over }: Asked): string[] {
  const found: string[] = [];
  // Asked of the same few elements again and again.
  const styles = new Map<Element, CSSStyleDeclaration>();
  const styleOf = (element: Element): CSSStyleDeclaration => {
    const known = styles.get(element) ?? getComputedStyle(element);
    styles.set(element, known);
    return known;
  };
  const SLACK = 1;
  /** px of air that letters leave to the edge of the card that they stand on. */
  const EDGE = 3;
  const width = document.documentElement.clientWidth;
  const name = (element: Element | null) =>
    element
      ? `${element.tagName.toLowerCase()}${element.className ? `.${String(element.className).split(' ').join('.')}` : ''}`
      : '';
  const isSeen = (element: Element) => {
    const { visibility, opacity } = styleOf(element);
    const isShown = visibility !== 'hidden' && opacity !== '0';
    // What is folded away has boxes too, where it would be.
    return isShown && element.checkVisibility() && !element.closest('.visually-hidden, .printed, title, option');
  };
  if (document.documentElement.scrollWidth > width + SLACK)
    found.push(`the page is ${document.documentElement.scrollWidth} px wide on a glass of ${width}`);
  interface Letters {
    readonly text: string;
    readonly of: Element;
    readonly boxes: readonly DOMRect[];
  }
  /** What of a box is seen of what scrolls it. */
  const inSight = (of: Element, box: DOMRect): DOMRect => {
    let { left, top, right, bottom } = box;
    for (let outer: Element | null = of; outer && outer !== document.body; outer = outer.parentElement) {
      if (!/auto|scroll/.test(styleOf(outer).overflow)) continue;
      const edge = outer.getBoundingClientRect();
      [left, right] = [Math.max(left, edge.left), Math.min(right, edge.right)];
      [top, bottom] = [Math.max(top, edge.top), Math.min(bottom, edge.bottom)];
    }
    return new DOMRect(left, top, Math.max(0, right - left), Math.max(0, bottom - top));
  };
  const letters: Letters[] = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const range = document.createRange();
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const of = node.parentElement;
    if (!of || !node.textContent?.trim() || !isSeen(of)) continue;
    range.selectNodeContents(node);
    const boxes = [...range.getClientRects()].filter((box) => box.width > 0 && box.height > 0);
    if (boxes.length > 0) letters.push({ text: node.textContent.trim().slice(0, 40), of, boxes });
  }
  // A word that goes on in the next line without a hyphen.
  for (const { of } of letters) {
    for (const node of of.childNodes) {
      if (node.nodeType !== Node.TEXT_NODE) continue;
      for (const { 0: word, index } of (node.textContent ?? '').matchAll(/[\p{L}\p{N}.,−°′+]{2,}/gu)) {
        range.setStart(node, index);
        range.setEnd(node, index + word.length);
        const tops = [...range.getClientRects()].filter((box) => box.width > 0).map((box) => Math.round(box.top));
        if (new Set(tops).size > 1) found.push(`“${word}” is broken in two`);
      }
    }
  }
  // What clips: letters that leave it are cut where it does not scroll that way.
  for (const { text, of, boxes } of letters) {
    const box = boxes.reduce(
      (a, b) =>
        ({
          left: Math.min(a.left, b.left),
          right: Math.max(a.right, b.right),
          top: Math.min(a.top, b.top),
          bottom: Math.max(a.bottom, b.bottom),
        }) as DOMRect,
    );
    let scrolls = { x: false, y: false };
    for (let outer: Element | null = of; outer && outer !== document.documentElement; outer = outer.parentElement) {
      const style = styleOf(outer);
      const edge = outer.getBoundingClientRect();
      const cuts = (way: string) => /hidden|clip/.test(way);
      const rolls = (way: string) => /auto|scroll/.test(way);
      if (rolls(style.overflowX) && outer.scrollWidth > outer.clientWidth) scrolls = { ...scrolls, x: true };
      if (rolls(style.overflowY) && outer.scrollHeight > outer.clientHeight) scrolls = { ...scrolls, y: true };
      if (outer.tagName === 'svg' && style.overflow === 'visible') continue;
      if (!scrolls.x && cuts(style.overflowX) && (box.left < edge.left - SLACK || box.right > edge.right + SLACK))
        found.push(
          `“${text}” is cut by ${name(outer)}: ${Math.round(box.left)}…${Math.round(box.right)} in ${Math.round(edge.left)}…${Math.round(edge.right)}`,
        );
      if (!scrolls.y && cuts(style.overflowY) && (box.top < edge.top - SLACK || box.bottom > edge.bottom + SLACK))
        found.push(`“${text}” is cut by ${name(outer)} in height`);
      if (/^(BUTTON|A)$/.test(outer.tagName) && (box.right > edge.right + SLACK || box.left < edge.left - SLACK))
        found.push(
          `“${text}” leaves its ${name(outer)} by ${Math.round(Math.max(box.right - edge.right, edge.left - box.left))} px`,
        );
      if (
        /^(BUTTON|A)$/.test(outer.tagName) &&
        style.display !== 'inline' &&
        (box.bottom > edge.bottom + SLACK || box.top < edge.top - SLACK)
      )
        found.push(`“${text}” leaves its ${name(outer)} in height`);
    }
    const card = of.closest('.card')?.getBoundingClientRect();
    if (!scrolls.x && card && (box.left < card.left + EDGE || box.right > card.right - EDGE))
      found.push(`“${text}” comes to the edge of its card`);
    if (!scrolls.x && (box.left < -SLACK || box.right > width + SLACK))
      found.push(`“${text}” leaves the glass: ${Math.round(box.left)}…${Math.round(box.right)} of ${width}`);
  }
  // Letters over letters: of each two boxes that meet by more than the space that a line leaves.
  const plain = letters.filter(({ of }) => !of.closest(over));
  const pieces = plain
    .flatMap((one) => one.boxes.map((box) => ({ ...one, box: inSight(one.of, box) })))
    .filter(({ box }) => box.right > box.left && box.bottom > box.top)
    .sort((a, b) => a.box.top - b.box.top);
  const told = new Set<string>();
  pieces.forEach((a, i) => {
    for (let j = i + 1; j < pieces.length && pieces[j]!.box.top < a.box.bottom; j += 1) {
      const b = pieces[j]!;
      if (a.of === b.of && a.text === b.text) continue;
      const high = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
      const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
      const room = 0.3 * Math.min(a.box.height, b.box.height);
      if (high > room && wide > 2) told.add(`“${a.text}” and “${b.text}” lie over each other`);
    }
  });
  found.push(...told);
  for (const element of document.querySelectorAll('button, a[href], select, summary, input')) {
    const box = element.getBoundingClientRect();
    if (box.width === 0 || !isSeen(element) || element.matches(smaller)) continue;
    if (box.height < target - SLACK)
      found.push(
        `${name(element)} “${(element.textContent ?? '').trim().slice(0, 30)}” is ${Math.round(box.height)} px high`,
      );
  }
  return found;
}
