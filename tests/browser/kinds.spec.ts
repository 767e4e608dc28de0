/**
 * Every adjuster kind, and under `npm run test:long` every suspension kind, through the whole walk in the browser: a car file comes in, as found,
 * where the adjusters stand, moves, done, re-measured as predicted, as left. The cars are made from core's catalogues
 * and the tests' samples, so that a new kind joins by itself, and fails here until it has a sample.
 */

import type { Page } from '@playwright/test';
import {
  type Adjuster,
  type Angle,
  type Axle,
  type AxleReading,
  type AxleSpec,
  adjusterKinds,
  adjusterPositions,
  adjustersOf,
  type Car,
  type CarSettings,
  type Corner,
  formatAngle,
  type Move,
  type Position,
  predictReading,
  type Reading,
  type Spec,
  suspensionKinds,
  type WheelReading,
} from '../../core/index.ts';
import { wordsOf } from '../../core/words/catalogue.ts';
import { jobsIn, sentence } from '../tools/jobs.ts';
import { oneOf, type Random, randomSuspension, stream } from '../tools/random-cars.ts';
import { fewestCases, type KindCase, kindCases, sampleAdjuster } from '../tools/samples.ts';
import { shortOrLong } from '../tools/seeds.ts';
import { openCarFile } from './car-file.ts';
import { expect, longTest, MADE, openApp, REMEASURE, test } from './harness.ts';
import { planned } from './planned.ts';

const cases = kindCases(() => 3);
const walked = shortOrLong(fewestCases(cases), cases);

const NOTHING: Axle = {
  suspension: { kind: 'beam-rear', points: { wheelCentre: [-2600, 770, 320] }, camber: 0, toe: 0 },
  adjusters: [],
  steered: false,
};

function carOf({ suspension, adjusters }: KindCase, random: Random): { car: Car; axle: 'front' | 'rear' } {
  const kind = suspensionKinds[suspension];
  const front = kind?.steeringAxis !== undefined || kind?.points.length === 0;
  const own = randomSuspension(random, suspension);
  const fitted = adjusters.map((name, i) => ({
    ...sampleAdjuster(random, name, own, `${name}-${i}`),
    name: `${name} ${i}`,
  }));
  const made: Axle = { suspension: own, adjusters: fitted, steered: front };
  const base = { id: `kind-${suspension}`, label: `Kind ${suspension}`, wheel: { rimDiameter: 420 } };
  return front
    ? { car: { ...base, front: made, rear: NOTHING }, axle: 'front' }
    : { car: { ...base, front: { ...NOTHING, steered: true }, rear: made }, axle: 'rear' };
}

const anglesOf = ({ suspension, steered }: Axle): Angle[] => {
  const kind = suspensionKinds[suspension.kind];
  const caster = steered && (kind?.steeringAxis !== undefined || kind?.points.length === 0);
  return caster ? ['caster', 'camber', 'toe'] : ['camber', 'toe'];
};
const PAIRS = { front: ['LF', 'RF'], rear: ['LR', 'RR'] } as const satisfies Record<string, readonly Corner[]>;

/** In the order in which the app asks. */
const asked = (car: Car): (readonly [Corner, Angle])[] =>
  (['front', 'rear'] as const).flatMap((axle) =>
    anglesOf(car[axle]).flatMap((angle) => PAIRS[axle].map((corner) => [corner, angle] as const)),
  );

const round = (x: number): number => Number(x.toFixed(2));

function foundOf(car: Car): Reading {
  const reading: Partial<Record<Corner, WheelReading>> = {};
  const values = { caster: 3.1, camber: -0.42, toe: 0.13, sai: 0 };
  for (const [corner, angle] of asked(car)) reading[corner] = { ...reading[corner], [angle]: values[angle] };
  return reading;
}

/** Somewhere else for every adjuster, both sides alike, so that limits between the sides hold. */
function elsewhere(adjusters: readonly Adjuster[], random: Random): Record<string, string | number> {
  return Object.fromEntries(
    adjusters.map((one) => {
      const others = adjusterPositions(one).filter((position) => String(position) !== String(one.reference));
      return [one.id, oneOf(random, others)];
    }),
  );
}

/** Windows about what the rack would read there: the plan has to move, and can reach. */
function specAbout(reading: Reading, axle: 'front' | 'rear'): Spec {
  const windows = (wheel: WheelReading | AxleReading = {}) =>
    Object.fromEntries(Object.entries(wheel).map(([angle, x]) => [angle, { low: x - 0.15, aim: x, high: x + 0.15 }]));
  const [left, right] = PAIRS[axle];
  // Both sides alike turn an axle on links little: how far it goes says where they stand.
  const own: AxleSpec = { ...windows(reading[axle]), left: windows(reading[left]), right: windows(reading[right]) };
  return { [axle]: own };
}

async function typeReading(page: Page, car: Car, reading: Reading): Promise<void> {
  await expect(page.getByRole('region', { name: 'Keypad' })).toBeVisible();
  for (const [corner, angle] of asked(car)) {
    await page.keyboard.type(formatAngle(round(reading[corner]?.[angle] ?? Number.NaN)).replace('−', '-'));
  }
}

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();

function shown(adjuster: Adjuster, position: Position): string {
  const place = adjusterKinds[adjuster.kind]?.place(adjuster, position);
  return place ? wordsOf().place(place) : 'no such kind';
}

/** "Set to…" offers the move's own position first, a number or a label, and one step goes elsewhere. */
async function setsTo(page: Page, adjusters: readonly Adjuster[], job: readonly Move[] = []): Promise<void> {
  const [move] = job;
  const adjuster = adjusters.find(({ id }) => id === move?.adjuster);
  if (!move || !adjuster) throw new Error('the plan has no moves');
  await press(page, 'Set to…');
  // Of a job it is one that is set elsewhere, unless one cannot be without the other.
  if (job.length > 1 && !adjusterKinds[adjuster.kind]?.wholeAxle)
    await press(page, new RegExp(`^${move.job?.end}$`, 'i'));
  const value = page.locator('output.stepper-value, .stepper-list option:checked');
  await expect(value).toHaveText(shown(adjuster, move.to));
  await page
    .getByRole('button', { name: /^One step/, disabled: false })
    .first()
    .click();
  await expect(value).not.toHaveText(shown(adjuster, move.to));
  await page.getByRole('button', { name: 'Back', exact: true }).click();
}

test('no adjuster kind is left out', () => {
  const all = new Set(walked.flatMap(({ adjusters }) => adjusters));
  expect([...all].sort()).toEqual(Object.keys(adjusterKinds).sort());
});

for (const [i, one] of walked.entries()) {
  // In `npm test` every other one; tests/property/every-kind.test.ts plans and words all.
  (i % 2 === 0 ? test : longTest)(`${one.suspension} with ${one.adjusters.join(', ')}`, async ({ page, site }) => {
    const random = stream(cases.indexOf(one) + 31);
    const { car, axle } = carOf(one, random);
    const reading = foundOf(car);
    const target = elsewhere(car[axle].adjusters, random);
    // What the axle has once stands with its left side alone.
    const settings: CarSettings = Object.fromEntries(
      PAIRS[axle].map((corner) => [
        corner,
        Object.fromEntries(adjustersOf(car, corner).map(({ id }) => [id, target[id] as Position])),
      ]),
    );
    const spec = specAbout(predictReading(car, reading, {}, settings), axle);
    const plan = planned({ car, spec, reading, settings: {} });
    expect(plan.inWindow).toBe(true);
    expect(plan.moves.length).toBeGreaterThan(0);

    await page.setViewportSize({ width: 360, height: 740 });
    await openApp(page, site);
    await openCarFile(page, { car, spec });
    await expect(page.getByRole('heading', { name: car.label })).toBeVisible();
    await press(page, 'New visit');
    await typeReading(page, car, reading);
    await press(page, 'Where the adjusters stand');
    for (const adjuster of car[axle].adjusters) {
      await expect(page.locator('.standing-row', { hasText: adjuster.name }).first()).toContainText(
        shown(adjuster, adjuster.reference),
      );
    }
    await press(page, 'These are right');
    await setsTo(page, car[axle].adjusters, jobsIn(plan)[0]);
    const jobs = jobsIn(plan);
    for (const [i, job] of jobs.entries()) {
      await expect(page.getByText(`${i + 1} of ${jobs.length}`)).toBeVisible();
      await expect(page.locator('.card-form')).toContainText(sentence(job));
      await expect(page.locator('.card-form svg.picture')).toHaveCount(job.length);
      await press(page, MADE);
    }
    await expect(page.getByRole('heading', { name: REMEASURE })).toBeVisible();
    await typeReading(page, car, plan.predicted);
    await press(page, 'Compare with the plan');
    await expect(page.getByText('Not all came as predicted')).toHaveCount(0);
    await press(page, 'As left');
    await press(page, 'Sign off');
    await press(page, /(They are|It is) torqued/);
    await expect(page.getByText('signed off')).toBeVisible();
    await expect(page.locator('body')).not.toContainText(/NaN|undefined/);
  });
}
