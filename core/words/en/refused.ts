/** Why an input is refused, where it is plain to see which: a clause that goes on behind the field's name, or alone. */
import type { Phrase, Refused, Rule } from '../../rule.ts';
import { figure, inUnit, partAngle } from '../../units/shop.ts';
import type { Units } from '../words.ts';
import { allowed, pointName } from './allowed.ts';
import { inGroups, LACKS } from './exact.ts';

type Saying<R> = (rule: R, value: unknown, units?: Units) => string;
type Sayings = { readonly [R in Rule['is']]?: Saying<Extract<Rule, { is: R }>> };

/** Those of which it is not enough to say what is allowed. */
const SAYINGS: Sayings & Readonly<Partial<Record<Phrase, Saying<Rule>>>> = {
  'no-such': ({ what }) => (what === 'field' ? 'it has no place there' : `there is no such ${what}`),
  'no-such-adjuster': ({ among }) =>
    `there is no such adjuster; ${among.length > 0 ? `there are ${among.map(({ name }) => `“${name}”`).join(', ')}` : 'there are none'}`,
  adjuster: (rule, value, units) =>
    rule.among.length > 0 ? instead(rule, value, units) : `not ${shown(value)}: there is no other that it could be`,
  fits: ({ suspension, lacks }) => `it does not fit ${suspension}: it needs ${LACKS[lacks]}`,
  combinations: ({ most, of, two }, count) =>
    `${inGroups(Number(count))} combinations ${two ? 'of two adjusters' : 'of positions'}, and up to ${inGroups(most)} ${of === 'axle' ? 'an axle' : 'a corner'} can be searched: lock an adjuster or widen its step${two ?? ''}`,
  object: (rule, value, units) =>
    rule.as === 'car-file' || rule.as === 'backup' ? instead(rule, value, units) : amiss(value),
  type: (rule, value, units) => (rule.type === 'Object' ? amiss(value) : instead(rule, value, units)),
  given: () => 'nothing is entered, and it is needed',
  absent: ({ why, suspension }) =>
    `leave it out: ${suspension} ${why === 'by-points' ? 'is given by points' : 'has no steering rack'}`,
  json: () => 'it is no file of this app, or it was cut short',
  values: () => 'it holds more than any file of this app',
  levels: () => 'it is nested more deeply than any file of this app',
  version: (rule, value, units) =>
    rule.newer ? `a newer app made it; this one reads versions up to ${rule.newest}` : instead(rule, value, units),
  checksum: () => 'it is damaged or was edited',
  'own-id': (_, value) => `${shown(value)} is another adjuster of the axle already`,
  'labels-differ': () => 'two rows have the same label',
  'chart-or-steps': () => 'a printed chart or so many degrees a step is needed, one of the two',
  'holds-a-step': () => 'no step lies within it',
  'on-both-sides': () => 'it is one for the whole axle: it has to be on both sides or on neither',
  'given-with-left': () => 'leave it out: it is given with the left side',
  'holds-the-wheel': () => 'they leave the wheel free to move',
  'can-reach': () => 'with the adjusters there an arm cannot reach',
  diameter: (rule, value, units) => `${instead(rule, value, units)}${otherUnit(rule, value, units)}`,
  apart: ({ least }, value, units) =>
    `the two places of the steering are ${partAngle(Number(value), units, 2)} apart: turn it by ${partAngle(least, units)} or more between them`,
  steady: ({ within }, value, units) =>
    `the readings jump over ${partAngle(Number(value), units, 1)}: hold it still until they stay within ${partAngle(within, units)}`,
  readings: ({ least }, value) =>
    `${value} ${value === 1 ? 'reading tells' : 'readings tell'} no scatter: take ${least} or more`,
  scatter: ({ most }, value, units) =>
    `the readings scatter by ${figure(Number(value), units, 2)}, more than the ${figure(most, units)} of any gauge: one of them is a slip`,
  'two-or-four': () => 'two readings half a turn apart, or four a quarter apart, are needed',
  fraction: (_, value) => `${shown(value)} is a fraction, which is of inches only, such as 3/16 in`,
  measured: () => 'it was not measured',
  round: () => 'there is no visit with a reading yet',
  'listed-once': (_, value, units) => `${shown(value, units, 'mm')} is listed twice`,
};

export function refused({ rule, value }: Refused, units?: Units): string {
  const say = SAYINGS[rule.is] as Saying<Rule> | undefined;
  return say ? say(rule, value, units) : instead(rule, value, units);
}

/** "; 17 in would be 431.8 mm": a diameter that was typed in the unit of another shop. */
function otherUnit({ low, high }: Extract<Rule, { is: 'diameter' }>, value: unknown, units?: Units): string {
  const isInch = units?.length === 'inch';
  const typed = isInch ? Number(value) / MM_PER_INCH : Number(value);
  const meant = isInch ? typed : typed * MM_PER_INCH;
  if (!(meant >= low && meant <= high)) return '';
  const other = isInch ? `${figure(typed, units, 1)} mm` : `${figure(typed, units, 1)} in`;
  return `; ${other} would be ${inUnit(isInch ? typed : meant, 'mm', units)}`;
}
const MM_PER_INCH = 25.4;

/** "not “12x” but a number from 100 to 2000 mm" */
function instead(rule: Rule, value: unknown, units?: Units): string {
  const may = allowed(rule, units);
  if (isEmpty(value)) return `nothing is entered; ${may}`;
  const what = shown(rule.is === 'point' ? pointName(String(value)) : value, units, unitOf(rule));
  return what ? `not ${what} but ${may}` : `what is there will not do; ${may}`;
}

/** Behind "Camber is missing": ": −20° to 20°"; nothing where it is no matter of being there. */
export function missing({ rule, value }: Refused, units?: Units): string | undefined {
  if (!isEmpty(value)) return undefined;
  if (rule.is === 'given' || rule.is === 'object' || (rule.is === 'type' && rule.type === 'Object')) return '';
  if (SAYINGS[rule.is]) return undefined;
  return `: ${allowed(rule, units).replace(/^(?:an angle|a number) from /, '')}`;
}

/** What a number that breaks the rule is in. */
function unitOf(rule: Rule): string {
  if ('unit' in rule && rule.unit) return rule.unit === '°' ? 'degrees' : rule.unit;
  if (rule.is === 'place') return rule.on === 'thickness' ? 'mm' : rule.on === 'angle' ? 'degrees' : rule.on;
  return IN_MM.includes(rule.is) ? 'mm' : IN_DEGREES.includes(rule.is) ? 'degrees' : '';
}
const IN_MM: readonly string[] = [
  ...['length', 'shim', 'shim-size', 'shim-sizes', 'makes', 'thickness', 'thicknesses', 'listed-once', 'vector'],
  ...[
    'longer-than-rise',
    'reaches',
    'near-layout',
    'strut-length',
    'closes',
    'within-diameter',
    'near-rear',
    'cam-spacing',
    'points',
    'diameter',
  ],
];
const IN_DEGREES: readonly string[] = ['angle', 'steer'];

/** What is made of many fields has to be there. */
const amiss = (value: unknown): string => (isEmpty(value) ? 'it is missing' : 'what is there will not do');

const isEmpty = (value: unknown): boolean =>
  value === undefined || value === null || (typeof value === 'string' && value.trim() === '');

const LONGEST = 40;

/** A value in quotation marks, as it was entered; nothing where it is none that a person would know again. */
function shown(value: unknown, units?: Units, unit?: string): string {
  const text = textOf(value, units, unit);
  return text && `“${text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text}”`;
}

function textOf(value: unknown, units?: Units, unit?: string): string {
  if (typeof value === 'number') return Number.isFinite(value) ? numberText(value, units, unit) : '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (Array.isArray(value)) {
    const texts = value.length < 7 && value.every(isPlain) ? value.map((one) => textOf(one, units, unit)) : [];
    return texts.join(units?.decimal === ',' ? '; ' : ', ');
  }
  return typeof value === 'string' ? value : '';
}

/** As it was typed: inches and minutes where the shop types such. */
function numberText(x: number, units?: Units, unit = ''): string {
  if (unit === 'mm' && units?.length === 'inch') return inUnit(x, unit, units);
  return unit === 'degrees' && units?.angle === 'degrees-minutes' ? partAngle(x, units, 6) : figure(x, units, 6);
}

const isPlain = (one: unknown): boolean => typeof one === 'string' || Number.isFinite(one);
