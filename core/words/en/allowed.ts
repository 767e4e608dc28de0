/** What is allowed, in a person's words: the exact sayings, but for those that name fields as a file does. */
import type { Called, Items, Phrase, Rule } from '../../rule.ts';
import { aboutLength, figure, inUnit, lengthText, lengthUnit, partAngle, unitName } from '../../units/shop.ts';
import type { Units } from '../words.ts';
import { exact, inGroups, or } from './exact.ts';
import { FIELD_WORDS } from './field-words.ts';
import { spaced } from './spaced.ts';

type Sayings = { readonly [R in Rule['is']]?: (rule: Extract<Rule, { is: R }>, units?: Units) => string };

const SAYINGS: Sayings & Readonly<Partial<Record<Phrase, (rule: Rule, units?: Units) => string>>> = {
  number: ({ low, high, unit }, units) => `${sortOf(unit)} from ${ends(low, high, unit, units)}`,
  'above-zero': ({ high, unit }, units) => `${sortOf(unit)} above 0, up to ${inUnit(high, unit, units, 'down')}`,
  finite: ({ unit = '' }) => (unit === 'degrees' ? 'an angle' : unit === 'mm' ? 'a length' : 'a number'),
  range: ({ unit, limit }, units) =>
    `two ${unit === 'degrees' ? 'angles' : `numbers${unit ? ` in ${unitName(unit, units)}` : ''}`}, the lower one first${limit === undefined ? '' : `, within ±${inUnit(limit, unit, units, 'down')}`}`,
  choice: ({ of, names }) => or(names ?? of.map((one) => CHOICES[one] ?? spaced(one))),
  'one-of': ({ of, unit, names }, units) => {
    const size = (one: number) => (unit ? partAngle(one, units) : figure(one, units));
    return `one of ${(names?.map(quoted) ?? of.map((one) => (typeof one === 'number' ? size(one) : quoted(one)))).join(', ')}`;
  },
  list: (rule, units) => (rule.items && LISTS[rule.items]?.replace('mm', lengthUnit(units))) ?? exact(rule),
  exactly: ({ value }) => quoted(value),
  text: (rule) => (rule.least > 0 ? exact(rule) : `text of at most ${grouped(rule.most)} characters`),
  object: ({ as }) => (as === 'car-file' ? 'a car file' : as === 'backup' ? 'a backup file' : SEVERAL),
  'no-such': ({ known }) => or(known.map(spaced)),
  type: ({ type }) => TYPES[type] ?? 'another value',
  place: ({ on, low, high }, units) => {
    if (on === 'thickness') return `a thickness from ${ends(low, high, 'mm', units)}`;
    const unit = on === 'angle' ? 'degrees' : on;
    return `${sortOf(unit)} from ${ends(low, high, unit, units)}`;
  },
  taper: ({ none, of, such }, units) =>
    `${none}, or a taper${of ? ` of ${or(of.map((one) => partAngle(one, units)))}` : ''} and its angle, such as ${such
      .split('@')
      .map((one) => partAngle(Number(one), units))
      .join(' at ')}`,
  shim: ({ above, high }, units) =>
    `a shim thickness above ${inUnit(above, 'mm', units)}, up to ${inUnit(high, 'mm', units, 'down')}`,
  thicknesses: ({ most }) => `sizes that make at most ${grouped(most)} different thicknesses of the pack`,
  step: ({ least, most, unit }, units) =>
    `${inUnit(least, unit, units, 'up')} or more: with a finer step there are more than ${grouped(most)} positions`,
  makes: ({ thickness }, units) => `shims that make ${lengthText(thickness, units)}, where the pack stands`,
  adjuster: ({ among }) => adjusters(among),
  'no-such-adjuster': ({ among }) => adjusters(among),
  point: ({ among }) => `one of ${listed(among.map(pointName))}`,
  'apart-from': ({ point }) => `a point apart from ${pointName(point)}: no two joints share a place`,
  'as-on-the-left': ({ kind }) => `${kind.name}, as on the left`,
  'longer-than-rise': ({ rise }, units) =>
    `more than ${aboutLength(rise, 1, units)}, the difference of its ends’ heights`,
  reaches: ({ least }, units) =>
    `more than ${aboutLength(least, 1, units)}, how far its ends are apart along the car and in height`,
  'strut-length': ({ above }, units) =>
    `more than ${aboutLength(above, 1, units)}, how far its lower end is from the steering axis, with its top above that end`,
  closes: ({ arm, least, most }, units) =>
    `${bare(aboutLength(least, 1, units))} to ${aboutLength(most, 1, units)}, so that the triangle of the ${arm} arm closes`,
  'below-high': ({ high, unit = '' }, units) => `a number below the upper end, ${inUnit(high, unit, units)}`,
  'in-window': ({ low, high, unit = '' }, units) =>
    `a number within the window, ${ends(low, high, unit, units, 'near')}`,
  angle: ({ mode, limit }, units) => {
    const [low, high] = [`−${limit}°`, `${limit}°`];
    const such =
      units?.angle === 'degrees-minutes' || mode === 'degrees-minutes'
        ? '−0°21′ or 1°30′'
        : `${figure(-0.35, units)} or 1°30′`;
    return `an angle from ${low} to ${high}, such as ${such}`;
  },
  length: ({ limit }, units) => {
    const such =
      units?.length === 'inch' ? `${figure(0.177, units)}, 3/16 or 1 1/4` : `${figure(4.5, units)} or 3/16 in`;
    return `a length up to ${inUnit(limit, 'mm', units, 'down')}, such as ${such}`;
  },
  'within-diameter': ({ diameter }, units) =>
    `a length from ${ends(-diameter, diameter, 'mm', units)}, the diameter at which it is taken`,
  'near-rear': ({ diameter, rear }, units) =>
    `within the diameter, ${inUnit(diameter, 'mm', units, 'down')}, of the distance at the rear, ${inUnit(rear, 'mm', units)}`,
  diameter: ({ low, high }, units) => `a number from ${ends(low, high, 'mm', units)}`,
  apart: ({ least }, units) => `two places of the steering at least ${partAngle(least, units)} apart`,
  steady: ({ within }, units) => `readings that scatter by no more than ${partAngle(within, units)}`,
  readings: ({ least }) => `${least} readings or more`,
  scatter: ({ most }, units) => `a scatter up to ${figure(most, units)}`,
  steer: ({ low, high }, units) => `an angle from ${ends(low, high, 'degrees', units)}, the same each way`,
  'shim-size': ({ low, high, decimals }, units) =>
    `a thickness from ${ends(low, high, 'mm', units)}${units?.length === 'inch' ? '' : `, with at most ${decimals} decimals`}`,
  'shim-sizes': ({ most }) => `1 to ${most} shim sizes`,
  'shared-step': ({ step }, units) => `sizes that share a step of ${inUnit(step, 'mm', units, 'up')} or more`,
  'at-least-one': ({ items }) => (items ? `at least one ${ONE[items]}` : 'at least one'),
  version: ({ newest }) => (newest > 1 ? `a version from 1 to ${newest}` : 'version 1'),
  car: ({ which }) => (which === 'this' ? 'this car' : 'the same car'),
  'yes-or-no': () => 'yes or no',
  time: () => 'a date, or a date and time',
  id: () => 'another name: this one means something else to the app',
  'whole-characters': () => 'a name of whole characters',
  vector: (_, units) => `three numbers in ${lengthUnit(units)}: forward, outboard and up`,
  direction: () => 'three numbers, forward, outboard and up, not all zero',
  'chart-or-steps': () => 'a printed chart or so many degrees a step, one of the two',
  'cam-spacing': () => 'more than the eccentricity; either both are given or neither',
  'point-name': () => 'one of the points of the suspension',
  'body-point-name': () => 'a point of the suspension on the body',
  'seen-from': () => 'the end that one looks at, such as the wheel end',
  'other-pack': () => 'another shim pack',
  thickness: () => 'a thickness of 0 or more',
  points: (_, units) => `points, each with three numbers in ${lengthUnit(units)}`,
  dimensions: () => 'tape dimensions',
  'near-layout': () => 'a length that goes with the others that were measured: measure it again',
  counts: () => 'a count of each sort of record',
  stores: () => 'records of each sort',
  round: () => 'a visit with a reading',
};

export const allowed = (rule: Rule, units?: Units): string => {
  const say = SAYINGS[rule.is] as ((rule: Rule, units?: Units) => string) | undefined;
  return say ? say(rule, units) : exact(rule);
};

const sortOf = (unit: string): string => (unit === 'degrees' ? 'an angle' : 'a number');

/** `100 to 2000 mm`, `−20° to 20°`: in inches not a hair beyond what is allowed. */
function ends(low: number, high: number, unit: string, units?: Units, rounding?: 'near'): string {
  const [a, b] = [inUnit(low, unit, units, rounding ?? 'up'), inUnit(high, unit, units, rounding ?? 'down')];
  return `${unit === 'degrees' ? a : bare(a, unitName(unit, units))} to ${b}`;
}
const bare = (text: string, unit = text.split(' ').at(-1) ?? ''): string =>
  unit && text.endsWith(` ${unit}`) ? text.slice(0, -unit.length - 1) : text;

/** A point or a link as the drawing names it. */
export const pointName = (name: string): string =>
  (Object.hasOwn(FIELD_WORDS, name) ? FIELD_WORDS[name] : undefined) ?? spaced(name);

/** A name that has a comma of its own asks for more between two. */
const listed = (names: readonly string[]): string => names.join(names.some((name) => name.includes(',')) ? '; ' : ', ');

const adjusters = (among: readonly Called[]): string =>
  among.length > 0 ? `one of ${among.map(({ name }) => quoted(name)).join(', ')}` : 'none: there are no adjusters here';

/** Large ones in groups. */
const grouped = (n: number): string => (n < 1e4 ? String(n) : inGroups(n));
const quoted = (name: string): string => `“${name}”`;

const ONE: Readonly<Record<Items, string>> = {
  positions: 'position',
  'chart-positions': 'position',
  'shim-sizes': 'shim size',
  links: 'rod',
  wedges: 'wedge',
  tapers: 'taper',
  adjusters: 'adjuster',
};
const SEVERAL = 'all that belongs there';

const LISTS: Readonly<Partial<Record<Items, string>>> = {
  positions: 'a table, a label and an offset a row',
  'chart-positions': 'a table, a label, camber, caster and toe a row',
  'shim-sizes': 'a list of shim sizes, mm',
  links: 'one rod or more',
  wedges: 'the wedges that are to be had',
  tapers: 'the taper of each shim',
};
const CHOICES: Readonly<Record<string, string>> = {
  'wont-move': 'will not move',
  centreline: 'centre line',
  'degrees-minutes': 'degrees and minutes',
  across: 'left and right',
  wheel: 'wheel by wheel',
};
const TYPES: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  boolean: 'yes or no',
  Array: 'a list',
  Object: SEVERAL,
};
