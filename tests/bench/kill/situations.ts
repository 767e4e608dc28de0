/** What hands are at when the browser is killed: each a walk over the screens, that ends whenever it is cut off. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright';
import { makeBackup } from '../../../core/records/envelope.ts';
import type { CarRecord, MoveRecord, ReadingRecord, Stores, VisitRecord } from '../../../core/records/stored.ts';
import { car, spec } from '../../browser/practice.ts';
import type { Random } from '../../tools/random-cars.ts';
import { between } from '../../tools/random-cars.ts';
import { makeShop } from '../../tools/shop.ts';
import type { Dump } from './database.ts';

export interface Walk {
  /** Beside what is there. */
  readonly records?: Partial<Stores>;
  /** In place of all that is there. */
  readonly dump?: Dump | 'nothing';
  readonly hash: string;
  /** Until it may be killed, as what is cut off there is another situation. */
  readonly before?: (page: Page) => Promise<void>;
  /** What may be cut off. */
  readonly hands: (page: Page) => Promise<void>;
  /** About how long that takes, ms. */
  readonly lasts: number;
  /** All of it or none, or a screen says how far it came. */
  readonly bulk?: 'restore' | 'undo';
}

const TYPED = ['3.42', '2.96', '-0.99', '-0.01', '0.21', '-0.01', '-1.24', '-0.69', '0.19', '0.08'];
const FIELDS = ['LF.caster', 'RF.caster', 'LF.camber', 'RF.camber', 'LF.toe', 'RF.toe', 'LR.camber', 'RR.camber'];
const wheel = (caster: number, camber: number, toe: number) => ({ caster, camber, toe });
const at = '2026-02-03T08:00:00.000Z';

function visitOf(n: string): { readonly cars: CarRecord[]; readonly visits: VisitRecord[] } {
  const carId = `kill-car-${n}`;
  return {
    cars: [{ id: carId, car: { ...car, id: carId, label: `Kill ${n}` }, spec, changed: at }],
    visits: [{ id: `kill-visit-${n}`, carId, opened: at }],
  };
}

function readingOf(n: string): ReadingRecord {
  return {
    ...{ id: `kill-reading-${n}`, visitId: `kill-visit-${n}`, at },
    reading: {
      toeReference: 'thrust-line',
      LF: wheel(3.42, -0.99, 0.21),
      RF: wheel(2.96, -0.01, -0.01),
      LR: { camber: -1.24, toe: 0.19 },
      RR: { camber: -0.69, toe: 0.08 },
    },
    settings: {},
    typed: Object.fromEntries(FIELDS.map((field, i) => [field, TYPED[i] ?? ''])),
  };
}

const pause = (page: Page, random: Random, longest: number) => page.waitForTimeout(between(random, 0, longest));

/** Digits, as fast as a hand or in a burst. */
async function type(page: Page, random: Random, text: string): Promise<void> {
  const longest = between(random, 0, 60);
  for (const character of text) {
    await page.keyboard.type(character);
    await pause(page, random, longest);
  }
}

const typing = (n: string, random: Random): Walk => ({
  records: visitOf(n),
  hash: `#/visit/kill-visit-${n}`,
  before: async (page) => page.locator('.reading-grid button').first().waitFor(),
  hands: (page) => type(page, random, TYPED.join('')),
  lasts: 1500,
});

/** Made, or set as the rack shows it. */
const MADE = /^(LF|RF|LR|RR|Front|Rear) .* (made|set)(,|$)/;
const moves = (n: string, random: Random): Walk => ({
  records: { ...visitOf(n), readings: [readingOf(n)] },
  hash: `#/visit/kill-visit-${n}`,
  before: async (page) => page.getByRole('button', { name: MADE }).waitFor({ timeout: 60_000 }),
  async hands(page) {
    for (let n = 0; n < 4; n += 1) {
      await page.getByRole('button', { name: MADE, disabled: false }).click();
      await page.getByRole('button', { name: 'Undo', exact: true }).waitFor();
      if (random() < 0.4) await page.getByRole('button', { name: 'Undo', exact: true }).click();
    }
  },
  lasts: 2500,
});

const signingOff = (n: string, random: Random): Walk => ({
  records: {
    ...visitOf(n),
    readings: [readingOf(n)],
    moves: [moveOf(n)],
    drafts: [{ id: `visit:kill-visit-${n}`, texts: { signOff: `kill-reading-${n}` }, changed: at }],
  },
  hash: `#/visit/kill-visit-${n}`,
  before: async (page) => page.getByRole('button', { name: 'Sign off' }).waitFor(),
  async hands(page) {
    const ticks = page.locator('.ticks label');
    for (let n = 0; n < 6; n += 1) {
      if (random() < 0.6) await ticks.nth(n).click();
      await pause(page, random, 40);
    }
    await page.getByRole('button', { name: 'Sign off' }).click();
    // It asks where the move is not ticked as torqued.
    const answers = page.getByRole('button', { name: /^(It is torqued|Not torqued: sign off)$/ });
    const open = page.getByRole('button', { name: 'Open again' });
    await open.or(answers).first().waitFor();
    if (await answers.first().isVisible()) await answers.nth(random() < 0.5 ? 0 : 1).click();
    if (random() < 0.5) await open.click();
    await pause(page, random, 300);
  },
  lasts: 900,
});

const moveOf = (n: string): MoveRecord => ({
  ...{ id: `kill-move-${n}`, visitId: `kill-visit-${n}`, readingId: `kill-reading-${n}`, at },
  ...{ corner: 'LF', adjuster: 'tie-rod', from: 0, to: 0.5, outcome: 'done' },
});

const carEdit = (n: string, random: Random): Walk => ({
  records: visitOf(n),
  hash: `#/car/kill-car-${n}/build`,
  before: async (page) => page.getByLabel('Notes').waitFor(),
  async hands(page) {
    for (const label of ['Name', 'Plate', 'Notes']) {
      await page.getByLabel(new RegExp(`^${label}`)).focus();
      await type(page, random, `${label} ${Math.floor(random() * 1e6)}`);
      if (random() < 0.5) {
        await page.getByRole('button', { name: 'Save the car' }).click();
        await page.getByRole('button', { name: 'Build' }).click();
        await page.getByLabel('Notes').waitFor();
      }
    }
  },
  lasts: 2500,
});

/** Some hundred cars that are nowhere else: large enough that a restore takes a while. */
async function backupOf(n: string, cars: number): Promise<string> {
  const all = makeShop({ cars, visits: 1, open: 0 });
  const text = JSON.stringify(all).replaceAll(/"([0-9a-f]{8}-(car|visit|reading|move))/g, `"${n}-$1`);
  const { subtle } = globalThis.crypto;
  const digest = async (text: string) => Buffer.from(await subtle.digest('SHA-256', Buffer.from(text))).toString('hex');
  return JSON.stringify(await makeBackup(JSON.parse(text), at, digest));
}

async function choose(page: Page, n: string, cars: number): Promise<void> {
  const buffer = Buffer.from(await backupOf(n, cars));
  await page
    .getByLabel('Restore from a file')
    .setInputFiles({ name: 'all.json', mimeType: 'application/json', buffer });
  await page.getByRole('button', { name: 'Restore it' }).waitFor({ timeout: 60_000 });
  await page.evaluate(() => {
    window.bulk = true;
  });
}

const CARS = 300;
const restore = (n: string, random: Random): Walk => ({
  hash: '#/settings',
  before: (page) => choose(page, n, Math.ceil(CARS * between(random, 0.3, 1.3))),
  async hands(page) {
    await page.getByRole('button', { name: 'Restore it' }).click();
    await page.getByText('Restored.').waitFor({ timeout: 60_000 });
    await pause(page, random, 100);
  },
  lasts: 1200,
  bulk: 'restore',
});

const undo = (n: string, random: Random): Walk => ({
  hash: '#/settings',
  async before(page) {
    await choose(page, n, Math.ceil(CARS * between(random, 0.3, 1.3)));
    await page.getByRole('button', { name: 'Restore it' }).click();
    await page.getByText('Restored.').waitFor({ timeout: 60_000 });
    await page.getByRole('button', { name: 'Undo the last restore' }).click();
    await page.getByRole('button', { name: 'Undo it' }).waitFor({ timeout: 60_000 });
  },
  async hands(page) {
    await page.getByRole('button', { name: 'Undo it' }).click();
    await page.getByText('Undone.').waitFor({ timeout: 60_000 });
    await pause(page, random, 100);
  },
  lasts: 900,
  bulk: 'undo',
});

const dumps = ['v1'].map(
  (name) =>
    JSON.parse(
      readFileSync(fileURLToPath(new URL(`../../../fixtures/databases/${name}.json`, import.meta.url)), 'utf8'),
    ) as Dump,
);
/** Opened for the first time by this version, and by the first one that counts; then its first digit. */
const oldDatabase = (_: string, random: Random): Walk => {
  const dump = dumps[Math.floor(random() * dumps.length)] as Dump;
  const [visit] = (dump.stores.find(({ name }) => name === 'visits')?.records ?? []).filter(
    (one) => !('closed' in one),
  );
  return {
    dump,
    hash: visit ? `#/visit/${visit.id}` : '#/',
    async hands(page) {
      await page.locator('.save-mark').waitFor();
      await type(page, random, '1.23');
    },
    lasts: 900,
  };
};

const firstStart = (_: string, random: Random): Walk => ({
  dump: 'nothing',
  hash: '#/',
  async hands(page) {
    await page.locator('.save-mark').waitFor();
    await pause(page, random, 100);
  },
  lasts: 500,
});

/** With how many of twenty cycles each. */
export const SITUATIONS: Readonly<Record<string, readonly [(n: string, random: Random) => Walk, number]>> = {
  'typing a reading': [typing, 3],
  'marking moves': [moves, 2],
  'signing off': [signingOff, 2],
  'editing a car': [carEdit, 2],
  'a restore': [restore, 4],
  'the undo of a restore': [undo, 3],
  'an older database opens': [oldDatabase, 2],
  'a first start': [firstStart, 2],
};
