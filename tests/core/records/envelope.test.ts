import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { canonical } from '../../../core/records/canonical.ts';
import { checkBackup, makeBackup } from '../../../core/records/envelope.ts';
import { fromCarFile } from '../../../core/records/exchange.ts';
import { checkVersion, MIGRATIONS, migrate, VERSION } from '../../../core/records/migrations.ts';
import { STORE_NAMES, type Stores } from '../../../core/records/stored.ts';
import { carFile } from './fixture.ts';

const digest = async (text: string) => createHash('sha256').update(text).digest('hex');
const made = '2024-12-01T08:00:00Z';

const { car, visits, readings, moves } = fromCarFile(carFile('ribble-six.json'), { now: made, makeId: () => 'x' });
const stores: Stores = {
  cars: [car],
  visits: visits.map((visit) => ({ ...visit, checks: { tyres: 'ok', bushes: 'LF lower soft' } })),
  readings: readings.map((reading) => ({ ...reading, typed: { 'LF.camber': '−0,12' } })),
  moves,
  drafts: [{ id: 'reading:v', texts: { 'LF.camber': '-0.' }, cursor: 'LF.camber', changed: made }],
  preferences: [{ id: 'units', value: { angle: 'degrees' } }],
};
/** As a file: through text, free to be spoilt. */
const asFile = async (): Promise<Record<string, unknown>> =>
  JSON.parse(JSON.stringify(await makeBackup(stores, made, digest)));

describe('backup', () => {
  it('gives every record of every store back', async () => {
    expect(await checkBackup(await asFile(), digest)).toEqual({ made, records: stores, aside: [] });
    expect(Object.keys(stores).sort()).toEqual([...STORE_NAMES].sort());
  });

  it('counts its records', async () => {
    const { counts } = await makeBackup(stores, made, digest);
    expect(counts).toEqual({ cars: 1, visits: 2, readings: 3, moves: 4, drafts: 1, preferences: 1 });
  });

  test.each([
    ['a changed digit', (b: Record<string, never>) => edit(b, 'stores', 'cars', []), 'checksum'],
    ['another format', (b: Record<string, never>) => ({ ...b, format: 'notes' }), 'backup.format'],
    ['a newer version', (b: Record<string, never>) => ({ ...b, version: 2 }), 'version'],
    ['a missing checksum', (b: Record<string, never>) => ({ ...b, checksum: undefined }), 'backup.checksum'],
    ['a wrong count', (b: Record<string, never>) => edit(b, 'counts', 'moves', 3), 'counts.moves'],
    ['no object', () => 'text', 'backup'],
  ])('refuses %s', async (_, spoil, field) => {
    const spoilt = spoil((await asFile()) as Record<string, never>);
    await expect(checkBackup(spoilt, digest)).rejects.toMatchObject({ name: 'InputError', field });
  });

  it('sets a record aside that is not one, by its place, and brings the rest in', async () => {
    const bad = {
      ...stores,
      readings: [{ ...stores.readings[0], at: 'yesterday' }, ...stores.readings.slice(1)],
    } as Stores;
    const { records, aside } = await checkBackup(await makeBackup(bad, made, digest), digest);
    expect(aside.map(({ error }) => error.message)).toEqual([
      expect.stringContaining('stores.readings[0].at: "yesterday" is not allowed; allowed: a time, ISO 8601'),
    ]);
    expect(records).toEqual({ ...stores, readings: stores.readings.slice(1) });
  });
});

function edit(backup: Record<string, never>, part: string, key: string, value: unknown): unknown {
  return { ...backup, [part]: { ...(backup[part] as unknown as object), [key]: value } };
}

describe('canonical JSON', () => {
  it('does not depend on the order of keys, and reads back as the same data', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.jsonValue()), (data) => {
        const turned = Object.fromEntries(Object.entries(data).reverse());
        expect(canonical(turned)).toBe(canonical(data));
        expect(JSON.parse(canonical(data))).toEqual(JSON.parse(JSON.stringify(data)));
      }),
    );
  });
  it('leaves out what is undefined', () => {
    expect(canonical({ b: 1, a: undefined })).toBe('{"b":1}');
  });
});

describe('migrations', () => {
  it('are contiguous up to the present version', () => {
    expect(MIGRATIONS.map(({ to }) => to)).toEqual(Array.from({ length: VERSION - 1 }, (_, i) => i + 2));
  });
  it('run in order from the version of the data', () => {
    const steps = [
      { to: 2, stores: (data: Readonly<Record<string, unknown>>) => ({ ...data, path: `${data.path ?? ''}2` }) },
      { to: 3, stores: (data: Readonly<Record<string, unknown>>) => ({ ...data, path: `${data.path ?? ''}3` }) },
    ];
    expect(migrate('stores', { version: 1 }, steps, 3)).toEqual({ version: 3, path: '23' });
    expect(migrate('stores', { version: 2 }, steps, 3)).toEqual({ version: 3, path: '3' });
    expect(migrate('car-file', { version: 1 }, steps, 3)).toEqual({ version: 3 });
  });
  test.each([
    [2, 'version: 2 is not allowed; allowed: 1 to 1: a newer app made this file'],
    [0, 'version: 0 is not allowed; allowed: 1 to 1'],
    ['1', 'version: "1" is not allowed; allowed: 1 to 1'],
    [undefined, 'version: nothing is not allowed; allowed: 1 to 1'],
  ])('refuse version %j', (version, message) => {
    expect(() => checkVersion(version)).toThrow(message);
  });
});
