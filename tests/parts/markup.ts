/** What the drawings draw, without a browser: components called by hand and written as markup. */
import type { ComponentChildren } from 'preact';
import { h, isValidElement } from 'preact';
import { AdjusterDrawing } from '../../app/parts/adjuster-drawing.tsx';
import { adjusterPictures } from '../../app/parts/drawings/catalogue.ts';
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import type { Adjuster, Corner, Position } from '../../core/contract.ts';

/** The figures and the note of a move. */
export const words = (adjuster: Partial<Adjuster>, from: Position, to: Position, corner: Corner = 'LF', stacks = {}) =>
  adjusterPictures[adjuster.kind ?? '']?.words({ adjuster: adjuster as Adjuster, from, to, corner, ...stacks });

/** What a component draws, as markup, so far as a test reads it: names, properties and text. */
export function markup(node: ComponentChildren): string {
  if (Array.isArray(node)) return node.map(markup).join('');
  if (!isValidElement(node)) return typeof node === 'string' || typeof node === 'number' ? String(node) : '';
  const { type } = node;
  const props = node.props as Record<string, unknown> & { children?: ComponentChildren };
  if (typeof type === 'function') return markup((type as (props: unknown) => ComponentChildren)(props));
  const texts = Object.entries(props).filter(([name, value]) => name !== 'children' && value !== undefined);
  const attributes = texts.map(
    ([name, value]) => ` ${name}="${typeof value === 'object' ? JSON.stringify(value) : value}"`,
  );
  return `<${type}${attributes.join('')}>${markup(props.children)}</${type}>`;
}
/** What a screen reader says of a drawing. */
export const titleOf = (drawn: string) => /<title>(.+?)<\/title>/.exec(drawn)?.[1] ?? '';

/** An adjuster as its kind makes one up, with other fields where given. */
export const sampleOf = (kind: string, fields: Partial<Adjuster> = {}): Adjuster => ({
  id: kind,
  kind,
  reference: 0,
  ...adjusterKinds[kind]?.sample.adjuster,
  ...fields,
});
/** The card’s drawing of a move, as markup. */
export const draw = (adjuster: Adjuster, from: Position, to: Position, corner: Corner = 'LF') =>
  markup(h(AdjusterDrawing, { adjuster, from, to, corner }));
