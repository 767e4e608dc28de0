/** Why an input is refused, where it is plain to see which: a clause that goes on behind the field's name, or alone. */
import type { Phrase, Refused, Rule } from '../../rule.ts';
import { plain } from '../../units/plain.ts';
import { allowed } from './allowed.ts';
import { inGroups, LACKS } from './exact.ts';
import { spaced } from './spaced.ts';

type Saying<R> = (rule: R, value: unknown) => string;
type Sayings = { readonly [R in Rule['is']]?: Saying<Extract<Rule, { is: R }>> };

/** Those of which it is not enough to say what is allowed. */
const SAYINGS: Sayings & Readonly<Partial<Record<Phrase, Saying<Rule>>>> = {
  'no-such': ({ what }) => (what === 'field' ? 'it has no place there' : `there is no such ${what}`),
  'no-such-adjuster': ({ among }) =>
    `there is no such adjuster; ${among.length > 0 ? `there are ${among.map(({ name }) => `“${name}”`).join(', ')}` : 'there are none'}`,
  adjuster: (rule, value) =>
    rule.among.length > 0 ? instead(rule, value) : `not ${shown(value)}: there is no other that it could be`,
  fits: ({ suspension, lacks }) => `it does not fit ${suspension}: it needs ${LACKS[lacks]}`,
  combinations: ({ most, of, two }, count) =>
    `${inGroups(Number(count))} combinations ${two ? 'of two adjusters' : 'of positions'}, and up to ${inGroups(most)} ${of === 'axle' ? 'an axle' : 'a corner'} can be searched: lock an adjuster or widen its step${two ?? ''}`,
  object: (rule, value) => (rule.as === 'car-file' || rule.as === 'backup' ? instead(rule, value) : amiss(value)),
  type: (rule, value) => (rule.type === 'Object' ? amiss(value) : instead(rule, value)),
  given: () => 'nothing is entered, and it is needed',
  absent: ({ why, suspension }) =>
    `leave it out: ${suspension} ${why === 'by-points' ? 'is given by points' : 'has no steering rack'}`,
  json: () => 'it is no file of this app, or it was cut short',
  values: () => 'it holds more than any file of this app',
  levels: () => 'it is nested more deeply than any file of this app',
  version: (rule, value) =>
    rule.newer ? `a newer app made it; this one reads versions up to ${rule.newest}` : instead(rule, value),
  checksum: () => 'it is damaged or was edited',
  'own-id': (_, value) => `${shown(value)} is another adjuster of the axle already`,
  'labels-differ': () => 'two rows have the same label',
  'chart-or-steps': () => 'a printed chart or so many degrees a step is needed, one of the two',
  'holds-a-step': () => 'no step lies within it',
  'on-both-sides': () => 'it is one for the whole axle: it has to be on both sides or on neither',
  'given-with-left': () => 'leave it out: it is given with the left side',
  'holds-the-wheel': () => 'they leave the wheel free to move',
  'can-reach': () => 'with the adjusters there an arm cannot reach',
  fraction: (_, value) => `${shown(value)} is a fraction, which is of inches only, such as 3/16 in`,
  measured: () => 'it was not measured',
  round: () => 'there is no visit with a reading yet',
  'listed-once': (_, value) => `${shown(value)} is listed twice`,
};

export function refused({ rule, value }: Refused): string {
  const say = SAYINGS[rule.is] as Saying<Rule> | undefined;
  return say ? say(rule, value) : instead(rule, value);
}

/** "not “12x” but a number from 100 to 2000 mm" */
function instead(rule: Rule, value: unknown): string {
  const may = allowed(rule);
  if (isEmpty(value)) return `nothing is entered; ${may}`;
  const what = shown(rule.is === 'point' ? spaced(String(value)) : value);
  return what ? `not ${what} but ${may}` : `what is there will not do; ${may}`;
}

/** What is made of many fields has to be there. */
const amiss = (value: unknown): string => (isEmpty(value) ? 'it is missing' : 'what is there will not do');

const isEmpty = (value: unknown): boolean =>
  value === undefined || value === null || (typeof value === 'string' && value.trim() === '');

const LONGEST = 40;

/** A value in quotation marks, as it was entered; nothing where it is none that a person would know again. */
function shown(value: unknown): string {
  const text = textOf(value);
  return text && `“${text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text}”`;
}

function textOf(value: unknown): string {
  if (typeof value === 'number') return Number.isFinite(value) ? plain(value, 6) : '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (Array.isArray(value)) return value.length < 7 && value.every(isPlain) ? value.map(textOf).join(', ') : '';
  return typeof value === 'string' ? value : '';
}

const isPlain = (one: unknown): boolean => typeof one === 'string' || Number.isFinite(one);
