/** What would free a wheel: a car with so much more travel is planned, and one with a step less. */
import { describe, expect, it } from 'vitest';
import type {
  Adjuster,
  AxleSpec,
  Car,
  Corner,
  PlanRequest,
  Position,
  Reading,
  WheelReading,
} from '../../../../core/contract.ts';
import { adjusterPositions, planMoves, predictReading, whatWouldFree } from '../../../../core/index.ts';
import { LAYOUTS, rod } from '../../../tools/random-cars.ts';

const suspension = { kind: 'double-wishbone', points: LAYOUTS['double-wishbone'] ?? {}, camber: 0, toe: 0 };
const carOf = (adjusters: readonly Adjuster[]): Car => ({
  id: 'a',
  label: 'a',
  wheel: { rimDiameter: 420 },
  front: { suspension, adjusters, steered: true },
  rear: { suspension: { kind: 'unknown', points: {}, camber: 0, toe: 0 }, adjusters: [], steered: false },
});
const READ: WheelReading = { camber: -0.4, caster: 3, toe: 0.1 };
const BOTH: Reading = { LF: READ, RF: READ };

const thread = (low: number, high: number): Adjuster => ({ ...rod('rod', 'tieInner', 1, 0.25), range: [low, high] });
const slide = (low: number, high: number, direction: readonly number[] = [0, 1, 0]): Adjuster => ({
  id: 'slide',
  kind: 'slide',
  at: 'upperFront',
  direction,
  step: 1,
  range: [low, high],
  reference: 0,
});
const pack = (max: number): Adjuster => ({
  id: 'pack',
  kind: 'shim-pack',
  at: 'upperFront',
  direction: [0, 1, 0],
  sizes: [1],
  max,
  reference: 2,
});

/** What a wheel reads where an adjuster stands, which has travel enough for it. */
function at(wide: readonly Adjuster[], corner: Corner, to: Readonly<Record<string, Position>>): WheelReading {
  return predictReading(carOf(wide), { [corner]: READ }, {}, { [corner]: to })[corner] ?? {};
}
const about = (value: number | undefined, half: number) => ({
  low: (value ?? Number.NaN) - half,
  high: (value ?? Number.NaN) + half,
});
const ask = (adjusters: readonly Adjuster[], front: AxleSpec, more: Partial<PlanRequest> = {}): PlanRequest => ({
  car: carOf(adjusters),
  spec: { front },
  reading: BOTH,
  settings: {},
  ...more,
});

/** One adjuster with `by` more travel than it has, at one end of it. */
type Wider = (by: number) => Adjuster;
describe('one adjuster beyond its end', () => {
  it.each<[string, Wider, number, number, Readonly<Record<string, unknown>>]>([
    ['a rod outwards', (by) => thread(-1, 1 + by), 1, 0.25, { unit: 'turns', way: 'longer' }],
    ['a rod inwards', (by) => thread(-1 - by, 1), -1, 0.25, { unit: 'turns', way: 'shorter' }],
    ['a slide up its scale', (by) => slide(-2, 3 + by), 3, 1, { unit: 'mm', way: 'outboard' }],
    ['a slide down its scale', (by) => slide(-2 - by, 3), -2, 1, { unit: 'mm', way: 'inboard' }],
    ['a slide that runs in', (by) => slide(-2, 3 + by, [0, -1, 0]), 3, 1, { unit: 'mm', way: 'inboard' }],
    ['more shims', (by) => pack(4 + by), 4, 1, { unit: 'mm', way: 'outboard' }],
  ])('%s: by the least that does', (_, wider, end, step, further) => {
    const own = wider(0);
    const toe = own.kind === 'threaded-rod';
    for (const [by, half] of [
      [step, 0.45],
      [3 * step, 0.45],
      [5 * step, 1.4],
    ] as const) {
      const there = (more: number) => at([wider(12)], 'LF', { [own.id]: end + Math.sign(end) * more });
      const [wanted, next] = [there(by), there(by - step)];
      const one = Math.abs(((toe ? wanted.toe : wanted.camber) ?? 0) - ((toe ? next.toe : next.camber) ?? 0));
      const left: AxleSpec['left'] = toe
        ? { toe: about(wanted.toe, half * one) }
        : { camber: about(wanted.camber, half * one) };
      const meets = (more: number) => planMoves(ask([wider(more)], { left })).inWindow;
      const least = Array.from({ length: 12 }, (_, i) => (i + 1) * step).find(meets);
      const [stuck, ...others] = whatWouldFree(ask([own], { left }));
      if (meets(0)) {
        expect(stuck).toBeUndefined();
        continue;
      }
      expect(others).toEqual([]);
      expect(stuck?.corners).toEqual(['LF']);
      const [[change, ...more] = []] = stuck?.ways.filter(([first]) => first?.adjuster === own.id) ?? [];
      expect(more).toEqual([]);
      expect(change).toMatchObject({ corner: 'LF', adjuster: own.id, further });
      expect(change?.further?.by).toBeCloseTo(least ?? Number.NaN, 9);
      expect(change?.further?.takes.length).toBeGreaterThan(5);
    }
  });

  it('a cam: its point put further beside it, the cam turned that way as far as it goes', () => {
    const cam: Adjuster = {
      id: 'cam',
      kind: 'eccentric-cam',
      at: 'upperFront',
      direction: [0, 1, 0],
      eccentricity: 3,
      marks: 12,
      range: [-90, 90],
      zero: 'middle',
      reference: 0,
    };
    const beside = (range: readonly [number, number]): Adjuster => ({
      id: 'beside',
      kind: 'slide',
      at: 'upperFront',
      direction: [0, 1, 0],
      step: 0.5,
      range,
      reference: 0,
    });
    for (const [end, way] of [
      [1, 'outboard'],
      [-1, 'inboard'],
    ] as const) {
      const range = (by: number): readonly [number, number] => (end > 0 ? [0, by] : [-by, 0]);
      const ends = adjusterPositions(cam).map((position) =>
        at([cam, beside(range(8))], 'LF', { cam: position, beside: end * 4 }),
      );
      const far = (end > 0 ? Math.max : Math.min)(...ends.map(({ camber }) => camber ?? Number.NaN));
      const left = { camber: about(far, 0.02) };
      const meets = (by: number) => planMoves(ask([cam, beside(range(by))], { left })).inWindow;
      const least = Array.from({ length: 20 }, (_, i) => (i + 1) / 2).find(meets);
      expect(least).toBeGreaterThan(3);
      const [stuck] = whatWouldFree(ask([cam], { left }));
      expect(stuck?.ways).toHaveLength(1);
      expect(stuck?.ways[0]).toEqual([
        { corner: 'LF', adjuster: 'cam', further: expect.objectContaining({ by: least, unit: 'mm', way }) },
      ]);
    }
  });
});

describe('what is not to be moved', () => {
  it('frees a wheel where it does alone, before anything that has to go further', () => {
    const wide = [thread(-1, 1), slide(-2, 3)];
    const left = { toe: about(at(wide, 'LF', { rod: 0.75 }).toe, 0.02) };
    const locked = [{ corner: 'LF', adjuster: 'rod' }] as const;
    const [stuck] = whatWouldFree(ask(wide, { left }, { locked }));
    expect(stuck?.corners).toEqual(['LF']);
    expect(stuck?.ways[0]).toEqual([{ corner: 'LF', adjuster: 'rod' }]);
    expect(whatWouldFree(ask(wide, { left }))).toEqual([]);
  });
});

describe('where no single adjuster does', () => {
  it('left and right of a name, each by no more than it takes', () => {
    const own = thread(-1, 1);
    const wheel = at([thread(-7, 7)], 'LF', { rod: 6 }).toe ?? Number.NaN;
    const spec: AxleSpec = { totalToe: about(2 * wheel, 0.03) };
    const wide = (left: number, right: number) => {
      const car = carOf([thread(-7, 7)]);
      // Each side beyond its end by so much is as good as locked there, or anywhere before.
      const turns = (by: number) => Array.from({ length: 4 * (by + 2) + 1 }, (_, i) => i / 4 - 1);
      const toe = (corner: Corner, by: number) =>
        turns(by).map(
          (rod) => predictReading(car, { [corner]: READ }, {}, { [corner]: { rod } })[corner]?.toe ?? Number.NaN,
        );
      const { low, high } = spec.totalToe ?? { low: 0, high: 0 };
      return toe('LF', left).some((l) => toe('RF', right).some((r) => l + r >= low && l + r <= high));
    };
    const [stuck] = whatWouldFree(ask([own], spec));
    expect(stuck?.corners).toEqual(['LF', 'RF']);
    expect(stuck?.ways).toHaveLength(1);
    const [a, b] = stuck?.ways[0] ?? [];
    expect([a?.corner, a?.adjuster, b?.corner, b?.adjuster]).toEqual(['LF', 'rod', 'RF', 'rod']);
    const [left, right] = [a?.further?.by ?? Number.NaN, b?.further?.by ?? Number.NaN];
    expect(wide(left, right)).toBe(true);
    expect(wide(left - 0.25, right)).toBe(false);
    expect(wide(left, right - 0.25)).toBe(false);
  });

  it('left and right of one name, not of two', () => {
    const own = [thread(-1, 1), { ...thread(-1, 1), id: 'other' }];
    const wheel = at([thread(-8, 8)], 'LF', { rod: 7 }).toe ?? Number.NaN;
    const [stuck] = whatWouldFree(ask(own, { totalToe: about(2 * wheel, 0.03) }));
    const ways = stuck?.ways.map((way) => way.map(({ corner, adjuster }) => `${corner} ${adjuster}`).join());
    expect(ways?.sort()).toEqual(['LF other,RF other', 'LF rod,RF rod']);
  });

  it.each([
    [-3, 6],
    [5, -4],
  ])('two of a corner, each by no more than it takes: to %d turns and %d mm', (turned, slid) => {
    const own = [thread(-1, 1), slide(-1, 1)];
    const wide = (turns: number, mm: number) => [thread(-1 - turns, 1 + turns), slide(-1 - mm, 1 + mm)];
    const there = at(wide(6, 12), 'LF', { rod: turned, slide: slid });
    const left = { camber: about(there.camber, 0.03), toe: about(there.toe, 0.03) };
    const [stuck] = whatWouldFree(ask(own, { left }));
    expect(stuck?.corners).toEqual(['LF']);
    expect(stuck?.ways.length).toBeGreaterThan(0);
    for (const way of stuck?.ways ?? []) {
      expect(way.map(({ adjuster }) => adjuster).sort()).toEqual(['rod', 'slide']);
      const by = (id: string) => way.find(({ adjuster }) => adjuster === id)?.further?.by ?? Number.NaN;
      const meets = (turns: number, mm: number) => planMoves(ask(wide(turns, mm), { left })).inWindow;
      expect(meets(by('rod'), by('slide'))).toBe(true);
      expect(meets(by('rod') - 0.25, by('slide'))).toBe(false);
      expect(meets(by('rod'), by('slide') - 1)).toBe(false);
    }
  });

  it('nothing, where that is not enough either', () => {
    const left = { toe: { low: 30, high: 31 } };
    expect(whatWouldFree(ask([thread(-1, 1), slide(-1, 1)], { left }))).toEqual([{ corners: ['LF'], ways: [] }]);
  });

  it('nor one that cannot go further at all', () => {
    const bolt: Adjuster = {
      id: 'bolt',
      kind: 'clamp-bolt',
      eccentricity: 2,
      spacing: 40,
      range: [-90, 90],
      step: 15,
      reference: 0,
    };
    const strut = { kind: 'strut', points: LAYOUTS.strut ?? {}, camber: 0, toe: 0 };
    const asked = ask([bolt], { left: { camber: { low: 20, high: 21 } } });
    const car = { ...asked.car, front: { ...asked.car.front, suspension: strut } };
    expect(whatWouldFree({ ...asked, car })).toEqual([{ corners: ['LF'], ways: [] }]);
  });
});

it('wheels that no window ties are told of apart, front to rear', () => {
  const wide = [thread(-4, 4)];
  const toe = about(at(wide, 'LF', { rod: 3 }).toe, 0.03);
  const stuck = whatWouldFree(ask([thread(-1, 1)], { toe }));
  expect(stuck.map(({ corners }) => corners)).toEqual([['LF'], ['RF']]);
  const [first, second] = stuck.map(({ ways }) => ways.map((way) => way.map(({ corner: _, ...change }) => change)));
  expect(second).toEqual(first);
});

describe('two of a corner of which one takes back what the other does', () => {
  it.each([
    [5, 2, 2, 1],
    [7, 3, 4, 2],
  ])('a slide to %d mm and a rod to %d turns: each by the least that does', (mm, turns, further, longer) => {
    const there = at([slide(-15, 15), thread(-8, 8)], 'LF', { slide: mm, rod: turns });
    const asked = ask([slide(-2, 3), thread(-1, 1)], {
      camber: about(there.camber, 0.02),
      toe: about(there.toe, 0.02),
    });
    const stuck = whatWouldFree({ ...asked, reading: { LF: READ } });
    expect(stuck.map(({ ways }) => ways.length)).toEqual([1]);
    const by = stuck[0]?.ways[0]?.map((one) => [one.adjuster, one.further?.by, one.further?.way]);
    expect(by).toEqual([
      ['slide', further, 'outboard'],
      ['rod', longer, 'longer'],
    ]);
  });
});
