/**
 * All that the screens can say to a shop of inches, a decimal comma, degrees and minutes: no mm, no decimal point, no bare
 * decimal degree. Runs over the catalogues, so that a new kind joins.
 */
import { h } from 'preact';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { AdjusterDrawing } from '../../app/parts/adjuster-drawing.tsx';
import { adjusterPictures } from '../../app/parts/drawings/catalogue.ts';
import { sayingsOf } from '../../app/terminal/sayings.ts';
import type { Adjuster, Axle, Car, Move, Shortfall, Spec } from '../../core/contract.ts';
import { adjusterKinds, adjusterPositions, planOfFile, suspensionKinds, validateCarFile } from '../../core/index.ts';
import type { CarRecord } from '../../core/records/stored.ts';
import type { Hint, Note } from '../../core/said.ts';
import { wordsOf } from '../../core/words/catalogue.ts';
import { carFile } from '../core/records/fixture.ts';
import { markup } from '../parts/markup.ts';
import { oneOf, randomSuspension, stream } from '../tools/random-cars.ts';
import { FITTING, sampleAdjuster } from '../tools/samples.ts';

// The app's preferences set the look of the page when they load.
const page = { documentElement: { dataset: {} }, addEventListener: () => undefined };
vi.stubGlobal('document', page);
vi.stubGlobal('addEventListener', page.addEventListener);
vi.stubGlobal('location', { hash: '' });
const { records } = await import('../../app/state/records.ts');
const { units } = await import('../../app/state/preferences.ts');
const { positionText, bareText } = await import('../../app/state/standing.ts');
const { placeParts } = await import('../../app/state/typed-place.ts');
const { wayText, offText } = await import('../../app/state/move-words.ts');
const { sizeText } = await import('../../app/state/shim-size.ts');
const { canRead, canReadLengths, valueText, thrustText } = await import('../../app/state/units.ts');
const { fieldsOf } = await import('../../app/screens/build/adjuster-fields.ts');
const { textsOf } = await import('../../app/screens/build/car-texts.ts');
const { unitWord } = await import('../../app/screens/build/numbers.ts');

const SHOP = { angle: 'degrees-minutes', toe: 'inch', toeParts: '32', length: 'inch', decimal: ',' } as const;
const words = wordsOf();

/** What must not be in a text of this shop. */
const WRONG = /\bmm\b|\d\.\d|\d,\d+\s?°/;
function expectOwn(texts: readonly string[]): void {
  expect(texts.length).toBeGreaterThan(0);
  expect(texts.filter((text) => WRONG.test(text))).toEqual([]);
}
/** The texts of a drawing; its coordinates are nobody's figures. */
const textsIn = (drawn: string): string[] =>
  [...drawn.matchAll(/>([^<>]+)</g)].map(([, text = '']) => text).filter((text) => text.trim() !== '');

beforeAll(async () => {
  records.value = { ...records.value, preferences: [{ id: 'units', value: SHOP, changed: '2026-01-01' }] };
  expect(units.value).toMatchObject(SHOP);
  canRead('inch');
  canReadLengths();
  await vi.waitFor(() => expect(canReadLengths()).toBe(true));
});

it('catches what it is to catch', () => {
  for (const text of ['4 mm', '0.5°', '0,5°', '1.5 turns']) expect(WRONG.test(text), text).toBe(true);
  for (const text of ['3/32 in', '0°30′', '1,5 turns', '0,0591 in']) expect(WRONG.test(text), text).toBe(false);
  // The other shop's own texts are what is caught.
  expect(sayingsOf([{}]).filter((line) => WRONG.test(line)).length).toBeGreaterThan(20);
});

it('every sentence of a move’s card', () => expectOwn(sayingsOf([SHOP])));

describe.each(Object.keys(adjusterKinds))('of a %s', (name) => {
  const kind = adjusterKinds[name]!;
  const random = stream(2_400);
  const { suspension } = FITTING.find(({ adjuster }) => adjuster === name)!;
  const moves = Array.from({ length: 12 }, () => {
    const adjuster = sampleAdjuster(random, name, randomSuspension(random, suspension));
    const all = adjusterPositions(adjuster);
    return { adjuster, from: oneOf(random, all), to: oneOf(random, all), corner: oneOf(random, ['LF', 'RR'] as const) };
  });

  it('each step, place, way and act', () => {
    expectOwn(
      moves.flatMap(({ adjuster, from, to, corner }) => [
        positionText(adjuster, from),
        ...(typeof from === 'number' ? [bareText(adjuster, from)] : []),
        words.step(kind.step(adjuster).said, units.value),
        ...(from === to ? [] : [words.act(kind.act(adjuster, from, to, { corner }), units.value)]),
        ...(from === to ? [] : [wayText(adjuster, { corner, from, to })]),
      ]),
    );
  });

  it('each drawing', () => {
    expectOwn(
      moves.flatMap(({ adjuster, from, to, corner }) =>
        textsIn(markup(h(AdjusterDrawing, { adjuster, from, to, corner, units: units.value }))),
      ),
    );
  });

  it('each place on what is touched for it, and what is typed there', () => {
    for (const { adjuster, to: position, corner } of moves) {
      const face = adjusterPictures[adjuster.kind]?.face?.(adjuster);
      const props = { adjuster, corner, position, positions: adjusterPositions(adjuster), units: units.value };
      if (face) expectOwn([face.says?.(props) ?? 'none', ...textsIn(markup(h(face.Drawing, props)))]);
      expectOwn(placeParts(adjuster, position).flatMap(({ label, text }) => [label, text]));
    }
  });

  it('each field of its form, with its label and hint', () => {
    const asked = fieldsOf({ 'a.kind': name }, 'a');
    expectOwn(
      asked.flatMap(({ label, hint = '', ask }) =>
        [label, hint, 'unit' in ask ? unitWord(ask.unit) : ''].filter(Boolean),
      ),
    );
  });
});

it('the packs of an inch car in parts of an inch', () => {
  const pack = { kind: 'shim-pack', id: 'p', at: 'a', direction: [0, 1, 0], sizes: [2.38125, 1.5875], max: 12.7 };
  const adjuster = { ...pack, reference: 0 } as unknown as Adjuster;
  const act = adjusterKinds['shim-pack']!.act(adjuster, 0, 3.96875, { corner: 'LF' });
  expect(words.act(act, units.value)).toContain('build this pack: 3/32 + 1/16 = 5/32 in, 5/32 in more than now');
  const drawn = textsIn(
    markup(
      h(AdjusterDrawing, {
        adjuster,
        corner: 'LF',
        from: 0,
        to: 3.96875,
        units: units.value,
        stackFrom: [],
        stackTo: [
          { size: 2.38125, count: 1 },
          { size: 1.5875, count: 1 },
        ],
      }),
    ),
  );
  expect(drawn.join(' ')).toContain('1 × 3/32 and 1 × 1/16');
  expect(drawn).toContain('3/32');
  expect(wayText(adjuster, { corner: 'LF', from: 0, to: 3.96875 })).toBe('0 → 5/32 in');
  expect(sizeText(2.38125)).toBe('3/32 in');
});

it('all that stands beside a plan and a reading', () => {
  const named = { corner: 'LF', adjuster: 'a', name: 'front shims' } as const;
  const shims = [{ size: 1.5875, count: 2 }];
  const notes: Note[] = [
    { note: 'thrust-left', thrust: 0.25, goes: 'left', degrees: 4.4 },
    { note: 'wheel-stood-off', degrees: -4.5, road: 0.31, stays: 1.5 },
    { note: 'lengths-unknown', axle: 'front', name: 'rods', most: 2.5 },
    { note: 'bump-steer', corner: 'RF', before: 0.05, after: 0.31, travel: 25 },
    { note: 'strain', corners: ['LR', 'RR'], before: 0.2, after: 2.4 },
    { note: 'axle-goes', axle: 'rear', pinion: -0.12, aside: 1.24 },
    { note: 'axle-goes', axle: 'front', pinion: 0.3, aside: -0.01, kept: { pinion: 0.5, aside: 3 }, beyond: true },
    { note: 'packs-unknown', packs: [named] },
    { note: 'below-least', pack: named, holds: 1, least: 1.5 },
    { note: 'shims-missing', shims },
    { note: 'shims-short', shims },
    { note: 'shims-borrowed', by: named, shims, from: [named] },
    { note: 'too-far-apart', both: [named, named], most: 1.5, by: 2.25 },
    { note: 'best-found', settings: 4e9, around: { by: 0.25, unit: 'turns' }, offAim: 0.0123 },
  ];
  const hints: Hint[] = [
    { where: 'front', kind: 'included', difference: 1.25 },
    { where: 'front', kind: 'setback', difference: 1.4 },
    { where: 'RF', kind: 'moved-back', length: 12, look: 'wheel-moved-back' },
    { where: 'RF', kind: 'turns', by: -2.25, against: 'maker', look: 'steering-arm' },
  ];
  const car = { ...carFile('tarn-gt.json').car, wheel: { rimDiameter: 431.8 } };
  const short: Shortfall[] = [
    'camber',
    'caster',
    'toe',
    'totalToe',
    'thrustAngle',
    'pinionChange',
    'lateralChange',
  ].map(
    (angle) => ({ where: angle === 'camber' ? 'LF' : 'rear', angle, by: 0.37, atStop: [] }) as unknown as Shortfall,
  );
  expectOwn([
    ...notes.map((one) => words.note(one, units.value)),
    ...hints.map((one) => words.hint(one, units.value)),
    words.axleGone(0.1, 2.35, units.value),
    words.unusual('camber', 12.25, [-6, 6], units.value),
    words.noPose([{ adjuster: 'rod', position: 1.5 }], units.value),
    ...short.map((one) => offText(car, one)),
    ...['caster', 'camber', 'toe', 'sai', 'totalToe', 'thrustAngle', 'pinionAngle', 'lateral', 'steeringWheel'].map(
      (angle) => valueText(angle, 0.372, 431.8),
    ),
    thrustText(-0.12),
    valueText('toe', 0.25, undefined),
  ]);
  expect(valueText('toe', 0.25, 431.8)).toBe('1/16');
});

it('a whole plan, note for note and move for move', () => {
  const plan = planOfFile(carFile('tarn-gt.json'));
  expectOwn([
    ...plan.moves.map((move: Move) => words.act(move.act, units.value)),
    ...plan.noted.map((one) => words.note(one, units.value)),
  ]);
  expect(plan.moves.length).toBeGreaterThan(1);
});

describe.each(Object.keys(suspensionKinds))('the build card of a car on %s', (kind) => {
  it('in every field', () => {
    const random = stream(31);
    const suspension = randomSuspension(random, kind);
    const adjusters = FITTING.filter((one) => one.suspension === kind).map(({ adjuster }, i) =>
      sampleAdjuster(random, adjuster, suspension, `a${i}`),
    );
    const axle: Axle = { suspension, adjusters, steered: true };
    const spec: Spec = {
      front: { camber: { low: -1, high: -0.125 }, toe: { low: 1 / 30, high: 1 / 3 }, totalToe: { low: 0, high: 0.4 } },
      rear: { pinionChange: { low: -1 / 3, high: 0.25 }, lateralChange: { low: -2.5, aim: 1 / 7, high: 4 } },
      toeDiameter: 700,
    };
    const rear: Axle = {
      suspension: { kind: 'unknown', points: {}, camber: 0, toe: 0 },
      adjusters: [],
      steered: false,
    };
    const car: Car = { id: 'c', label: 'C', wheel: { rimDiameter: 431.8 }, wheelbase: 2601.5, front: axle, rear };
    const file = validateCarFile({ format: 'cornerwright', version: 1, car, spec });
    const record: CarRecord = { id: 'c', car: file.car, spec: file.spec ?? {}, changed: '2026-01-01' };
    const texts = Object.entries(textsOf(record)).filter(([path]) => !/\.(kind|id|name|at|label|way)$/.test(path));
    expectOwn(
      texts.map(([path, text]) => (/\d@/.test(text) ? text.replace('@', ' @ ') : text) || path.replace(/./g, '-')),
    );
  });
});

it('toe typed in parts of an inch, and how far an axle stands aside, are read in the unit they were typed in', async () => {
  const { readField, unitsOf, unitTexts } = await import('../../app/state/fields.ts');
  const field = (angle: 'toe' | 'lateral') => ({ id: angle, where: 'rear', angle }) as const;
  const read = (angle: 'toe' | 'lateral', text: string, rim: number | undefined, texts = unitTexts(units.value)) =>
    readField(field(angle), text, unitsOf(texts, units.value), rim).value;
  expect(read('toe', '3/32', 400)).toBeCloseTo((Math.asin(2.38125 / 400) * 180) / Math.PI, 9);
  expect(read('toe', '−1/16', 400)).toBeCloseTo((-Math.asin(1.5875 / 400) * 180) / Math.PI, 9);
  expect(read('lateral', '1/8', 400)).toBeCloseTo(3.175, 9);
  // A reading of before lengths followed the shop was typed in mm.
  expect(read('lateral', '3', 400, { 'unit:toe': 'inch' })).toBe(3);
  // Without a diameter there is no length to read.
  expect(read('toe', '0°12′', undefined)).toBeCloseTo(0.2, 9);
});
