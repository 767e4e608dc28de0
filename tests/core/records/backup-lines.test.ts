/** A backup line by line: all of it comes back, and whatever is cut off, changed, moved or left out is noticed. */
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { pieceLine } from '../../../core/records/backup-lines.ts';
import { LONGEST_LINE, readBackupLines } from '../../../core/records/backup-reader.ts';
import { fromCarFile } from '../../../core/records/exchange.ts';
import { linesOf } from '../../../core/records/lines.ts';
import type { Stores } from '../../../core/records/stored.ts';
import { backupLines, inChunks, sha256, whole } from '../../tools/backup-text.ts';
import { carFile } from './fixture.ts';

const made = '2024-12-01T08:00:00Z';
const { car, visits, readings, moves } = fromCarFile(carFile('ribble-six.json'), { now: made, makeId: () => 'x' });
const stores: Stores = {
  cars: [car],
  visits,
  readings,
  moves,
  drafts: [{ id: 'reading:v', texts: { 'LF.camber': '-0.\n"[' }, cursor: 'LF.camber', changed: made }],
  preferences: [{ id: 'units', value: { angle: 'degrees' } }],
};

const read = (text: string, size = 1000) =>
  whole(readBackupLines(linesOf(inChunks(text, size), 'backup', LONGEST_LINE), sha256));
const lines = await backupLines(stores, made, 3);
const text = `${lines.join('\n')}\n`;

describe('a backup of lines', () => {
  it('gives every record back, however its pieces and those of the file fall', () =>
    fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 1, max: 20 }),
        fc.integer({ min: 1, max: 5000 }),
        fc.constantFrom('\n', '\r\n'),
        fc.boolean(),
        async (piece, chunk, end, ended) => {
          const all = (await backupLines(stores, made, piece)).join(end) + (ended ? end : '');
          expect(await read(all, chunk)).toEqual({ made, records: stores, aside: [] });
        },
      ),
      { numRuns: 60 },
    ));

  it('of nothing is one all the same', async () => {
    const none: Stores = { cars: [], visits: [], readings: [], moves: [], drafts: [], preferences: [] };
    const all = await backupLines(none, made, 3);
    expect(all).toHaveLength(2);
    expect(await read(all.join('\n'))).toEqual({ made, records: none, aside: [] });
  });

  it('is refused wherever it was cut off', async () => {
    for (let end = 0; end < text.length - 2; end += 7)
      await expect(read(text.slice(0, end)), `cut at ${end}`).rejects.toThrow('is not allowed');
  });

  it('is refused with any one character changed', () =>
    fc.assert(
      fc.asyncProperty(fc.nat(text.length - 2), fc.constantFrom('0', 'x', '"', '\n', '}', '['), async (at, char) => {
        fc.pre(text[at] !== char);
        const spoilt = text.slice(0, at) + char + text.slice(at + 1);
        await expect(read(spoilt)).rejects.toThrow('is not allowed');
      }),
      { numRuns: 200 },
    ));

  it('is refused with a line left out, doubled or moved', async () => {
    for (let n = 0; n < lines.length; n += 1) {
      const without = lines.filter((_, at) => at !== n);
      const doubled = lines.flatMap((line, at) => (at === n ? [line, line] : [line]));
      const moved = [...without.slice(0, n + 1), lines[n], ...without.slice(n + 1)];
      for (const spoilt of n < lines.length - 1 ? [without, doubled, moved] : [without, doubled])
        await expect(read(spoilt.join('\n')), `line ${n}`).rejects.toThrow('is not allowed');
    }
  });

  it('is refused with a whole piece left out, or with another file behind it', async () => {
    const second = lines.findIndex((line, at) => at > 4 && line.startsWith('{'));
    const without = lines.filter((_, at) => at <= 4 || at > second);
    expect(without[4]).toBe(lines[4]);
    await expect(read(without.join('\n'))).rejects.toThrow(/^checksum/);
    await expect(read(text + text)).rejects.toThrow(/^backup/);
  });

  test.each([
    ['a newer form', { version: 3 }, 'version: 3 is not allowed; allowed: 1 to 2: a newer app made this file'],
    ['newer records', { records: 2 }, 'version: 2 is not allowed; allowed: 1 to 1: a newer app made this file'],
    ['another format', { format: 'notes' }, 'backup.format: "notes" is not allowed'],
  ])('is refused, of %s, before anything else of it is looked at', async (_, change, message) => {
    const first = JSON.stringify({ ...JSON.parse(lines[0] as string), ...change });
    await expect(read([first, 'anything'].join('\n'))).rejects.toThrow(message);
  });

  it('sets a record aside that is not one, by its place in the file, and brings the rest in', async () => {
    const bad = stores.readings.map((one, at) => (at === 2 ? { ...one, at: 'yesterday' } : one)) as Stores['readings'];
    const deep = JSON.parse(`${'{"a":'.repeat(60)}1${'}'.repeat(60)}`);
    const preferences = [{ id: 'deep', value: deep }, ...stores.preferences];
    const all = await backupLines({ ...stores, readings: bad, preferences }, made, 2);
    const { records, aside } = await read(all.join('\n'));
    expect(aside).toMatchObject([
      { store: 'readings', id: stores.readings[2]?.id, error: { field: 'stores.readings[2].at' } },
      { store: 'preferences', error: { rule: { is: 'levels' } } },
    ]);
    expect(records).toEqual({ ...stores, readings: stores.readings.slice(0, 2) });
  });

  it('is refused with records of a store that there is not', async () => {
    const line = JSON.stringify(['constructor', { id: 'a' }]);
    const all = [lines[0] as string, line, pieceLine('')];
    await expect(read(all.join('\n'))).rejects.toThrow(/^checksum/);
  });
});

describe('lines', () => {
  it('longer than a record may be are refused before they are read to their end', async () => {
    let taken = 0;
    async function* endless() {
      for (;;) {
        taken += 1;
        yield 'x'.repeat(1000);
      }
    }
    const reading = async () => {
      for await (const _ of linesOf(endless(), 'backup', 50_000)) throw new Error('a line');
    };
    await expect(reading()).rejects.toThrow('backup');
    expect(taken).toBe(51);
  });
});
