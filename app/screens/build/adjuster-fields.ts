/** The fields that each adjuster kind is described by on the build card: how each is asked, written and read. */
import { lengthOf, lengthText, plainOf, type Texts } from './numbers.ts';

type Ask =
  | { readonly as: 'text' | 'length' | 'number' | 'lengths'; readonly unit?: string }
  | { readonly as: 'point' | 'link' }
  | { readonly as: 'choice'; readonly choices: readonly (readonly [value: string, label: string])[] }
  | { readonly as: 'range'; readonly unit: string }
  | { readonly as: 'cam-table' };

export interface AdjusterField {
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
  readonly ask: Ask;
  /** Texts under `path` for the value on file. */
  readonly write: (value: unknown, path: string) => Texts;
  /** The value, or what was typed where it is none. */
  readonly read: (texts: Texts, path: string) => unknown;
}

const plainText = (x: unknown): string => (typeof x === 'number' ? String(Number(x.toFixed(6))).replace('-', '−') : '');
const one = (text: string, path: string): Texts => ({ [path]: text });

const text = (name: string, label: string, hint?: string): AdjusterField => ({
  name,
  label,
  ...(hint ? { hint } : {}),
  ask: { as: 'text' },
  write: (value, path) => one(typeof value === 'string' ? value : '', path),
  read: (texts, path) => texts[path]?.trim() || undefined,
});
const number = (name: string, label: string, unit: string): AdjusterField => ({
  name,
  label,
  ask: { as: 'number', unit },
  write: (value, path) => one(plainText(value), path),
  read: (texts, path) => plainOf(texts[path]),
});
const length = (name: string, label: string): AdjusterField => ({
  name,
  label,
  ask: { as: 'length' },
  write: (value, path) => one(typeof value === 'number' ? lengthText(value) : '', path),
  read: (texts, path) => lengthOf(texts[path]),
});
const choice = (
  name: string,
  label: string,
  choices: readonly (readonly [string, string])[],
  as: 'text' | 'number' | 'vector' = 'text',
): AdjusterField => ({
  name,
  label,
  ask: { as: 'choice', choices },
  write: (value, path) => one(Array.isArray(value) ? value.join(' ') : value === undefined ? '' : String(value), path),
  read: (texts, path) => {
    const typed = texts[path];
    if (!typed) return undefined;
    return as === 'vector' ? typed.split(' ').map(Number) : as === 'number' ? Number(typed) : typed;
  },
});
const range = (label: string, unit: string): AdjusterField => ({
  name: 'range',
  label,
  ask: { as: 'range', unit },
  write: (value, path) =>
    Array.isArray(value) ? { [`${path}[0]`]: plainText(value[0]), [`${path}[1]`]: plainText(value[1]) } : {},
  read: (texts, path) => {
    const ends = [plainOf(texts[`${path}[0]`]), plainOf(texts[`${path}[1]`])];
    return ends.every((end) => end === undefined) ? undefined : ends;
  },
});

const AT: AdjusterField = {
  name: 'at',
  label: 'Moves which point',
  ask: { as: 'point' },
  write: (value, path) => one(String(value ?? ''), path),
  read: (texts, path) => texts[path] || undefined,
};
const LINKS: AdjusterField = {
  name: 'links',
  label: 'Lengthens which rod',
  ask: { as: 'link' },
  // A sleeve that two links share is rare; the card takes one and keeps more from a file.
  write: (value, path) => one(Array.isArray(value) ? value.join(' ') : '', path),
  read: (texts, path) => texts[path]?.split(' ').filter(Boolean),
};
const SIZES: AdjusterField = {
  name: 'sizes',
  label: 'Shim sizes',
  hint: 'with spaces between: 1 1.5 3',
  ask: { as: 'lengths' },
  write: (value, path) =>
    one(Array.isArray(value) ? value.map((size) => lengthText(Number(size))).join('  ') : '', path),
  read: (texts, path) => {
    const sizes = (texts[path] ?? '').split(/[\s;]+/).filter(Boolean);
    return sizes.length > 0 ? sizes.map(lengthOf) : undefined;
  },
};
const CAM_TABLE: AdjusterField = {
  name: 'positions',
  label: 'Numbers of the cam',
  ask: { as: 'cam-table' },
  write: (value, path) => {
    const rows = Array.isArray(value) ? (value as { label: string; offset: readonly number[] }[]) : [];
    return Object.fromEntries(
      rows.flatMap(({ label, offset }, i) => [
        [`${path}[${i}].label`, label],
        ...offset.map((x, j) => [`${path}[${i}].offset[${j}]`, lengthText(x)]),
      ]),
    );
  },
  read: (texts, path) => {
    const rows: unknown[] = [];
    for (let i = 0; `${path}[${i}].label` in texts; i++) {
      const offset = [0, 1, 2].map((j) => lengthOf(texts[`${path}[${i}].offset[${j}]`]) ?? 0);
      rows.push({ label: texts[`${path}[${i}].label`]?.trim(), offset });
    }
    return rows;
  },
};

const DIRECTION = choice(
  'direction',
  'More of it moves the point',
  [
    ['0 1 0', 'outboard'],
    ['0 -1 0', 'inboard'],
    ['1 0 0', 'forward'],
    ['-1 0 0', 'rearward'],
    ['0 0 1', 'up'],
    ['0 0 -1', 'down'],
  ],
  'vector',
);
const FIRST = [text('name', 'Name', 'as you call it on the job')];
const LAST = [
  number('effort', 'Time to move it', 'minutes'),
  text('torque', 'Torque, maker’s figure', 'typed from the maker’s information; the app knows none'),
];

export const ADJUSTER_FIELDS: Readonly<Record<string, readonly AdjusterField[]>> = {
  'shim-pack': [
    ...FIRST,
    AT,
    DIRECTION,
    SIZES,
    length('max', 'Thickest pack allowed'),
    length('reference', 'In the pack when the dimensions were taken'),
    ...LAST,
  ],
  'indexed-cam': [...FIRST, AT, CAM_TABLE, text('reference', 'Number up when the dimensions were taken'), ...LAST],
  'eccentric-cam': [
    ...FIRST,
    AT,
    DIRECTION,
    length('eccentricity', 'Eccentricity'),
    number('marks', 'Marks to a full turn', ''),
    choice('zero', 'Scale starts', [
      ['middle', 'at the middle of travel'],
      ['end', 'at the end of travel'],
    ]),
    choice('turns', '+ is, seen from the bolt head, left wheel', [
      ['clockwise', 'clockwise'],
      ['anticlockwise', 'anticlockwise'],
    ]),
    range('Travel', 'degrees'),
    number('reference', 'Angle when the dimensions were taken', 'degrees'),
    ...LAST,
  ],
  'threaded-rod': [
    ...FIRST,
    LINKS,
    length('lead', 'Longer by, each turn'),
    choice(
      'stepTurns',
      'Set to the nearest',
      [
        [String(1 / 12), 'half flat'],
        [String(1 / 6), 'flat'],
        ['0.25', 'quarter turn'],
        ['0.5', 'half turn'],
      ],
      'number',
    ),
    range('Turns allowed', 'turns'),
    number('reference', 'Turns when the dimensions were taken', 'turns'),
    ...LAST,
  ],
};
