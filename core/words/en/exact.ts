/**
 * What is allowed, to the letter, for who writes a file or a program: fields by the names that they have there. It stands
 * in the message of every InputError, in English in any language.
 */
import type { Items, Lack, Phrase, Rule } from '../../rule.ts';
import { plain } from '../../units/plain.ts';
import { PHRASES } from './phrases.ts';

type Figured = Exclude<Rule, { readonly is: Phrase }>;
type Sayings = { readonly [R in Figured['is']]: (rule: Extract<Figured, { is: R }>) => string };

const SAYINGS: Sayings = {
  number: ({ low, high, unit }) => `a number from ${low} to ${high} ${unit}`.trim(),
  'above-zero': ({ high, unit }) => `a number above 0, up to ${high} ${unit}`.trim(),
  whole: ({ low, high, of }) => `a whole number${of ? ` of ${COUNTED[of]}` : ''}, ${low} to ${high}`,
  finite: ({ unit }) => `a finite number${unit ? ` of ${unit}` : ''}`,
  range: ({ unit, limit }) =>
    `[low, high] in ${unit}${limit === undefined ? '' : `, low below high, within ±${limit}`}`,
  text: ({ least, most, short }) => {
    if (short) return `a short name, ${least} to ${most} characters`;
    return least > 0 ? `text of ${least} to ${most} characters` : `text of at most ${most} characters`;
  },
  exactly: ({ value }) => value,
  choice: ({ of }) => or(of),
  'one-of': ({ of, unit = '' }) => `one of ${of.join(', ')}${unit}`,
  list: ({ most, items }) => {
    const list = items ? ITEMS[items].list : 'a list';
    return most === undefined ? list : `${list} of at most ${most}`;
  },
  'at-least-one': ({ items }) => (items ? ITEMS[items].one : 'at least one'),
  'at-most': ({ most, items }) => {
    const many = items === 'characters' ? items : items && ITEMS[items].many;
    return `up to ${SMALL[most] ?? most}${many ? ` ${many}` : ''}`;
  },
  object: ({ as, fields, open, in: unit }) => {
    const all = [...fields, ...(open ? ['…'] : [])].join(', ');
    return `${as ? `${OBJECTS[as]}, ` : ''}{ ${all} }${unit ? `, ${UNITS[unit]}` : ''}`;
  },
  'no-such': ({ what, known }) =>
    `nothing: the ${what === 'field' ? 'fields here' : `${what}s`} are ${known.join(', ')}`,
  type: ({ type }) => type,
  place: ({ on, low, high }) => {
    if (on === 'thickness') return `a thickness from ${plain(low, 4)} to ${plain(high, 4)} mm`;
    const [what, mark] = on === 'angle' ? ['an angle', '°'] : [on, ''];
    return `${what} from ${plain(low)} to ${plain(high)}${mark}`;
  },
  taper: ({ none, of, such }) =>
    `${none}, or taper@angle${of ? ` with a taper of ${of.join(', ')},` : ''} such as ${such}`,
  shim: ({ above, high }) => `a shim thickness above ${above}, up to ${high} mm`,
  thicknesses: ({ most }) => `sizes that make at most ${most} different thicknesses up to max`,
  step: ({ least, most, unit }) => `${`${plain(least, 9)} ${unit}`.trim()} or more, for at most ${most} positions`,
  makes: ({ thickness }) => `shims that make ${thickness} mm, where the pack stands`,
  fits: ({ suspension, lacks }) => `an adjuster that fits ${suspension}: this one needs ${LACKS[lacks]}`,
  adjuster: ({ among }) => adjusters(among),
  'no-such-adjuster': ({ among }) => adjusters(among),
  combinations: ({ most, of, two }) =>
    `up to ${most} combinations ${two ? 'of two adjusters ' : ''}${of === 'axle' ? 'an' : 'a'} ${of}: lock an adjuster or widen its step${two ?? ''}`,
  point: ({ among }) => `one of ${among.join(', ')}`,
  'apart-from': ({ point }) => `a point apart from ${point}: no two joints share a place`,
  'as-on-the-left': ({ kind }) => `${kind.id}, as on the left`,
  absent: ({ why, suspension }) =>
    `absent: ${suspension} ${why === 'by-points' ? 'is given by points' : 'has no steering rack'}`,
  'longer-than-rise': ({ rise }) => `mm above ${rise.toFixed(1)}, the difference of its ends' heights`,
  reaches: ({ least }) => `mm above ${least.toFixed(1)}, how far its ends are apart along the car and in height`,
  'strut-length': ({ above }) =>
    `mm above ${above.toFixed(1)}, the distance of its lower end from the steering axis, and with its top above that end`,
  closes: ({ arm, least, most }) =>
    `mm between ${least.toFixed(1)} and ${most.toFixed(1)}, so that the ${arm} arm's triangle closes`,
  angle: ({ mode, limit }) =>
    mode === 'degrees'
      ? `degrees from −${limit} to ${limit}, such as −0.35, 4,5 or 1°30′`
      : `degrees and minutes from −${limit} to ${limit}, such as −1°30′ or 1 30`,
  length: ({ limit }) => `a length up to ${inGroups(limit)} mm, such as 4.5, 4,5 mm, 3/16 in or 1 1/4"`,
  'below-high': ({ high }) => `a number below high, ${high}`,
  'in-window': ({ low, high }) => `a number from low to high, ${low} to ${high}`,
  'within-diameter': ({ diameter }) => `mm from −${diameter} to ${diameter}, the diameter`,
  'near-rear': ({ diameter, rear }) => `within the diameter, ${diameter} mm, of the rear distance, ${rear} mm`,
  steer: ({ low, high }) => `degrees from ${low} to ${high}, the same each way`,
  diameter: ({ low, high }) => `mm from ${low} to ${high}`,
  apart: ({ least }) => `two places of the steering at least ${least}° apart`,
  steady: ({ within }) => `readings that scatter by no more than ${within}°`,
  readings: ({ least }) => `${least} readings or more`,
  scatter: ({ most }) => `a standard deviation up to ${most}`,
  'shim-size': ({ low, high, decimals }) => `a thickness from ${low} to ${high} mm, with at most ${decimals} decimals`,
  'shim-sizes': ({ most }) => `1 to ${most} shim sizes, mm`,
  'shared-step': ({ step }) => `sizes that share a step of ${step} mm or more`,
  json: ({ reason }) => `JSON text (${reason})`,
  readable: ({ reason }) => `a file that can be read (${reason})`,
  values: ({ most }) => `at most ${most} values in a text of this length, or in one object of it`,
  levels: ({ most }) => `at most ${most} levels`,
  version: ({ newest, newer }) => `1 to ${newest}${newer ? ': a newer app made this file' : ''}`,
  checksum: ({ own }) => `${own}: the file is damaged or was edited`,
  count: ({ there }) => `${there}, what is there`,
  car: ({ id, which }) => `the id of ${which === 'this' ? 'this' : 'the same'} car, ${id}`,
};

export const exact = (rule: Rule): string =>
  isPhrase(rule) ? PHRASES[rule.is] : (SAYINGS[rule.is] as (rule: Figured) => string)(rule);

const isPhrase = (rule: Rule): rule is { readonly is: Phrase } => rule.is in PHRASES;

/** Every rule that there is, by what it `is`. */
export const rules = () => [...Object.keys(PHRASES), ...Object.keys(SAYINGS)] as Rule['is'][];

/** What is told of a refused value, as JSON: the value, or what it counts. */
export function told(value: unknown, { is }: Rule): unknown {
  if (is === 'combinations') return `${value} combinations`;
  if (is === 'values') return 'too many values';
  return is === 'levels' ? 'deeply nested data' : value;
}

/** "a, b or c". */
export const or = (all: readonly string[]): string =>
  [all.slice(0, -1).join(', '), ...all.slice(-1)].filter(Boolean).join(' or ');

/** 10000 as "10 000". */
export const inGroups = (n: number | string): string => String(n).replace(/\B(?=(\d{3})+$)/g, ' ');

const adjusters = (among: readonly { readonly id: string }[]): string =>
  among.length > 0 ? `one of the adjusters: ${among.map(({ id }) => id).join(', ')}` : 'nothing: no adjusters here';

const SMALL = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
const COUNTED = { marks: 'marks to a full turn', shims: 'shims' } as const;

const OBJECTS = { object: 'an object', 'car-file': 'a car file', backup: 'a backup file' } as const;
const UNITS = {
  mm: 'mm',
  degrees: 'degrees',
  shims: 'mm and shims',
  deviations: 'one standard deviation, degrees',
  'a-step': 'degrees a step',
  positions: 'positions by adjuster id',
} as const;

/** A list of them, one at the least, so many at the most. */
const ITEMS: Readonly<Record<Items, { readonly list: string; readonly one: string; readonly many: string }>> = {
  positions: { list: 'a list of { label, offset }', one: 'at least one position', many: 'positions' },
  'chart-positions': {
    list: 'a list of { label, camber, caster, toe }',
    one: 'at least one position',
    many: 'positions',
  },
  'shim-sizes': { list: 'a list of shim sizes, mm', one: 'at least one shim size, mm', many: 'shim sizes' },
  links: {
    list: 'a list of links, named by their inner point',
    one: 'at least one link, named by its inner point',
    many: 'links',
  },
  wedges: { list: 'the wedges that are to be had, degrees', one: 'at least one wedge, degrees', many: 'wedges' },
  tapers: {
    list: 'the taper of each shim, degrees',
    one: 'the taper of at least one shim, degrees',
    many: 'tapers',
  },
  adjusters: { list: 'a list of adjusters', one: 'at least one adjuster', many: 'adjusters a corner' },
};

export const LACKS: Readonly<Record<Lack, string>> = {
  strut: 'a suspension with a strut',
  'ball-joints': 'an axle with ball joints of its own',
  'moving-points': 'a suspension with points that can move',
  rods: 'a suspension with rods',
};
