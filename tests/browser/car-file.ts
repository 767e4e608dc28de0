/** A car that comes into the app as a file. */
import type { Page } from '@playwright/test';
import type { Car, Spec } from '../../core/contract.ts';

/** From the list of cars: a new car, out of this file; the car's own screen follows. */
export async function openCarFile(page: Page, file: { readonly car: Car; readonly spec?: Spec }): Promise<void> {
  await page.getByRole('button', { name: 'New car' }).first().click();
  await page.getByLabel('Or open a car file').setInputFiles({
    name: 'car.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify({ format: 'cornerwright', version: 1, ...file })),
  });
}
