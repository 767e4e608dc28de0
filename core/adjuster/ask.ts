/** How the fields of an adjuster are asked of a person, as data: a kind says it once, every form reads it. */

export type Ask =
  | { readonly as: 'text' }
  /** A label, or a number where it reads as one. */
  | { readonly as: 'position' }
  /** Another adjuster of the same kind. */
  | { readonly as: 'partner' }
  /** A length, in the user's unit. */
  | { readonly as: 'length' }
  /** Several lengths. */
  | { readonly as: 'lengths' }
  | { readonly as: 'number'; readonly unit: string }
  | { readonly as: 'numbers'; readonly unit: string }
  | { readonly as: 'point' }
  /** Links, one or more, by their body points: a list. */
  | { readonly as: 'links' }
  | { readonly as: 'direction' }
  | { readonly as: 'choice'; readonly choices: readonly (readonly [value: string | number, label: string])[] }
  | { readonly as: 'range'; readonly unit: string }
  /** Yes or no; `usual` where nobody says. */
  | { readonly as: 'yes-no'; readonly usual: boolean }
  /** Rows of a label and numbers; a column may stand for one place of a list, such as `offset.1`. */
  | { readonly as: 'table'; readonly columns: readonly Column[] };

export interface Column {
  readonly name: string;
  readonly label: string;
  readonly as: 'label' | 'length' | 'degrees';
}

export interface AskedField {
  /** Path in the adjuster, such as `max` or `pair.most`. */
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
  readonly ask: Ask;
  /** May be left empty. */
  readonly optional?: true;
  /** Fields of one way of saying the same thing: a form asks which way, then for the fields of that way alone. */
  readonly way?: string;
}

export const AT: AskedField = { name: 'at', label: 'Moves which point', ask: { as: 'point' } };
export const DIRECTION: AskedField = {
  name: 'direction',
  label: 'More of it moves the point',
  ask: { as: 'direction' },
};
export const lengthField = (name: string, label: string, hint?: string): AskedField => ({
  name,
  label,
  ...(hint ? { hint } : {}),
  ask: { as: 'length' },
});
export const numberField = (name: string, label: string, unit: string): AskedField => ({
  name,
  label,
  ask: { as: 'number', unit },
});
export const rangeField = (label: string, unit: string): AskedField => ({
  name: 'range',
  label,
  ask: { as: 'range', unit },
});
export const optional = (field: AskedField): AskedField => ({ ...field, optional: true });

/** A label with its unit; one that says it already does not say it twice. */
export const withUnit = (label: string, unit: string): string =>
  unit && !label.toLowerCase().split(' ').includes(unit) ? `${label}, ${unit}` : label;
