/** A backup from a file, of either form: what of it is told, in what pieces, and what is refused before it is read. */
import { describe, expect, it, vi } from 'vitest';
import { exportFile, memorySlices } from '../../app/store/export.ts';
import { readBackup } from '../../app/store/read-backup.ts';
import { type Everything, STORES } from '../../app/store/schema.ts';
import type { InputError } from '../../core/input-error.ts';
import { PIECE } from '../../core/records/backup-lines.ts';
import type { CheckedBackup } from '../../core/records/envelope.ts';
import { backupLines, whole } from '../tools/backup-text.ts';
import { draft, frozenRecords, oneText } from './records.ts';

const MADE = '2026-01-02T08:00:00.000Z';
const NONE: Everything = { cars: [], visits: [], readings: [], moves: [], drafts: [], preferences: [] };
const linesOf = async (all: Everything): Promise<string> =>
  `${(await backupLines(all, MADE, PIECE.records)).join('\n')}\n`;
const FORMS: readonly (readonly [string, (all: Everything) => Promise<string>])[] = [
  ['lines', linesOf],
  ['one text', oneText],
];

async function piecesOf(text: string): Promise<CheckedBackup[]> {
  const pieces: CheckedBackup[] = [];
  for await (const piece of readBackup(new Blob([text]))) pieces.push(piece);
  return pieces;
}
const sizeOf = ({ records }: CheckedBackup): number => Object.values(records).flat().length;

describe.each(FORMS)('a backup of %s', (_, textOf) => {
  it('holds all that went into it, and nothing else is told', async () => {
    const { records, aside } = await whole(readBackup(new Blob([await textOf(frozenRecords)])));
    expect(records).toEqual(frozenRecords);
    expect(aside).toEqual([]);
  });

  it('leaves out the preferences that are the phone’s own, and no others', async () => {
    const own = ['undo-restore', 'canary', 'backup', 'technician'].map((id) => ({ id, value: { at: MADE } }));
    const theme = { id: 'theme', value: 'dark' };
    const { records } = await whole(readBackup(new Blob([await textOf({ ...NONE, preferences: [...own, theme] })])));
    expect(records.preferences).toEqual([theme]);
  });

  it('is the same behind the mark that some editors put before a text', async () => {
    const text = await textOf(frozenRecords);
    expect(await piecesOf(`\ufeff${text}`)).toEqual(await piecesOf(text));
  });

  it('sets a record aside once, with its reason, and goes on', async () => {
    const bad = { ...frozenRecords, moves: [{ id: 'bad' } as never, ...frozenRecords.moves] };
    const pieces = await piecesOf(await textOf(bad));
    expect(pieces.flatMap(({ aside }) => aside)).toMatchObject([{ store: 'moves', id: 'bad' }]);
    expect(pieces.flatMap(({ records }) => records.moves)).toEqual(frozenRecords.moves);
  });

  it('comes in pieces of no more records than a piece has, each told when it was made, in the order of the file', async () => {
    const drafts = Array.from({ length: 2 * PIECE.records + 1 }, (_, i) =>
      draft(`d${String(i).padStart(4, '0')}`, '1'),
    );
    const pieces = await piecesOf(await textOf({ ...NONE, drafts }));
    const sizes = pieces.map(sizeOf).filter((size) => size > 0);
    expect(sizes).toEqual([PIECE.records, PIECE.records, 1]);
    expect(pieces.length, 'at most one without a record').toBeLessThanOrEqual(sizes.length + 1);
    expect(pieces.flatMap(({ records }) => records.drafts)).toEqual(drafts);
    expect(new Set(pieces.map(({ made }) => made)).size).toBe(1);
    for (const { records } of pieces) expect(Object.keys(records).sort()).toEqual([...STORES].sort());
  });
});

describe('which of the two forms a file has', () => {
  it('one text may stand on many lines, or have an end of its line behind it', async () => {
    const text = await oneText(frozenRecords);
    const expected = await piecesOf(text);
    expect(await piecesOf(JSON.stringify(JSON.parse(text), null, 2))).toEqual(expected);
    expect(await piecesOf(`${text}\n`)).toEqual(expected);
    // Short enough to be read whole in the look at its start.
    const empty = await oneText(NONE);
    expect(empty.length).toBeLessThan(1000);
    expect(await piecesOf(`${empty}\n`)).toEqual(await piecesOf(empty));
  });

  it('the first line may have blanks in it, and ends of lines may be those of Windows', async () => {
    const text = await linesOf(frozenRecords);
    const windows = await piecesOf(text.replaceAll('\n', '\r\n'));
    expect(windows).toEqual(await piecesOf(text));
  });

  it.each([
    ['nothing', '', 'json'],
    ['no JSON', 'made by hand\n', 'json'],
    ['a list', '["made"]\n', 'object'],
    ['a text', '"made"\n', 'object'],
    ['nothing that is something', 'null\n', 'object'],
    ['a figure', '7\n', 'object'],
    ['a car file', '{"format":"cornerwright","version":1,"car":{}}\n', 'exactly'],
  ])('%s is refused, by its rule', async (_, text, is) => {
    await expect(piecesOf(text)).rejects.toMatchObject({
      ...{ name: 'InputError', rule: { is } },
      field: expect.stringMatching(/^backup\b/),
    });
  });
});

it('a file that was cut off after its first line is known by it, with the end of that line or without', async () => {
  const [first = ''] = (await linesOf(frozenRecords)).split('\n');
  const refusals = [first, `${first}\n`].map((text) => piecesOf(text).catch((error: InputError) => error.rule));
  const [bare, ended] = await Promise.all(refusals);
  expect(ended).toHaveProperty('is');
  expect(bare).toEqual(ended);
});

describe('one text', () => {
  it('is refused at its size alone where no browser could hold it', async () => {
    const text = vi.fn(() => Promise.reject(new Error('it was read')));
    const start = { text: async () => '{"stores":{}' };
    const file = { size: 2_000_000_001, slice: () => start, text } as unknown as Blob;
    await expect(whole(readBackup(file))).rejects.toMatchObject({
      field: 'backup',
      rule: { is: 'text', least: 0, most: 500_000_000 },
    });
    const atMost = { ...file, size: 2_000_000_000, slice: () => start } as unknown as Blob;
    await expect(whole(readBackup(atMost))).rejects.toThrow('it was read');
  });

  it('is refused where it is deeper than any of ours', async () => {
    const deep = `${'['.repeat(200)}${']'.repeat(200)}`;
    const text = (await oneText(NONE)).replace('"cars":[]', `"cars":${deep}`);
    expect(text).toContain(deep);
    await expect(piecesOf(text)).rejects.toMatchObject({ field: 'backup', rule: { is: 'levels' } });
  });
});

describe('the file', () => {
  it('is let go of where nobody goes on, and where it is refused', async () => {
    const text = await (await exportFile(memorySlices(frozenRecords), MADE)).text();
    const cancel = vi.fn();
    /** A file that never ends by itself. */
    const fileOf = (content: string): Blob => {
      const bytes = new TextEncoder().encode(content);
      const stream = () => new ReadableStream({ pull: (to) => void to.enqueue(bytes), cancel }, { highWaterMark: 0 });
      return { size: bytes.length, slice: () => ({ text: async () => content }), stream } as unknown as Blob;
    };
    for await (const _ of readBackup(fileOf(text))) break;
    expect(cancel).toHaveBeenCalledTimes(1);
    await expect(whole(readBackup(fileOf(text.replace(/"made":"\d/, '"made":"3'))))).rejects.toThrow('checksum');
    expect(cancel).toHaveBeenCalledTimes(2);
  });
});
