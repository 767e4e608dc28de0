/** The fields of an adjuster between the core and the texts of the build card, by what each field asks for. */
import type { Ask, AskedField, Column } from '../../../core/adjuster/ask.ts';
import { adjusterKinds } from '../../../core/adjuster/catalogue.ts';
import type { AdjusterKind } from '../../../core/adjuster/kind.ts';
import type { Adjuster, Vec3 } from '../../../core/contract.ts';
import {
  angleOf,
  cardUnits,
  exactAngle,
  lengthOf,
  lengthText,
  plainOf,
  plainText,
  type Texts,
  unitOf,
  unitText,
  unitWord,
} from './numbers.ts';

type Shape = Readonly<Record<string, unknown>>;

const FIRST: readonly AskedField[] = [
  { name: 'name', label: 'Name', hint: 'as you call it on the job', ask: { as: 'text' } },
];
const LIVE: AskedField = {
  name: 'live',
  label: 'Can be turned while the rack is watched',
  hint: 'its bolt can be reached with the wheel on the rack',
  ask: { as: 'yes-no', usual: true },
};
const last = ({ effort, live, tolerance: { usual, unit } }: AdjusterKind): readonly AskedField[] => [
  ...(live ? [LIVE] : []),
  {
    name: 'effort',
    label: 'Time to move it',
    hint: `left empty: ${effort} minutes`,
    ask: { as: 'number', unit: 'minutes' },
  },
  {
    name: 'tolerance',
    label: 'Set to within ±',
    hint: `left empty: ± ${unitText(usual, unit)} ${unitWord(unit)}`.trim(),
    ask: { as: 'number', unit },
  },
  {
    name: 'torque',
    label: 'Torque, maker’s figure',
    hint: 'typed from the maker’s information; the app knows none',
    ask: { as: 'text' },
  },
];

/** All that may be asked of a kind, in order. */
function allFieldsOf(kind: string): readonly AskedField[] {
  const own = adjusterKinds[kind];
  return own ? [...FIRST, ...own.fields, ...last(own)] : [];
}

/** Ways of saying the same thing that the kind has; none for most. */
export const waysOf = (kind: string): readonly string[] => [
  ...new Set(allFieldsOf(kind).flatMap(({ way }) => (way === undefined ? [] : [way]))),
];
/** Whether its figures are those that most of its kind have. */
export const usualPath = (path: string): string => `${path}.usual`;
export const wayPath = (path: string): string => `${path}.way`;
export const chosenWay = (texts: Texts, path: string): string | undefined =>
  texts[wayPath(path)] || waysOf(texts[`${path}.kind`] ?? '')[0];

/** What the card asks of this adjuster, in order: the fields of the chosen way alone. */
export function fieldsOf(texts: Texts, path: string): readonly AskedField[] {
  const chosen = chosenWay(texts, path);
  return allFieldsOf(texts[`${path}.kind`] ?? '').filter(({ way }) => way === undefined || way === chosen);
}

/** The texts of an adjuster on file. */
export function textsOfAdjuster(adjuster: Shape & { readonly kind: string }, path: string): Texts {
  const all = allFieldsOf(adjuster.kind);
  const way = all.find((field) => field.way !== undefined && fieldOf(adjuster, field) !== undefined)?.way;
  const texts = all.map((field) => write(field.ask, fieldOf(adjuster, field), `${path}.${field.name}`));
  return Object.assign(
    {},
    ...texts,
    way === undefined ? {} : { [wayPath(path)]: way },
    adjuster.usual ? { [usualPath(path)]: 'yes' } : {},
  );
}

/**
 * The adjuster that the texts say, unchecked; what is left empty is absent. A field whose texts still show what is on
 * file keeps it, and so does what no field asks.
 */
export function adjusterFrom(texts: Texts, path: string, onFile?: Adjuster): Shape {
  const kind = texts[`${path}.kind`] ?? '';
  const before = onFile?.kind === kind ? onFile : undefined;
  const asked = new Set(allFieldsOf(kind).map(({ name }) => name.split('.')[0]));
  const rest = Object.entries(before ?? {}).filter(([name]) => !asked.has(name) && name !== 'usual');
  const usual = texts[usualPath(path)] === 'yes' ? { usual: true } : {};
  let adjuster: Shape = { ...Object.fromEntries(rest), ...usual, id: texts[`${path}.id`], kind };
  for (const field of fieldsOf(texts, path)) {
    const here = `${path}.${field.name}`;
    const kept = before && fieldOf(before, field);
    const value = kept !== undefined && shows(texts, here, field.ask, kept) ? kept : read(field, texts, here);
    if (value !== undefined) adjuster = put(adjuster, field.name.split('.'), value) as Shape;
  }
  return adjuster;
}

/** Fields of the kind that are put on the card as most have them. */
export const startOf = (kind: string, path: string): Texts =>
  textsOfAdjuster({ ...adjusterKinds[kind]?.start, kind }, path);

const fieldOf = (adjuster: Shape, { name }: AskedField): unknown => at(adjuster, name.split('.'));

/** Whether the texts under a path are just those of the value. */
function shows(texts: Texts, path: string, ask: Ask, value: unknown): boolean {
  const own = write(ask, value, path);
  const typed = Object.keys(texts).filter((key) => key === path || key.startsWith(`${path}[`));
  return [...new Set([...typed, ...Object.keys(own)])].every((key) => (texts[key] ?? '') === (own[key] ?? ''));
}

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

const list = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);
const places = (path: string, count: number): string[] => Array.from({ length: count }, (_, i) => `${path}[${i}]`);
const writePlaces = (value: unknown, path: string, count: number, unit = ''): Texts =>
  Object.fromEntries(places(path, count).map((key, i) => [key, unitText(list(value)[i], unit)]));
const readPlaces = (texts: Texts, path: string, count: number, unit = ''): unknown => {
  const all = places(path, count).map((key) => unitOf(texts[key], unit));
  return all.every((one) => one === undefined) ? undefined : all;
};
export const directionTexts = (path: string, way: Vec3): Texts => writePlaces(way, path, 3);

function write(ask: Ask, value: unknown, path: string): Texts {
  switch (ask.as) {
    case 'length':
      return { [path]: typeof value === 'number' ? lengthText(value) : '' };
    case 'lengths':
      return {
        [path]: list(value)
          .map((one) => oneOfMany(lengthText(Number(one))))
          .join('  '),
      };
    case 'number':
      return { [path]: unitText(value, ask.unit) };
    case 'numbers':
      // One of those that may be several is as good as a list of it.
      return {
        [path]: [value ?? []]
          .flat()
          .map((one) => unitText(one, ask.unit))
          .join('  '),
      };
    case 'direction':
      return writePlaces(value, path, 3);
    case 'range':
      return writePlaces(value, path, 2, ask.unit);
    case 'links':
      return { [path]: list(value).join(' ') };
    // What is usual is not written down.
    case 'yes-no':
      return { [path]: (value ?? ask.usual) === true ? 'yes' : 'no' };
    case 'table':
      return Object.assign({}, ...list(value).map((row, i) => rowTexts(ask.columns, row, `${path}[${i}]`)));
    default:
      return { [path]: typeof value === 'number' ? plainText(value) : written(String(value ?? '')) };
  }
}

function read({ ask, way }: AskedField, texts: Texts, path: string): unknown {
  const typed = texts[path];
  switch (ask.as) {
    case 'length':
      return lengthOf(typed);
    case 'lengths':
      return many(typed)?.map(lengthOf);
    case 'number':
      return unitOf(typed, ask.unit);
    case 'numbers':
      return many(typed)?.map((one) => unitOf(one, ask.unit));
    case 'position':
      return positionOf(typed);
    case 'direction':
      return readPlaces(texts, path, 3);
    case 'range':
      return readPlaces(texts, path, 2, ask.unit);
    case 'links':
      return many(typed);
    case 'choice':
      return (
        ask.choices.find(([value]) => writtenChoice(value) === typed)?.[0] ??
        // One that is not among them, as a file may hold.
        (ask.choices.every(([value]) => typeof value === 'number') ? plainOf(typed) : typed || undefined)
      );
    case 'yes-no':
      return typed === undefined || typed === '' || (typed === 'yes') === ask.usual ? undefined : typed === 'yes';
    case 'table': {
      const rows = places(path, rowCount(texts, path)).map((row) => rowFrom(ask.columns, texts, row));
      // Where the table was chosen as the way it is wanted, and the core says so; else an empty one is none.
      return rows.length > 0 || way !== undefined ? rows : undefined;
    }
    default:
      return taperIn(typed?.trim() ?? '') || undefined;
  }
}

export const writtenChoice = (value: string | number): string => (typeof value === 'number' ? plainText(value) : value);

const many = (text: string | undefined): string[] | undefined => {
  const all = (text ?? '').split(/[\s;]+/).filter(Boolean);
  return all.length > 0 ? all : undefined;
};

/** A number where the text is just how it would be written: 01 is a label. */
function positionOf(text: string | undefined): unknown {
  const typed = text?.trim();
  const value = plainOf(typed);
  return typeof value === 'number' && plainText(value) === typed?.replace('-', '−').replace(',', '.')
    ? value
    : taperIn(typed ?? '') || undefined;
}

/** `0.5@90` with the shop's decimal sign, and back. */
const TAPER = /^[\d.,]+@[-−\d.,]+$/;
const written = (label: string): string => (TAPER.test(label) ? label.replaceAll('.', cardUnits().decimal) : label);
const taperIn = (text: string): string => (TAPER.test(text) ? text.replaceAll(',', '.').replace('−', '-') : text);
/** In a list a space parts one from the next. */
const oneOfMany = (text: string): string =>
  text.replace(/^(\d+) (\d+)\/(\d+)$/, (_, whole, top, bottom) => String(Number(whole) + Number(top) / Number(bottom)));

// Rows of a table.

/** `offset.1` of row 3 is typed at `positions[3].offset[1]`, as the core names it. */
export const cellPath = (row: string, column: Column): string => `${row}.${column.name.replace(/\.(\d+)/g, '[$1]')}`;

export function rowCount(texts: Texts, path: string): number {
  let rows = 0;
  while (Object.keys(texts).some((key) => key.startsWith(`${path}[${rows}].`))) rows += 1;
  return rows;
}

export function rowTexts(columns: readonly Column[], row: unknown, path: string): Texts {
  return Object.fromEntries(
    columns.map((column) => {
      const value = at(row, column.name.split('.'));
      return [cellPath(path, column), value === undefined ? '' : cellText(column, value)];
    }),
  );
}

const cellText = ({ as }: Column, value: unknown): string =>
  as === 'label' ? String(value) : as === 'length' ? lengthText(Number(value)) : exactAngle(Number(value));

/** An empty cell adds nothing. */
function rowFrom(columns: readonly Column[], texts: Texts, path: string): unknown {
  return columns.reduce<unknown>((row, column) => {
    const typed = texts[cellPath(path, column)];
    const value =
      column.as === 'label' ? (typed ?? '').trim() : ((column.as === 'length' ? lengthOf : angleOf)(typed) ?? 0);
    return put(row, column.name.split('.'), value);
  }, {});
}
