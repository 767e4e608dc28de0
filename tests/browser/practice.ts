/** The practice car, and the way to its moves on a real keyboard. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, type Page } from '@playwright/test';
import type { Car, Spec } from '../../core/contract.ts';

export const { car, spec } = JSON.parse(
  readFileSync(fileURLToPath(new URL('../../fixtures/cars/practice.json', import.meta.url)), 'utf8'),
) as { car: Car; spec: Spec };

/** A new visit with this reading, typed in the order in which the app asks, and the adjusters as they are remembered. */
export async function toTheMoves(page: Page, typed: readonly string[]): Promise<void> {
  await page.getByText('Practice car').click();
  await page.getByRole('button', { name: 'New visit' }).click();
  await expect(page.getByRole('button', { name: 'LF Caster: empty' })).toBeVisible();
  for (const text of typed) await page.keyboard.type(text);
  await page.getByRole('button', { name: 'Where the adjusters stand' }).click();
  await page.getByRole('button', { name: 'These are right' }).click();
}
