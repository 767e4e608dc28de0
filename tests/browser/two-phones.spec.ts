/**
 * A car edited on two phones, a check noted on both, a reading corrected and another one typed on both: a backup comes in,
 * and every screen that is concerned says so.
 */

import { createHash } from 'node:crypto';
import { makeBackup } from '../../core/records/envelope.ts';
import type { CarRecord, ReadingRecord, VisitRecord } from '../../core/records/stored.ts';
import { edited } from '../../core/records/versions.ts';
import { marked } from '../../core/records/visit-facts.ts';
import dump from '../../fixtures/databases/v1.json' with { type: 'json' };
import { expect, test } from './harness.ts';

const base = dump.stores.find(({ name }) => name === 'cars')?.records[0] as unknown as CarRecord;
const visit: VisitRecord = { id: 'v', carId: base.id, opened: '2026-03-01T08:00:00.000Z' };
const at = (hour: number): string => `2026-03-01T${String(hour).padStart(2, '0')}:00:00.000Z`;
const record = (label: string, hour: number): CarRecord =>
  edited(base, { ...base, car: { ...base.car, label } }, at(hour));
const reading = (id: string, hour: number, camber: number, more: object = {}): ReadingRecord => ({
  ...{ id, visitId: 'v', at: at(hour), settings: {}, typed: {}, ...more },
  reading: { LF: { camber, toe: 0.1 }, RF: { camber: -0.4, toe: 0.1 } },
});
const file = async (
  label: string,
  hour: number,
  note: string,
  camber: number,
): Promise<{ name: string; mimeType: string; buffer: Buffer }> => {
  const stores = { cars: [record(label, hour)], visits: [marked(visit, { checks: { joints: note } }, at(hour))] };
  const readings = [reading('r', 8, 0.3), reading(`r-${hour}`, hour, camber, { replaces: 'r' })];
  const texts = { 'LF.camber': String(camber + 1), 'RF.camber': '-0.4' };
  const drafts = [{ id: 'reading:v', texts, cursor: 'LF.toe', changed: at(hour) }];
  const all = { ...stores, readings, moves: [], drafts, preferences: [] };
  const digest = async (text: string): Promise<string> => createHash('sha256').update(text).digest('hex');
  const text = JSON.stringify(await makeBackup(all, at(20), digest));
  return { name: 'backup.json', mimeType: 'application/json', buffer: Buffer.from(text) };
};

test('both builds and both notes are there, and a person says which build holds', async ({ page, site }) => {
  await page.goto(`${site.url}#/settings`);
  for (const [label, hour, note, camber] of [
    ['Marl one', 10, 'LF low', -0.25],
    ['Marl two', 11, 'RF boot split', -0.5],
  ] as const) {
    await page.getByLabel('Restore from a file').setInputFiles(await file(label, hour, note, camber));
    if (hour === 11) await expect(page.getByText('3 records were changed both here and in the file.')).toBeVisible();
    await page.getByRole('button', { name: 'Restore it' }).click();
    await expect(page.getByText('Restored.')).toBeVisible();
  }

  await page.goto(`${site.url}#/visit/v`);
  const corrected = page.locator('.card', { hasText: 'Corrected on another phone too' });
  await expect(corrected.getByRole('row', { name: 'LF camber −0.50 −0.25' })).toBeVisible();
  const typed = page.locator('.card', { hasText: 'Typed on another phone' });
  await expect(typed.getByRole('listitem')).toHaveText('LF camber 0.75, here 0.5');
  await corrected.getByRole('button', { name: 'Use the other' }).click();
  await expect(corrected).toBeHidden();
  await page.getByRole('button', { name: /^As found/ }).click();
  await expect(page.getByText('−0.25')).toBeVisible();
  await typed.getByRole('button', { name: 'Use these' }).click();
  await expect(page.getByRole('button', { name: 'LF Camber: 0.75' })).toBeVisible();
  await expect(typed).toBeHidden();
  await page.getByRole('button', { name: /^Before you measure/ }).click();
  await expect(page.getByText('Also noted on another phone: LF low')).toBeVisible();
  await expect(page.getByLabel('Note: Ball joints, rod ends, bushes and steering gear without play')).toHaveValue(
    'RF boot split',
  );

  await page.goto(`${site.url}#/car/${base.id}`);
  await expect(page.getByRole('heading', { name: 'Marl two' })).toBeVisible();
  const card = page.locator('.card', { hasText: 'Edited on another phone too' });
  await expect(card).toContainText('saved 1 March 2026 at 10:00');
  await expect(card).toContainText('Differsname');
  await card.getByRole('button', { name: 'Use the other' }).click();
  await expect(page.getByRole('heading', { name: 'Marl one' })).toBeVisible();
  await expect(card).toBeHidden();

  await page.getByRole('button', { name: 'Build', exact: true }).click();
  await page.getByText('2 other builds are kept').click();
  await page.getByRole('button', { name: 'Look at it' }).first().click();
  await expect(page.getByLabel('Name')).toHaveValue('Marl two');
});
