/**
 * A re-measure after moves that the rack led: what it showed on the way counts, whether the stand was read off or left at its
 * guess. The true cars are those of tests/bench/rounds: points off by a tape's tolerance or a typical layout's, a hand that turns
 * until a gauge that does not repeat shows the value; their poses by ml-levenberg-marquardt.
 */
import { describe, expect, it } from 'vitest';
import type { CarFile, CarSettings, Corner, Move, Moved, Reading, Round } from '../../core/contract.ts';
import { explain, planMoves, planRequest } from '../../core/index.ts';
import { carOf, LEARNERS } from '../bench/rounds/families.ts';
import { GAUGE, scattered, TrueCorner } from '../bench/rounds/truth.ts';
import { stream } from '../tools/random-cars.ts';
import { shortOrLong } from '../tools/seeds.ts';

const CARS = shortOrLong(3, 40);
const HALF = { camber: 0.25, caster: 0.4, toe: 0.08 };
/** Degrees by which a figure is typed wrong. */
const WRONG = 0.3;
/** Shim packs and a rod; plates and a rod; cams of the lower arm and a rod: the rod is led by toe, last of all. */
const FAMILIES = [0, 1, 3];

/** A car, its plan worked through at the rack, and what then was read. */
function led(number: number, seed: number, off: number, read: boolean) {
  const family = LEARNERS[number]!;
  const { aim, corners } = family;
  const random = stream(60_000 + 1_000 * number + seed);
  const entered = corners.map(() => ({ ...scattered(family.suspension, random, 15), tolerance: off }));
  const truth = new Map(corners.map((corner, i) => [corner, new TrueCorner(family, entered[i]!, random, off)]));
  const shown = (at: CarSettings): Reading =>
    Object.fromEntries(
      corners.map((corner) => [
        corner,
        Object.fromEntries(
          Object.entries(truth.get(corner)!.read(at[corner] ?? {})).map(([angle, x]) => [
            angle,
            Math.round(100 * x) / 100,
          ]),
        ),
      ]),
    );
  const window = (angle: keyof typeof HALF, middle: number) => ({
    [angle]: { low: middle - HALF[angle], aim: middle, high: middle + HALF[angle] },
  });
  const spec = { ...window('camber', aim.camber), ...window('caster', aim.caster!), ...window('toe', aim.toe) };
  const car = carOf(family, entered[0]!, entered[1]!);
  const found: Round = { id: 'found', at: '2026-03-02T08:00:00Z', reading: shown({}), settings: {} };
  const file: CarFile = {
    ...{ format: 'cornerwright', version: 1, car, spec: { front: spec } },
    visits: [{ id: 'visit', carId: car.id, opened: '2026-03-02T08:00:00Z', rounds: [found] }],
  };
  const { moves } = planMoves(planRequest(file, { style: 'practical', gauge: GAUGE, live: ['camber', 'toe'] }));
  const [recorded, stood]: Record<string, Record<string, number>>[] = [{}, {}];
  const moved = moves.map((move): Moved => {
    const { corner, adjuster, from, setBy, watched } = move;
    const stands = truth.get(corner)!.make(move);
    const to = setBy && !read ? Number(move.to) : stands;
    recorded![corner] = { ...recorded![corner], [adjuster]: to };
    stood![corner] = { ...stood![corner], [adjuster]: stands };
    const guessed = setBy && { setBy: { ...setBy, ...(!read && { within: (watched as Move['watched'])!.within }) } };
    return { corner, adjuster, from, to, outcome: 'done', ...guessed };
  });
  const last: Round = { id: 'last', at: '2026-03-02T09:00:00Z', reading: shown(stood!), settings: recorded! };
  /** The same, one adjuster still where it was found. */
  const without = (corner: Corner, adjuster: string): Round => {
    const at = { ...stood, [corner]: { ...stood![corner], [adjuster]: 0 } };
    return { ...last, reading: shown(at) };
  };
  return {
    car,
    before: { ...found, moved },
    last,
    without,
    corner: corners[0],
    isLed: moves.some(({ setBy }) => setBy),
  };
}

describe.each([
  ['tape', 5],
  ['typical layout', 30],
])('from a %s', (_, off) => {
  it.each([
    ['read off', true],
    ['left at its guess', false],
  ])('the stand %s: nothing is cried over, and a wrong figure is named', (__, read) => {
    const told = { all: 0, noise: 0, wrong: 0 };
    const squares: number[] = [];
    for (const number of FAMILIES) {
      for (let seed = 0; seed < CARS; seed++) {
        const { car, before, last, corner, isLed } = led(number, seed, off, read);
        if (!isLed) continue;
        told.all++;
        const [first] = explain(car, last, { before, gauge: GAUGE });
        if (first!.cause === 'noise') told.noise++;
        squares.push(...first!.left.map(({ sigmas }) => sigmas ** 2));
        const { toe } = last.reading[corner]!;
        const wheel = { ...last.reading[corner], toe: Math.round(100 * (toe! + WRONG)) / 100 };
        const wrong = { ...last, reading: { ...last.reading, [corner]: wheel } };
        const [named] = explain(car, wrong, { before, gauge: GAUGE });
        // Without a stand that was read off a rod that nobody turned may account for it as well.
        const isNamed = named!.angle === 'toe' || (!read && named!.cause === 'not-made');
        if (named!.corner === corner && isNamed) told.wrong++;
      }
    }
    expect(told.all).toBeGreaterThan(2 * CARS);
    // Three in a hundred are held against it in the whole; of so few one.
    expect(told.noise).toBeGreaterThanOrEqual(told.all - Math.max(1, 0.03 * told.all));
    expect(told.wrong).toBeGreaterThanOrEqual(0.85 * told.all);
    // What is left of a reading is as wide as is said: squares of as many sigmas are 1 in the mean.
    const mean = squares.reduce((sum, x) => sum + x, 0) / squares.length;
    expect(mean).toBeGreaterThan(0.6);
    expect(mean).toBeLessThan(1.4);
  });
});

it('a rod that is said to be set, and nobody has turned, is named', () => {
  let [all, named] = [0, 0];
  for (const number of FAMILIES) {
    for (let seed = 0; seed < CARS; seed++) {
      const { car, before, without, corner } = led(number, seed, 5, false);
      const rod = before.moved.find((one) => one.corner === corner && one.adjuster === 'rod' && one.setBy);
      // Less than a third of a turn is no more than another figure's worth.
      if (!rod || Math.abs(Number(rod.to)) < 1 / 3) continue;
      all++;
      const [first] = explain(car, without(corner, 'rod'), { before, gauge: GAUGE });
      if (first!.cause === 'not-made' && first!.corner === corner && first!.adjuster?.adjuster === 'rod') named++;
    }
  }
  expect(all).toBeGreaterThan(CARS);
  expect(named).toBeGreaterThanOrEqual(0.85 * all);
});
