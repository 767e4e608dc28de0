/** How wide and how deep a text may be, at the edges; what is read, against the platform's own reader. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../../core/input-error.ts';
import { checkDepth, parseJson } from '../../../core/records/json.ts';

const read = (text: string): unknown => parseJson(text, 'file');
const refusal = (text: string): InputError => {
  try {
    read(text);
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('it was taken');
};
const names = (count: number): string =>
  `{${Array.from({ length: count }, (_, i) => `"k${1_000_000 + i}":1`).join(',')}}`;
const items = (count: number): string => `[${'123456,'.repeat(count - 1)}1]`;

describe('a text', () => {
  it('is read as the platform reads it, quotes and brackets in its strings or not', () => {
    const text = fc.array(fc.constantFrom('"', '\\', '[', '{', '}', ']', ',', 'a'), { maxLength: 8 });
    const string = text.map((all) => all.join(''));
    const value = fc.letrec((tie) => ({
      any: fc.oneof({ maxDepth: 4 }, string, fc.integer(), fc.array(tie('any')), fc.dictionary(string, tie('any'))),
    })).any;
    fc.assert(
      fc.property(value, (any) => {
        const written = JSON.stringify(any);
        expect(read(written)).toEqual(JSON.parse(written));
        expect(read(`\ufeff ${written}\n`)).toEqual(JSON.parse(written));
      }),
    );
  });

  it('that is none is refused with its beginning', () => {
    expect(refusal('[1,]')).toMatchObject({ field: 'file', value: '[1,]', rule: { is: 'json' } });
    expect(refusal(`["${'x'.repeat(99)}`).value).toBe(`["${'x'.repeat(38)}`);
    for (const odd of ['"', ']', ',', '}}', '"\\"']) expect(refusal(odd)).toMatchObject({ rule: { is: 'json' } });
  });

  it('may be so long and no longer', () => {
    expect(parseJson('[12345]', 'file', 7)).toEqual([12_345]);
    expect(() => parseJson('[123456]', 'file', 7)).toThrow(InputError);
  });

  it('may have 200,000 names in an object, in each of several', () => {
    expect(Object.keys(read(names(200_000)) as object)).toHaveLength(200_000);
    expect(refusal(names(200_001))).toMatchObject({ value: 200_001, rule: { is: 'values', most: 200_000 } });
    expect(read(`[${names(150_000)},${names(150_000)}${',1234567890'.repeat(100_000)}]`)).toHaveLength(100_002);
  });

  it('may have a million items in a list', () => {
    expect(read(items(1_000_000))).toHaveLength(1_000_000);
    expect(refusal(items(1_000_001))).toMatchObject({ value: 1_000_001, rule: { is: 'values', most: 1_000_000 } });
  });

  it('may have 200,000 values and one for each six characters, blanks apart', () => {
    // n noughts are 2n characters, a third as many sixths: 300,000 are 200,000 and a third of 300,000.
    for (const blanks of ['', ' \n '.repeat(5)]) {
      const noughts = (count: number): string => `[${`0,${blanks}`.repeat(count - 1)}0]`;
      expect(read(noughts(299_990))).toHaveLength(299_990);
      expect(refusal(noughts(300_010))).toMatchObject({ rule: { is: 'values' } });
    }
    // What stands in strings is characters, and no values; the outermost is not counted.
    expect(read(`["${'[{,'.repeat(400_000)}"]`)).toHaveLength(1);
    expect(() => parseJson('[1,2,3]', 'file', 99, { values: 2 })).toThrow(InputError);
    expect(parseJson('[1,2,3]', 'file', 99, { values: 3 })).toEqual([1, 2, 3]);
  });

  it('may be a thousand levels deep below the outermost', () => {
    const nested = (levels: number): string => '['.repeat(levels) + ']'.repeat(levels);
    expect(read(nested(1001))).toEqual(JSON.parse(nested(1001)));
    expect(refusal(nested(1002))).toMatchObject({ value: 1002, rule: { is: 'levels', most: 1000 } });
    // Side by side is not deep.
    expect(read(`[${'[[]],'.repeat(5000)}{"a":{}}]`)).toHaveLength(5001);
  });
});

it('a value is as deep as something lies in it', () => {
  const deep = { a: [{ b: [] }], c: 1 };
  for (const most of [3, 4]) expect(() => checkDepth(deep, 'car', most)).not.toThrow();
  for (const most of [0, 1, 2])
    expect(() => checkDepth(deep, 'car', most)).toThrow(
      expect.objectContaining({ field: 'car', value: most + 1, rule: { is: 'levels', most } }),
    );
  for (const flat of [1, 'a', null, [], {}]) expect(() => checkDepth(flat, 'car', 0)).not.toThrow();
});
