/** Types a car onto its build card as a person would, field by field, from what each kind says that it asks. */
import type { Locator, Page } from '@playwright/test';
import { withUnit } from '../../core/adjuster/ask.ts';
import { type Adjuster, type Axle, type AxleName, adjusterKinds, type Suspension } from '../../core/index.ts';
import { suspensionKinds } from '../../core/suspension/catalogue.ts';
import { rodsOf } from '../../core/suspension/joints.ts';

type Asked = NonNullable<(typeof adjusterKinds)[string]>['fields'][number];

/** A section's head closes it when it is open. */
export async function openSection(page: Page, name: string): Promise<void> {
  if ((await page.locator('.step-live .step-title').allTextContents()).includes(name)) return;
  // Beside its title stands what is missing in it.
  await page.locator('.step-head').filter({ hasText: name }).first().click();
}

export async function pickKind(page: Page, kind: string): Promise<void> {
  const change = page.getByRole('button', { name: /: change the kind$/ });
  if (await change.isVisible()) await change.click();
  const name = suspensionKinds[kind]?.name ?? kind;
  await page.getByRole('group', { name: 'Kind of suspension' }).getByRole('button', { name, exact: true }).click();
}

/** Along the car those of a rear axle are typed from its own hub, of which that place is not asked. */
export async function typePoints(
  section: Locator,
  { kind, points, camber, toe }: Suspension,
  axle: AxleName = 'front',
): Promise<void> {
  const groups = section.locator('.numbers');
  for (const [i, name] of (suspensionKinds[kind]?.points ?? []).entries()) {
    const hub = axle === 'rear' ? (points.wheelCentre?.[0] ?? 0) : undefined;
    const typed = (points[name] ?? []).map((x, j) => (j === 0 && hub !== undefined ? Number((x - hub).toFixed(6)) : x));
    const asked = hub !== undefined && name === 'wheelCentre' ? typed.slice(1) : typed;
    for (const [j, x] of asked.entries()) await groups.nth(i).locator('input').nth(j).fill(String(x));
  }
  await section.getByLabel('camber', { exact: true }).fill(String(camber));
  await section.getByLabel('toe', { exact: true }).fill(String(toe));
}

/** One axle: its suspension by points, whether it steers, and its adjusters. */
export async function typeAxle(page: Page, axle: AxleName, { suspension, adjusters, steered }: Axle): Promise<void> {
  const title = axle === 'front' ? 'Front' : 'Rear';
  await openSection(page, `${title} suspension`);
  await pickKind(page, suspension.kind);
  await page.getByRole('button', { name: steered ? 'steer' : 'do not steer', exact: true }).click();
  if (suspensionKinds[suspension.kind]?.points.length) {
    const points = page.getByRole('button', { name: 'Points', exact: true });
    if (await points.isVisible()) await points.click();
    await typePoints(page.locator('.measures').first(), suspension, axle);
  }
  if (adjusters.length === 0) return;
  await openSection(page, `${title} adjusters`);
  for (const adjuster of adjusters) await typeAdjuster(page, suspension.kind, adjuster);
}

export async function typeAdjuster(page: Page, suspension: string, adjuster: Adjuster): Promise<void> {
  const kind = adjusterKinds[adjuster.kind];
  if (!kind) throw new Error(`no adjuster kind ${adjuster.kind}`);
  await page
    .getByRole('group', { name: 'Add an adjuster' })
    .getByRole('button', { name: kind.name, exact: true })
    .click();
  const form = page.locator('.adjuster-open');
  await form.getByLabel(/^Name/).fill(adjuster.name ?? adjuster.id);
  const given = (field: Asked) => at(adjuster, field.name);
  const way = kind.fields.find((field) => field.way && given(field) !== undefined)?.way;
  if (way) await form.getByRole('button', { name: way, exact: true }).click();
  for (const field of kind.fields) {
    if (given(field) !== undefined) await typeField(form, field, given(field), suspension);
  }
}

const at = (value: unknown, path: string): unknown =>
  path.split('.').reduce<unknown>((one, key) => (one as Record<string, unknown> | undefined)?.[key], value);
const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

async function typeField(form: Locator, { ask, label: asked, optional }: Asked, value: unknown, suspension: string) {
  const label = optional ? `${asked} (if any)` : asked;
  const field = (words: string) => form.getByLabel(new RegExp(`^${escaped(words)}`));
  const list = Array.isArray(value) ? value : [];
  switch (ask.as) {
    case 'text':
    case 'position':
      return field(label).fill(String(value));
    case 'number':
      return field(withUnit(label, ask.unit)).fill(String(value));
    case 'numbers':
      return field(withUnit(label, ask.unit)).fill([value].flat().join(' '));
    case 'length':
      return field(`${label}, mm`).fill(String(value));
    case 'lengths':
      return field(`${label}, mm`).fill(list.join(' '));
    case 'point':
    case 'partner':
      await field(label).selectOption(String(value));
      return;
    case 'choice': {
      const words = ask.choices.find(([one]) => one === value)?.[1];
      await field(label).selectOption({ label: words ?? String(value) });
      return;
    }
    case 'links': {
      const rods = suspensionKinds[suspension];
      const buttons = form.getByRole('group', { name: label }).getByRole('button');
      for (const link of list) await buttons.nth(rods ? rodsOf(rods).indexOf(String(link)) : -1).click();
      return;
    }
    case 'direction': {
      await field(label).selectOption('at a slant');
      const inputs = form.getByRole('group', { name: 'As a slant' }).locator('input');
      for (const [i, x] of list.entries()) await inputs.nth(i).fill(String(x));
      return;
    }
    case 'range': {
      const inputs = form.getByRole('group', { name: withUnit(label, ask.unit) }).locator('input');
      for (const [i, x] of list.entries()) await inputs.nth(i).fill(String(x));
      return;
    }
    case 'table':
      for (const [i, row] of list.entries()) {
        await form.getByRole('button', { name: /^Add a / }).click();
        const cells = form.locator('.cam-row').nth(i).locator('input');
        for (const [j, column] of ask.columns.entries()) await cells.nth(j).fill(String(at(row, column.name) ?? ''));
      }
  }
}
