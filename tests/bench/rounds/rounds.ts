/**
 * `npm run bench:rounds [-- CARS]`: how many re-measures a car takes, by the rule of thumb, by the kit's chart and by
 * Cornerwright, on simulated cars; and whether the chance that a plan states comes true.
 */
import type { AxleSpec, Corner, Reading, Settings } from '../../../core/contract.ts';
import { adjusterPositions } from '../../../core/index.ts';
import { stream } from '../../tools/random-cars.ts';
import { carOf, FAMILIES, type Family } from './families.ts';
import { byChart, cornerwright, type Method, ruleOfThumb } from './methods.ts';
import { scattered, TrueCorner } from './truth.ts';

const CARS = Number(process.argv[2] ?? 500);
const MOST_ROUNDS = 8;
/** How much the cars of a family differ from one another, mm, beside how much they differ from what was entered. */
const VARIETY = 15;
const TOE = 0.1;
const LEAN = ['camber', 'caster'] as const;
const ALL = ['camber', 'caster', 'toe'] as const;

type Truth = Readonly<Record<string, TrueCorner>>;

function specOf({ aim }: Family, half: number): AxleSpec {
  const window = (middle: number, by: number) => ({ low: middle - by, aim: middle, high: middle + by });
  return {
    camber: window(aim.camber, half),
    ...(aim.caster === undefined ? {} : { caster: window(aim.caster, half) }),
    toe: window(aim.toe, TOE),
  };
}

function isIn(spec: AxleSpec, reading: Reading, corners: readonly Corner[], angles: readonly (typeof ALL)[number][]) {
  return corners.every((corner) =>
    angles.every((angle) => {
      const window = spec[angle];
      const value = reading[corner]?.[angle];
      return window === undefined || value === undefined || (value >= window.low && value <= window.high);
    }),
  );
}

/** Whether any pair of positions brings camber and caster of the true wheel into the window, by trying them all. */
function canReach(family: Family, spec: AxleSpec, corner: TrueCorner): boolean {
  const [first, second] = family.adjusters;
  return adjusterPositions(first).some((i) =>
    adjusterPositions(second).some((j) => {
      const wheel = corner.angles({ [first.id]: i, [second.id]: j });
      return isIn(spec, { LF: wheel }, ['LF'], LEAN);
    }),
  );
}

interface Outcome {
  /** Re-measures until camber and caster, and until all, are in the window; MOST_ROUNDS + 1 if never. */
  readonly lean: number;
  readonly all: number;
  readonly chance?: number;
  readonly firstAll: boolean;
}

function play(method: Method, spec: AxleSpec, corners: readonly Corner[], truth: Truth): Outcome {
  const read = (at: Readonly<Partial<Record<Corner, Settings>>>): Reading =>
    Object.fromEntries(corners.map((corner) => [corner, truth[corner]?.read(at[corner] ?? {})]));
  let settings: Readonly<Partial<Record<Corner, Settings>>> = {};
  let reading = read(settings);
  let lean = isIn(spec, reading, corners, LEAN) ? 0 : MOST_ROUNDS + 1;
  let all = isIn(spec, reading, corners, ALL) ? 0 : MOST_ROUNDS + 1;
  let chance: number | undefined;
  let firstAll = all === 0;
  for (let round = 1; round <= MOST_ROUNDS && all > MOST_ROUNDS; round++) {
    const step = method(reading, settings);
    settings = step.settings;
    reading = read(settings);
    if (round === 1) chance = step.chance;
    if (isIn(spec, reading, corners, LEAN)) lean = Math.min(lean, round);
    if (isIn(spec, reading, corners, ALL)) all = Math.min(all, round);
    if (round === 1) firstAll = all <= 1;
  }
  return { lean, all, firstAll, ...(chance === undefined ? {} : { chance }) };
}

const calibration: { chance: number; came: boolean }[] = [];
const mean = (xs: readonly number[]): number => xs.reduce((sum, x) => sum + x, 0) / xs.length;
const percent = (xs: readonly boolean[]): string => `${((100 * xs.filter(Boolean).length) / xs.length).toFixed(1)} %`;

console.log(`${CARS} cars a family; toe window ±${TOE}°; a car that is in the window as found is not counted`);
for (const half of [0.5, 0.25]) {
  for (const [number, family] of FAMILIES.entries()) {
    const spec = specOf(family, half);
    const [left, right] = family.corners;
    const axle = left === 'LF' ? 'front' : 'rear';
    const rows = new Map<string, Outcome[]>();
    let reached = 0;
    for (let car = 0; car < CARS; car++) {
      const seed = 1 + number * 100_000 + car;
      const random = stream(seed);
      const entered = [0, 1].map(() => scattered(family.suspension, random, VARIETY));
      const [l, r] = entered as [(typeof entered)[0], (typeof entered)[0]];
      // Every method meets the same cars with the same gauge: the stream starts anew for each.
      const truth = (): Truth => {
        const own = stream(seed + 50_000_000);
        return { [left]: new TrueCorner(family, l, own), [right]: new TrueCorner(family, r, own) };
      };
      const once = truth();
      if (!family.corners.every((corner) => canReach(family, spec, once[corner] as TrueCorner))) continue;
      reached++;
      const methods: Record<string, Method> = {
        'rule of thumb': ruleOfThumb(family, spec),
        "kit's chart": byChart(family, spec),
        Cornerwright: cornerwright(carOf(family, l, r), spec, axle, 'surest'),
        '  closest': cornerwright(carOf(family, l, r), spec, axle, 'closest'),
      };
      for (const [name, method] of Object.entries(methods)) {
        const outcome = play(method, spec, family.corners, truth());
        if (outcome.all === 0) continue;
        rows.set(name, [...(rows.get(name) ?? []), outcome]);
        if (outcome.chance !== undefined) calibration.push({ chance: outcome.chance, came: outcome.firstAll });
      }
    }
    console.log(`\n±${half}°  ${family.name}  (window reachable on ${reached} of ${CARS})`);
    console.log('                 first pass: camber, caster    all       re-measures: camber, caster    all');
    for (const [name, outcomes] of rows) {
      const lean = percent(outcomes.map(({ lean }) => lean <= 1)).padStart(10);
      const all = percent(outcomes.map(({ firstAll }) => firstAll)).padStart(10);
      const leanRounds = mean(outcomes.map(({ lean }) => lean))
        .toFixed(2)
        .padStart(14);
      const allRounds = mean(outcomes.map(({ all }) => all))
        .toFixed(2)
        .padStart(14);
      console.log(`  ${name.padEnd(16)}${lean.padStart(20)}${all}${leanRounds.padStart(26)}${allRounds}`);
    }
  }
}

console.log('\nOf all plans that state a chance, how many came true (all in the window at the first re-measure):');
for (let low = 5; low < 100; low += 10) {
  const group = calibration.filter(({ chance }) => chance * 100 >= low && chance * 100 < low + 10);
  if (group.length === 0) continue;
  const label = `${low} to ${low + 10} %`.padEnd(14);
  console.log(
    `  ${label}${String(group.length).padStart(6)} plans   ${percent(group.map(({ came }) => came))} came true`,
  );
}
