/** A backup that is one endless list: refused before the machine runs short of time for anything else. */
import { describe, expect, it } from 'vitest';
import { readBackup } from '../../app/store/read-backup.ts';
import { whole } from '../tools/backup-text.ts';

describe('a file that is too wide', () => {
  const head = JSON.stringify({ format: 'cornerwright-backup', version: 2, records: 1, made: '2026-01-02T08:00:00Z' });
  const objects = `[${'{},'.repeat(12_000_000)}{}]`;
  it.each([
    ['as one text', objects],
    ['as a first line', `${objects}\n`],
    ['as a record', `${head}\n["cars",${objects}]\n{"checksum":""}\n`],
    ['as what ends a piece', `${head}\n{"more":${objects}}\n`],
  ])('is refused within two seconds, %s', async (_, text) => {
    const file = new Blob([text]);
    const before = process.cpuUsage();
    await expect(whole(readBackup(file))).rejects.toThrow('is not allowed');
    const { user, system } = process.cpuUsage(before);
    expect((user + system) / 1000).toBeLessThan(2000);
  });
});
