/** Files of millions of values, which a browser would take half a minute to build, are refused as soon as they are counted. */
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { InputError } from '../../core/input-error.ts';
import { DEEPEST, parseCarFile } from '../../core/records/car-file.ts';
import { checkDepth, parseJson } from '../../core/records/json.ts';
import { en } from '../../core/words/en/index.ts';
import { carFile } from '../core/records/fixture.ts';

const BACKUP = 500_000_000;

/** ms that it took of the processor: how busy the machine is besides does not count. */
function costOf(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

const names = (count: number): string => Array.from({ length: count }, (_, i) => `"k${i}":1`).join(',');
const good = JSON.stringify(carFile('tarn-gt.json'));
/** A good car file with this text as one more field of its car, which no check looks into. */
const withField = (text: string): string => good.replace('"car":{', `"car":{"more":${text},`);

describe('a wide file', () => {
  test.each<[string, () => string]>([
    ['a list of twelve million empty objects', () => `[${'{},'.repeat(12_000_000)}{}]`],
    ['the same within a car', () => withField(`[${'{},'.repeat(12_000_000)}{}]`)],
    ['four million empty objects with blanks between', () => `[${'{},          '.repeat(4_000_000)}{}]`],
    ['twelve million noughts', () => `[${'0,'.repeat(12_000_000)}0]`],
    ['three million names', () => `{${names(3_000_000)}}`],
    ['the same within a car', () => withField(`{${names(3_000_000)}}`)],
    ['a list of lists of lists', () => `[${'[[[]]],'.repeat(4_000_000)}[]]`],
    ['ten million brackets', () => '['.repeat(10_000_000)],
    ['a string without an end, of quotes that are none', () => `"${'\\"'.repeat(12_000_000)}`],
  ])(
    'is refused within two seconds: %s',
    (_, make) => {
      const text = make();
      for (const read of [() => parseCarFile(text), () => parseJson(text, 'backup', BACKUP)]) {
        expect(costOf(() => expect(read).toThrow(InputError))).toBeLessThan(2000);
      }
    },
    60_000,
  );

  it('is refused in plain words', () => {
    const text = `[${'{},'.repeat(1_000_000)}{}]`;
    expect(() => parseCarFile(text)).toThrow('file: "too many values" is not allowed; allowed: at most');
    expect(en.refusal({ field: 'file', value: 700_000, rule: { is: 'values', most: 1 } })).toBe(
      'The file: it holds more than any file of this app.',
    );
  });
});

describe('what is no wide file is read', () => {
  it('as it is, whatever stands in its strings', () => {
    const text = fc.oneof(fc.string(), fc.constantFrom('"', '\\', '\\"', '[{,', '}]', '\\\\"', '"\\', '\u2028'));
    const value = fc.letrec((tie) => ({
      any: fc.oneof({ depthSize: 'small' }, text, fc.integer(), fc.constant(null), fc.array(tie('any')), tie('object')),
      object: fc.dictionary(text, tie('any')),
    })).any;
    fc.assert(
      fc.property(value, fc.boolean(), (any, spaced) => {
        const written = JSON.stringify(any, null, spaced ? 2 : undefined);
        expect(parseJson(written, 'file')).toEqual(JSON.parse(written));
      }),
    );
  });

  it('with a string of a million brackets', () => {
    const text = '[{,'.repeat(1_000_000);
    expect(parseJson(JSON.stringify({ text }), 'file')).toEqual({ text });
  });

  it('where a car has been measured ten thousand times', () => {
    const file = carFile('tarn-gt.json');
    const [visit] = file.visits ?? [];
    const visits = Array.from({ length: 5000 }, (_, i) => ({
      ...visit!,
      id: `visit-${i}`,
      rounds: [0, 1].map((round) => ({ ...visit!.rounds[0]!, id: `round-${i}-${round}` })),
    }));
    expect(parseCarFile(JSON.stringify({ ...file, visits })).visits).toHaveLength(5000);
  });

  it('with records that hold as little as they may', () => {
    const moves = Array.from({ length: 200_000 }, (_, i) => ({ id: `${i}`, from: 0, to: 1 }));
    expect(parseJson(JSON.stringify({ moves }), 'backup', BACKUP)).toEqual({ moves });
  });
});

it('how deep a value is takes no more than one walk through it', () => {
  const wide = Array.from({ length: 1_000_000 }, () => ({ a: [] }));
  expect(costOf(() => checkDepth(wide, 'file', DEEPEST))).toBeLessThan(2000);
  const round: { self?: unknown } = {};
  round.self = round;
  expect(() => checkDepth(round, 'file', DEEPEST)).toThrow('file: "deeply nested data" is not allowed');
});
