/** Every refusal that core can give, as a person is told of it: in words, and no field by the name that a file gives it. */

import * as v from 'valibot';
import { beforeAll, describe, expect, it, test, vi } from 'vitest';
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import { choice, number, positive, several, whole } from '../../core/adjuster/fields.ts';
import { check } from '../../core/check/refuse.ts';
import type { InputError } from '../../core/input-error.ts';
import type { FieldPath, Names, Rule } from '../../core/rule.ts';
import { suspensionKinds } from '../../core/suspension/catalogue.ts';
import { tapeLayouts } from '../../core/suspension/tape/catalogue.ts';
import { rules } from '../../core/words/en/exact.ts';
import { FIELD_WORDS } from '../../core/words/en/field-words.ts';
import { en } from '../../core/words/en/index.ts';
import { pathOf } from '../../core/words/en/refusal.ts';
import { fieldsIn, namesIn } from '../tools/schema-fields.ts';
import { refusalOf } from '../tools/spoil.ts';
import { everyRefusal } from './every-refusal.ts';

/** Rules that files and commands have before core sees them, and those that stand behind what cannot happen. */
const ELSEWHERE: readonly Rule['is'][] = ['path', 'readable', 'other'];

/** Every schema that anything was checked by, with where it stood. */
const checkedBy = vi.hoisted(() => new Map<unknown, Set<string>>());
vi.mock('../../core/check/refuse.ts', async (original) => {
  const real = await original<typeof import('../../core/check/refuse.ts')>();
  const check: typeof real.check = (schema, value, field) => {
    checkedBy.set(schema, (checkedBy.get(schema) ?? new Set()).add(field));
    return real.check(schema, value, field);
  };
  return { ...real, check };
});

let all: readonly InputError[] = [];
beforeAll(async () => {
  all = await everyRefusal();
}, 120_000);

/** What was entered, and names that somebody gave, are shown as they are. */
const withoutQuotes = (sentence: string): string => sentence.replace(/“[^”]*”/g, '');

/** Code in a sentence: `rimDiameter`, `[0]`, `front.camber`, `{ low }`, `upper_front`. */
const CODE = /[a-z][A-Z]|\[|\]|[A-Za-z_]\.[A-Za-z_]|[{}]|\w_\w|undefined|NaN|null|\bobject\b/;

describe('every refusal', () => {
  it('is met here, rule by rule', () => {
    const met = new Set(all.map(({ rule }) => rule.is));
    expect(
      rules()
        .filter((is) => !met.has(is))
        .sort(),
    ).toEqual([...ELSEWHERE].sort());
  });

  it('is a sentence without a name of code', () => {
    const sentences = new Set(
      all.flatMap((one) => [en.refusal(one), en.refusal({ value: one.value, rule: one.rule })]),
    );
    expect(sentences.size).toBeGreaterThan(500);
    expect([...sentences].filter((one) => CODE.test(withoutQuotes(one)))).toEqual([]);
    expect([...sentences].filter((one) => !/^[A-Z“0-9].*[^.]\.$/s.test(one))).toEqual([]);
  });

  it('is met here, field by field of every schema', () => {
    const places = (field: string) => field.replace(/\[\d+\]/g, '[]');
    /** The field as it ends, behind whatever it stands in. */
    const met = new Set<string>();
    for (const { field } of all) {
      const parts = places(field).split('.');
      for (const [i] of parts.entries()) {
        for (let end = i + 1; end <= parts.length; end++) met.add(parts.slice(i, end).join('.'));
      }
    }
    const asked = [...checkedBy.keys()].flatMap((schema) => fieldsIn(schema));
    expect(asked.length).toBeGreaterThan(200);
    expect([...new Set(asked.filter((field) => !met.has(field) && !met.has(field.replace(/(\[\])+$/, ''))))]).toEqual(
      [],
    );
  });

  it('has no field’s or choice’s code name in it', () => {
    const names = new Set([...checkedBy.keys()].flatMap(namesIn));
    const codes = [...names, ...Object.keys(adjusterKinds), ...Object.keys(suspensionKinds)].filter((name) =>
      /[a-z][A-Z0-9]|[-_@]/.test(name),
    );
    expect(codes.length).toBeGreaterThan(40);
    const code = new RegExp(`(^|[^\\w-])(${codes.join('|')})($|[^\\w-])`);
    const told = new Set(all.map((one) => withoutQuotes(en.refusal(one))));
    expect([...told].filter((one) => code.test(one))).toEqual([]);
    // Nor is a piece of a file shown as it stands there.
    expect(all.map((one) => en.refusal(one)).filter((one) => /“[[{]|":/.test(one))).toEqual([]);
  });

  it('is told in the shop’s own units', () => {
    const shop = { length: 'inch', angle: 'degrees-minutes', decimal: ',' } as const;
    // What was entered is shown as it is where it is text; the choice of a unit names the units.
    const own = all.filter(({ field }) => !/preferences\[\d+\]\.value\.(toe|length|mm|inch)$/.test(field));
    const told = new Set(own.map((one) => en.refusal(one, undefined, shop)).map(withoutQuotes));
    expect([...told].filter((one) => /\bmm\b|\d\.\d|\d,\d+\s?°/.test(one))).toEqual([]);
  });

  it('names its field by words that were chosen for it', () => {
    const chosen = new Set([
      ...Object.keys(FIELD_WORDS).map((name) => name.split('.').at(-1)),
      ...Object.values(suspensionKinds).flatMap(({ points }) => points),
      ...Object.values(tapeLayouts).flatMap(({ dimensions }) => dimensions.map(({ name }) => name)),
      ...['LF', 'RF', 'LR', 'RR'],
      // A form has a label for each.
      ...Object.values(adjusterKinds).flatMap(({ fields }) => fields.flatMap(({ name }) => name.split('.'))),
      // The stranger that is put everywhere.
      'chamber',
    ]);
    const plain = all.filter(
      ({ field, rule }) =>
        !/\b(settings|packs|from|to|moved|checks|texts|typed)\./.test(field) && !rule.is.startsWith('no-such'),
    );
    const strange = plain.flatMap(({ field }) =>
      pathOf(field).filter((part) => typeof part === 'string' && !chosen.has(part)),
    );
    expect([...new Set(strange)]).toEqual([]);
  });

  it('shows what was entered', () => {
    const typed = all.filter(({ value, rule }) => value === 'x' && rule.is === 'number');
    expect(typed.length).toBeGreaterThan(10);
    for (const one of typed) expect(en.refusal(one)).toMatch(/not “x” but (a number|an angle) from /);
  });
});

test.each<[string, unknown, Rule, string]>([
  [
    'car.wheel.rimDiameter',
    '12x',
    { is: 'number', low: 100, high: 2000, unit: 'mm' },
    'Diameter at which toe is a length: not “12x” but a number from 100 to 2000 mm.',
  ],
  ['tape.camber', undefined, { is: 'number', low: -20, high: 20, unit: 'degrees' }, 'Camber is missing: −20° to 20°.'],
  [
    'visits[0].rounds[1].reading.LF.camber',
    null,
    { is: 'number', low: -90, high: 90, unit: 'degrees' },
    'Visit 1, round 2, LF camber is missing: −90° to 90°.',
  ],
  [
    'spec.rear.totalToe.low',
    2,
    { is: 'below-high', high: -0.25 },
    'Rear windows, total toe, lower end: not “2” but a number below the upper end, −0.25.',
  ],
  [
    'car.front.suspension.points.upperBall[1]',
    20000,
    { is: 'number', low: -10000, high: 10000, unit: 'mm' },
    'Front axle, suspension, upper ball joint, outboard: not “20000” but a number from −10 000 to 10 000 mm.',
  ],
  [
    'car.front.adjusters[0].at',
    undefined,
    { is: 'point-name' },
    'Front axle, adjuster 1, point that it moves is missing: one of the points of the suspension.',
  ],
  [
    'car.front.adjusters[0].spacing',
    undefined,
    { is: 'above-zero', high: 200, unit: 'mm' },
    'Front axle, adjuster 1, distance between the two bolts is missing: a number above 0, up to 200 mm.',
  ],
  [
    'car.rear.adjusters[1].marks',
    undefined,
    { is: 'number', low: 4, high: 360, unit: '' },
    'Rear axle, adjuster 2, marks to a full turn are missing: 4 to 360.',
  ],
  [
    'tape.inner2Ahead',
    undefined,
    { is: 'number', low: -900, high: 900, unit: 'mm' },
    'Upper rear link, body pivot, ahead of the hub is missing: −900 to 900 mm.',
  ],
  [
    'car.rear.adjusters[0].links[0]',
    'dragBody',
    { is: 'point', among: ['lowerBody', 'upperBody'] },
    'Rear axle, adjuster 1, rod 1: not “drag link, at the steering box” but one of lower link, at the body; upper link, at the body.',
  ],
  [
    'car.rear.adjusters[0].id',
    '\ud800',
    { is: 'whole-characters' },
    'Rear axle, adjuster 1, name in the file: not “\ud800” but a name of whole characters.',
  ],
  [
    'spec.front.chamber',
    {},
    { is: 'no-such', what: 'field', known: ['camber'] },
    'Front windows, “chamber”: it has no place there.',
  ],
  [
    'settings.LF.upper.front',
    3,
    { is: 'no-such-adjuster', among: [{ id: 'rod', name: 'Tie rod' }] },
    'LF “upper.front”: there is no such adjuster; there are “Tie rod”.',
  ],
])('%s', (field, value, rule, sentence) => {
  expect(en.refusal({ field, value, rule })).toBe(sentence);
});

describe('a kind that brings no words', () => {
  const schema = v.object({
    throwLength: positive(9, 'mm'),
    clicks: whole(1, 40),
    way: choice(['inwards', 'outwards']),
    stops: several(number(0, 1, 'turns'), 3),
  });
  const good = { throwLength: 1, clicks: 2, way: 'inwards', stops: [0] };
  test.each<[object, string]>([
    [{ throwLength: 0 }, 'Throw length: not “0” but a number above 0, up to 9 mm.'],
    [{ clicks: 2.5 }, 'Clicks: not “2.5” but a whole number, 1 to 40.'],
    [{ way: undefined }, 'Way is missing: inwards or outwards.'],
    [{ stops: [] }, 'Stops: what is there will not do; at least one.'],
    [{ stops: [0, 0, 0, 0] }, 'Stops: not “0, 0, 0, 0” but up to three.'],
    [{ stops: [0, 2] }, 'Stops, number 2: not “2” but a number from 0 to 1 turns.'],
  ])('%j is told of all the same', (bad, sentence) => {
    const [error] = refusalOf(() => check(schema, { ...good, ...bad }, ''));
    expect(error && en.refusal(error)).toBe(sentence);
  });
});

it('takes names from who knows them', () => {
  const last = (path: FieldPath) => path.at(-1);
  const names: Names = {
    given: (path) => (last(path) === 0 || last(path) === 'rod' ? 'Left rod' : undefined),
    asked: (path) => (last(path) === 'lead' ? 'Longer by' : last(path) === 'sai' ? 'SAI there' : undefined),
  };
  const rule = { is: 'above-zero', high: 20, unit: 'mm' } as const;
  const said = (field: string) => en.refusal({ field, value: 0, rule }, names);
  expect(said('car.front.adjusters[0].lead')).toBe(
    'Front axle, “Left rod”, longer by: not “0” but a number above 0, up to 20 mm.',
  );
  expect(said('settings.LF.rod')).toBe('LF “Left rod”: not “0” but a number above 0, up to 20 mm.');
  expect(said('reading.LF.sai')).toContain('LF SAI there: ');
});
