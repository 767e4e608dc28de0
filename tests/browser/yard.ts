/** A car in the yard, with a tape and a string for all there is to measure it: its points are the usual ones. */
import type { Page } from '@playwright/test';
import type { Adjuster, Car, Spec } from '../../core/contract.ts';
import { starters } from '../../core/starters/catalogue.ts';
import { openCarFile } from './car-file.ts';

const layout = (kind: string) => {
  const { points, camber, toe } = starters.find((one) => one.kind === kind)!;
  return { kind, points, camber, toe };
};

/** @param rear the kind of its rear suspension */
export const yardCar = (rear: string, adjusters: readonly Adjuster[] = []): Car => ({
  ...{ id: 'yard', label: 'Yard car', wheel: { rimDiameter: 410 } },
  front: { suspension: layout('double-wishbone'), adjusters, steered: true },
  rear: { suspension: layout(rear), adjusters: [], steered: false },
});

/** A visit of it is begun, and from there the bench gone to, where this tool is taken. */
export async function visitBench(page: Page, file: { readonly car: Car; readonly spec: Spec }, tool: RegExp) {
  await openCarFile(page, file);
  await page.getByRole('button', { name: 'New visit' }).click();
  await toTool(page, tool);
}

export async function toTool(page: Page, tool: RegExp): Promise<void> {
  await page.getByRole('link', { name: 'Measure with what I have' }).click();
  await page.getByRole('link', { name: tool }).click();
}
