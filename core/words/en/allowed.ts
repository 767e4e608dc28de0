/** What is allowed, in a person's words: the exact sayings, but for those that name fields as a file does. */
import type { Called, Items, Phrase, Rule } from '../../rule.ts';
import { plain } from '../../units/plain.ts';
import { exact, inGroups, or } from './exact.ts';
import { spaced } from './spaced.ts';

type Sayings = { readonly [R in Rule['is']]?: (rule: Extract<Rule, { is: R }>) => string };

const SAYINGS: Sayings & Readonly<Partial<Record<Phrase, () => string>>> = {
  number: ({ low, high, unit }) => `a number from ${figure(low)} to ${figure(high)} ${unit}`.trim(),
  range: ({ unit, limit }) =>
    `two numbers in ${unit}, the lower one first${limit === undefined ? '' : `, within ±${limit}`}`,
  choice: ({ of, names }) => or(names ?? of.map((one) => CHOICES[one] ?? spaced(one))),
  'one-of': ({ of, unit = '', names }) =>
    `one of ${(names?.map(quoted) ?? of.map((one) => (typeof one === 'number' ? plain(one) : quoted(one)))).join(', ')}${unit}`,
  list: (rule) => (rule.items && LISTS[rule.items]) ?? exact(rule),
  exactly: ({ value }) => quoted(value),
  text: (rule) => (rule.least > 0 ? exact(rule) : `text of at most ${figure(rule.most)} characters`),
  object: ({ as }) => (as === 'car-file' ? 'a car file' : as === 'backup' ? 'a backup file' : SEVERAL),
  'no-such': ({ known }) => or(known.map(spaced)),
  type: ({ type }) => TYPES[type] ?? 'another value',
  place: (rule) => {
    const { on, low, high } = rule;
    return on === 'angle' || on === 'thickness' ? exact(rule) : `a number from ${figure(low)} to ${figure(high)} ${on}`;
  },
  taper: ({ none, of, such }) =>
    `${none}, or a taper${of ? ` of ${or(of.map(String))}°` : ''} and its angle, such as ${such}`,
  thicknesses: ({ most }) => `sizes that make at most ${figure(most)} different thicknesses of the pack`,
  step: ({ least, most, unit }) =>
    `${`${plain(least, 9)} ${unit}`.trim()} or more: with a finer step there are more than ${figure(most)} positions`,
  makes: ({ thickness }) => `shims that make ${figure(thickness)} mm, where the pack stands`,
  adjuster: ({ among }) => adjusters(among),
  'no-such-adjuster': ({ among }) => adjusters(among),
  point: ({ among }) => `one of ${among.map(spaced).join(', ')}`,
  'apart-from': ({ point }) => `a point apart from ${spaced(point)}: no two joints share a place`,
  'as-on-the-left': ({ kind }) => `${kind.name}, as on the left`,
  'longer-than-rise': ({ rise }) => `more than ${rise.toFixed(1)} mm, the difference of its ends’ heights`,
  'strut-length': ({ above }) =>
    `more than ${above.toFixed(1)} mm, how far its lower end is from the steering axis, with its top above that end`,
  closes: ({ arm, least, most }) =>
    `${least.toFixed(1)} to ${most.toFixed(1)} mm, so that the triangle of the ${arm} arm closes`,
  'below-high': ({ high }) => `a number below the upper end, ${plain(high)}`,
  'in-window': ({ low, high }) => `a number within the window, ${plain(low)} to ${plain(high)}`,
  version: ({ newest }) => (newest > 1 ? `a version from 1 to ${newest}` : 'version 1'),
  car: ({ which }) => (which === 'this' ? 'this car' : 'the same car'),
  'yes-or-no': () => 'yes or no',
  time: () => 'a date, or a date and time',
  id: () => 'another id: this one means something else to the app',
  vector: () => 'three numbers in mm: forward, outboard and up',
  direction: () => 'three numbers, forward, outboard and up, not all zero',
  'chart-or-steps': () => 'a printed chart or so many degrees a step, one of the two',
  'cam-spacing': () => 'more mm than the eccentricity; either both are given or neither',
  'point-name': () => 'one of the points of the suspension',
  'body-point-name': () => 'a point of the suspension on the body',
  'seen-from': () => 'the end that one looks at, such as the wheel end',
  'other-pack': () => 'another shim pack',
  points: () => 'points, each with three numbers in mm',
  dimensions: () => 'tape dimensions, mm',
  counts: () => 'a count of each sort of record',
  stores: () => 'records of each sort',
  round: () => 'a visit with a reading',
};

export const allowed = (rule: Rule): string => {
  const say = SAYINGS[rule.is] as ((rule: Rule) => string) | undefined;
  return say ? say(rule) : exact(rule);
};

const adjusters = (among: readonly Called[]): string =>
  among.length > 0 ? `one of ${among.map(({ name }) => quoted(name)).join(', ')}` : 'none: there are no adjusters here';

/** With a true minus sign, and large ones in groups. */
const figure = (x: number): string => (Math.abs(x) < 1e4 ? plain(x) : inGroups(plain(x)));
const quoted = (name: string): string => `“${name}”`;

const SEVERAL = 'all that belongs there';

const LISTS: Readonly<Partial<Record<Items, string>>> = {
  positions: 'a table, a label and an offset a row',
  'chart-positions': 'a table, a label, camber, caster and toe a row',
};
const CHOICES: Readonly<Record<string, string>> = { 'wont-move': 'will not move', centreline: 'centre line' };
const TYPES: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  boolean: 'yes or no',
  Array: 'a list',
  Object: SEVERAL,
};
