/** Every screen of the app by its address, over records that put visits at every step: walked through at any size. */
import { expect, type Page } from '@playwright/test';
import { ENTRY_STEP } from '../../app/state/stage.ts';
import { refKey } from '../../app/state/visits.ts';
import type { Everything } from '../../app/store/schema.ts';
import type { Adjuster, Car, Reading } from '../../core/contract.ts';
import { startersFor } from '../../core/starters/catalogue.ts';
import { fitmentsFor } from '../../core/starters/fitments.ts';
import { suspensionFromStarter } from '../../core/starters/starter.ts';
import { makeHistory } from '../tools/past-visits.ts';
import { planned, takenDown } from './planned.ts';
import { car, spec } from './practice.ts';

const at = (minute: number): string => new Date(Date.UTC(2026, 4, 5, 8, minute)).toISOString();
/** Left and right apart and out of their windows, so that there is all to say. */
const FOUND: Reading = takenDown({
  LF: { caster: 3.9, camber: 0.15, toe: 0.35 },
  RF: { caster: 4.6, camber: -0.95, toe: -0.2 },
  LR: { camber: -1.9, toe: 0.4 },
  RR: { camber: -0.6, toe: -0.1 },
});
const plan = planned({ car, spec, reading: FOUND, settings: {} });
const typed = { 'LF.camber': '0.15' };

const label = 'Long wheelbase estate, blue, tow bar';
/** A cam whose + side is on file, to be touched on its clock face. */
const CAM: Adjuster = {
  ...{ id: 'cam', name: 'Lower arm, eccentric bolt', kind: 'eccentric-cam', at: 'lowerFront', direction: [0, 1, 0] },
  ...{ eccentricity: 4, marks: 24, stepMarks: 0.5, turns: 'clockwise', reference: 0 },
};
const front = { ...car.front, adjusters: [...car.front.adjusters, CAM] };
const carOf = (id: string) => ({
  id,
  car: { ...car, ...(id === 'stands' && { front }), id, label, plate: 'LONG 123' },
  ...{ spec, changed: at(0) },
});
/** Of which nobody measured anything. */
const usual: Car = {
  ...{ id: 'usual', label, wheel: {} },
  front: {
    suspension: suspensionFromStarter(startersFor('double-wishbone', 'front')[0]!, 'front'),
    adjusters: fitmentsFor('double-wishbone', 'front')
      .filter(({ id }) => id === 'shims-out' || id === 'tie-rod')
      .flatMap(({ adjusters }) => adjusters),
    steered: true,
  },
  rear: {
    suspension: suspensionFromStarter(startersFor('beam-rear', 'rear')[0]!, 'rear'),
    adjusters: [],
    steered: false,
  },
};
const visit = (id: string, of = id) => ({ id: `visit-${id}`, carId: of, opened: at(0) });
const found = (id: string) => ({
  ...{ id: `found-${id}`, visitId: `visit-${id}`, at: at(1), reading: FOUND, settings: {}, typed },
});
const made = (id: string, count = plan.moves.length) =>
  plan.moves.slice(0, count).map(({ corner, adjuster, from, to, setBy, watched }, i) => ({
    ...{ id: `made-${id}-${i}`, visitId: `visit-${id}`, readingId: `found-${id}`, at: at(2 + i) },
    ...{ corner, adjuster, from, to, outcome: 'done' as const },
    ...(setBy && watched && { setBy: { ...setBy, within: watched.within } }),
  }));
const after = (id: string, reading: Reading) => ({
  ...{ id: `after-${id}`, visitId: `visit-${id}`, at: at(40), reading, settings: plan.positions, typed },
});
/** One wheel did not come as predicted: there is a cause to name. */
const parted: Reading = { ...plan.predicted, LF: { ...plan.predicted.LF, toe: (plan.predicted.LF?.toe ?? 0) + 0.3 } };
/** The card of the first that the rack leads is next. */
const UNTIL_LED = plan.moves.findIndex(({ setBy }) => setBy);
const ids = ['entry', 'typing', 'standing', 'stands', 'moves', 'live', 'again', 'compare', 'left', 'closed'] as const;

/** Figures at every tool of the bench, so that each has its result and its way into a visit. */
const BENCH: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  sweep: {
    ...{ 'LF.first.turned': '20', 'LF.first.camber': '1.61', 'LF.first.roll': '5.5' },
    ...{ 'LF.second.turned': '18', 'LF.second.camber': '−1.13', 'LF.second.roll': '−2.5' },
  },
  across: { 'front.front': '1500', 'front.rear': '1503', 'front.diameter': '573' },
  strings: {
    ...{ 'wheels.LF.ahead': '152.5', 'wheels.LF.behind': '151', 'wheels.RF.ahead': '150', 'wheels.RF.behind': '149' },
    ...{ 'wheels.LR.ahead': '160', 'wheels.LR.behind': '158', 'wheels.RR.ahead': '161', 'wheels.RR.behind': '160' },
    ...{ diameter: '410', 'track.front': '1500', 'track.rear': '1490' },
    ...{ 'wheelbase.left': '2600', 'wheelbase.right': '2594' },
  },
  rough: { front: '1520', rear: '1500', diameter: '600', lead: '1.5', arm: '120', wheelOff: '12', ratio: '16' },
  camber: { 'LF.above': '100', 'LF.below': '96', diameter: '400' },
  phone: { 'LF.first': '1.2 1.22 1.21', 'LF.second': '-0.4 -0.4 -0.41' },
  repeat: { 'tape.0.0': '1612', 'tape.0.1': '1613', 'tape.0.2': '1612.5' },
  'run-out': { 'LF.camber.1': '-0.5', 'LF.camber.2': '-0.2', 'LF.camber.3': '-0.9', 'LF.camber.4': '-1.2' },
  axle: {
    'frame.front': '400',
    'frame.rear': '430',
    'frame.between': '1000',
    'LF.measured': '2.5',
    'RF.measured': '2',
  },
  heights: { 'measured.LF': '350', 'measured.RF': '358', 'wanted.LF': '362', 'wanted.RF': '362' },
  slip: { slip: 'three' },
  bent: { 'LF.camber': '1.8', 'RF.camber': '0', 'LF.sai': '10', 'RF.sai': '12', setback: '12' },
};
const FOR = 'visit-typing';

/** Of its front nobody knew much before the two readings. */
const TAUGHT = {
  ...carOf('taught'),
  car: {
    ...carOf('taught').car,
    front: { ...car.front, suspension: { ...car.front.suspension, tolerance: 30 } },
  },
};

export const RECORDS: Partial<Everything> = {
  cars: [
    TAUGHT,
    ...makeHistory(50).cars,
    ...ids.map(carOf),
    { ...carOf('usual'), car: { ...usual, label, plate: 'LONG 124' } },
    { ...carOf('gone'), deleted: [{ at: at(60), knew: 0 }] },
  ],
  visits: [
    visit('taught'),
    ...makeHistory(50).visits,
    ...ids.map((id) => ({ ...visit(id), ...(id === 'closed' && { closed: at(50) }) })),
  ],
  readings: [
    found('taught'),
    after('taught', plan.predicted),
    ...makeHistory(50).readings,
    ...['moves', 'live', 'again', 'compare', 'left', 'closed'].map(found),
    ...['compare', 'left', 'closed'].map((id) => after(id, parted)),
  ],
  moves: [...made('live', UNTIL_LED), ...['again', 'compare', 'left', 'closed'].flatMap((id) => made(id))],
  drafts: [
    ...Object.entries(BENCH).map(([tool, texts]) => ({
      ...{ id: `bench:${tool}`, texts: { ...texts, '@length': 'mm', '@for': FOR }, changed: at(1) },
    })),
    { id: 'visit:visit-left', texts: { signOff: 'after-left' }, changed: at(41) },
    ...(['typing', 'standing', 'stands'] as const).map((id) => ({
      id: `reading:visit-${id}`,
      texts: Object.fromEntries([
        ...(id === 'typing' ? [] : [[ENTRY_STEP, 'standing']]),
        ...Object.entries(FOUND).flatMap(([corner, wheel]) =>
          typeof wheel === 'object'
            ? Object.entries(wheel).map(([angle, value]) => [
                `${corner}.${angle}`,
                Number(value).toFixed(2).replace('-', '−'),
              ])
            : [],
        ),
      ]),
      cursor: { typing: 'RF.toe', standing: 'end', stands: refKey({ corner: 'LF', adjuster: CAM.id }) }[id],
      changed: at(1),
    })),
  ],
};

export interface Screen {
  readonly name: string;
  readonly hash: string;
  /** There when the screen is. */
  readonly shown: string;
  /** What is touched first, by its words. */
  readonly press?: RegExp;
}
const strip = (id: (typeof ids)[number], shown: string, press?: RegExp): Screen => ({
  ...{ name: id, hash: `#/visit/visit-${id}`, shown },
  ...(press && { press }),
});

export const SCREENS: readonly Screen[] = [
  { name: 'cars', hash: '#/', shown: '.card' },
  { name: 'car', hash: '#/car/history-50', shown: '.card' },
  { name: 'learned', hash: '#/car/taught', shown: '.learned' },
  { name: 'deleted', hash: '#/car/gone', shown: '.action-bar-primary' },
  strip('entry', '.keypad-keys'),
  { ...strip('entry', '.visit-notes', /^Before you measure/), name: 'checks' },
  strip('typing', '.keypad-keys'),
  strip('standing', '.standing-row'),
  strip('stands', '.face'),
  strip('moves', '.card-form'),
  strip('live', '.by-rack'),
  strip('again', '.keypad-keys'),
  strip('compare', '.compare'),
  strip('left', '.paper'),
  strip('closed', '.paper'),
  ...['The car', 'Front suspension', 'Front adjusters', 'Rear windows'].map((section) => ({
    ...{ name: section, hash: '#/car/history-50/build', shown: '.step-live', press: new RegExp(`^${section}`) },
  })),
  {
    name: 'what a tape would bring',
    hash: '#/car/usual/build',
    shown: '.worth [role=status]',
    press: /^Front suspension/,
  },
  { name: 'new car', hash: '#/car/fresh/build', shown: '.kinds' },
  { name: 'new car, size', hash: '#/car/fresh-size/build', shown: '.step-live .field', press: /^Name and size/ },
  { name: 'new car, windows', hash: '#/car/fresh-windows/build', shown: '.keypad-keys', press: /^Windows$/ },
  { name: 'chart', hash: '#/car/history-50/chart', shown: '.chart-table' },
  { name: 'history', hash: '#/car/history-50/history', shown: '.angle-line' },
  { name: 'height', hash: '#/car/history-50/height', shown: '.height-table' },
  { name: 'bench', hash: `#/bench/-/${FOR}`, shown: '.bench-group' },
  ...Object.keys(BENCH).map((tool) => ({
    ...{ name: `bench ${tool}`, hash: `#/bench/${tool}/${FOR}`, shown: tool === 'slip' ? '.wrong' : '.bench-lines' },
  })),
  { name: 'settings', hash: '#/settings', shown: '.choice' },
  { name: 'cautions', hash: '#/cautions', shown: '.page, .list, .sheet' },
];

export async function open(page: Page, { hash, shown, press }: Screen): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, hash);
  if (press) {
    const button = page.getByRole('button', { name: press }).first();
    await expect(button).toBeVisible();
    // One that is open would be closed.
    const own = button.locator('xpath=ancestor::section[1]');
    const isOpen = (await own.and(page.locator('[aria-current]')).count()) + (await own.locator(shown).count()) > 0;
    if (!isOpen) await button.click();
  }
  // A plan is worked out first; on a busy machine that takes its time.
  await expect(page.locator(shown).first()).toBeVisible({ timeout: 30_000 });
  await expect(page.locator('[aria-busy="true"]')).toHaveCount(0);
}
