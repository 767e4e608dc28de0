/** The fields of an adjuster between the core and the texts of the build card, by what each field asks for. */

import type { Ask, AskedField, Column } from '../../../core/adjuster/ask.ts';
import { adjusterKinds } from '../../../core/adjuster/catalogue.ts';
import type { Adjuster } from '../../../core/contract.ts';
import { angleText, readAngle } from '../../state/units.ts';
import { lengthOf, lengthText, plainOf, type Texts, typedValue } from './numbers.ts';

type Shape = Readonly<Record<string, unknown>>;

const FIRST: readonly AskedField[] = [
  { name: 'name', label: 'Name', hint: 'as you call it on the job', ask: { as: 'text' } },
];
const LAST: readonly AskedField[] = [
  { name: 'effort', label: 'Time to move it', ask: { as: 'number', unit: 'minutes' } },
  {
    name: 'torque',
    label: 'Torque, maker’s figure',
    hint: 'typed from the maker’s information; the app knows none',
    ask: { as: 'text' },
  },
];

/** What the card asks of a kind, in order. */
export const fieldsOf = (kind: string): readonly AskedField[] => {
  const own = adjusterKinds[kind]?.fields;
  return own ? [...FIRST, ...own, ...LAST] : [];
};

/** The texts of an adjuster on file. */
export function textsOfAdjuster(adjuster: Shape & { readonly kind: string }, path: string): Texts {
  return Object.assign(
    {},
    ...fieldsOf(adjuster.kind).map(({ name, ask }) => write(ask, at(adjuster, name.split('.')), `${path}.${name}`)),
  );
}

/** The adjuster that the texts say, unchecked; what is left empty is absent. */
export function adjusterFrom(texts: Texts, path: string): Shape {
  const kind = texts[`${path}.kind`] ?? '';
  let adjuster: Shape = { id: texts[`${path}.id`], kind };
  for (const { name, ask } of fieldsOf(kind)) {
    const value = read(ask, texts, `${path}.${name}`);
    if (value !== undefined) adjuster = put(adjuster, name.split('.'), value) as Shape;
  }
  return adjuster;
}

/** Fields of the kind that were put on the card as most have them. */
export const startOf = (kind: string, path: string): Texts =>
  textsOfAdjuster({ ...adjusterKinds[kind]?.start, kind } as Adjuster, path);

function at(value: unknown, keys: readonly string[]): unknown {
  return keys.reduce<unknown>((one, key) => (one as Shape | undefined)?.[key], value);
}

function put(value: unknown, [key, ...rest]: readonly string[], to: unknown): unknown {
  if (key === undefined) return to;
  const number = Number(key);
  if (Number.isInteger(number)) {
    const list = Array.isArray(value) ? [...value] : [];
    list[number] = put(list[number], rest, to);
    return list;
  }
  return { ...(value as Shape | undefined), [key]: put((value as Shape | undefined)?.[key], rest, to) };
}

const plainText = (x: unknown): string => (typeof x === 'number' ? String(Number(x.toFixed(6))).replace('-', '−') : '');
const list = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);
const ends = (path: string): readonly [string, string] => [`${path}[0]`, `${path}[1]`];

function write(ask: Ask, value: unknown, path: string): Texts {
  switch (ask.as) {
    case 'length':
      return { [path]: typeof value === 'number' ? lengthText(value) : '' };
    case 'lengths':
      return {
        [path]: list(value)
          .map((one) => lengthText(Number(one)))
          .join('  '),
      };
    case 'number':
      return { [path]: plainText(value) };
    case 'numbers':
      return { [path]: list(value).map(plainText).join('  ') };
    case 'direction':
    case 'link':
      return { [path]: list(value).join(' ') };
    case 'range':
      return Object.fromEntries(ends(path).map((end, i) => [end, plainText(list(value)[i])]));
    case 'table':
      return Object.assign({}, ...list(value).map((row, i) => rowTexts(ask.columns, row, `${path}[${i}]`)));
    default:
      return { [path]: value === undefined ? '' : typeof value === 'number' ? plainText(value) : String(value) };
  }
}

function read(ask: Ask, texts: Texts, path: string): unknown {
  const typed = texts[path];
  switch (ask.as) {
    case 'length':
      return lengthOf(typed);
    case 'lengths':
      return many(typed)?.map(lengthOf);
    case 'number':
    case 'position':
      return plainOf(typed);
    case 'numbers':
      return many(typed)?.map(plainOf);
    case 'direction':
      return many(typed)?.map(plainOf);
    case 'link':
      return many(typed);
    case 'range': {
      const pair = ends(path).map((end) => plainOf(texts[end]));
      return pair.every((end) => end === undefined) ? undefined : pair;
    }
    case 'choice': {
      const known = ask.choices.find(([value]) => String(value) === typed || plainText(value) === typed);
      return known ? known[0] : typed || undefined;
    }
    case 'table': {
      const rows = Array.from({ length: rowCount(texts, path) }, (_, i) =>
        rowFrom(ask.columns, texts, `${path}[${i}]`),
      );
      return rows.length > 0 ? rows : undefined;
    }
    default:
      return typed?.trim() || undefined;
  }
}

const many = (text: string | undefined): string[] | undefined => {
  const all = (text ?? '').split(/[\s;]+/).filter(Boolean);
  return all.length > 0 ? all : undefined;
};

// Rows of a table.

/** `offset.1` of row 3 is typed at `positions[3].offset[1]`, as the core names it. */
export const cellPath = (row: string, column: Column): string => `${row}.${column.name.replace(/\.(\d+)/g, '[$1]')}`;

export function rowCount(texts: Texts, path: string): number {
  let rows = 0;
  while (`${path}[${rows}].label` in texts) rows += 1;
  return rows;
}

export function rowTexts(columns: readonly Column[], row: unknown, path: string): Texts {
  return Object.fromEntries(
    columns.map((column) => {
      const value = at(row, column.name.split('.'));
      const text = {
        label: String(value ?? ''),
        length: lengthText(Number(value ?? 0)),
        degrees: angleText(Number(value ?? 0)),
      };
      return [cellPath(path, column), text[column.as]];
    }),
  );
}

function rowFrom(columns: readonly Column[], texts: Texts, path: string): unknown {
  return columns.reduce<unknown>((row, column) => {
    const typed = texts[cellPath(path, column)];
    const value =
      column.as === 'label'
        ? (typed ?? '').trim()
        : ((column.as === 'length' ? lengthOf(typed) : typedValue(typed, readAngle)) ?? 0);
    return put(row, column.name.split('.'), value);
  }, {});
}
