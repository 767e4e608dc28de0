/**
 * States that are numbers alone, for the search: no car, no solving. What a state is taken for on the way is off from what
 * it is found to be by up to the slack, as with interpolation.
 */
import type { Corner } from '../../core/contract.ts';
import type { StateSpace } from '../../core/plan/states/state-space.ts';
import type { Term, TermPart } from '../../core/plan/terms.ts';
import { ANGLES_A_WHEEL } from '../../core/pose/mechanism.ts';
import { between, oneOf, type Random } from './random-cars.ts';

/** A wheel's three angles, and one number that another wheel has to agree with. */
const STRIDE = ANGLES_A_WHEEL + 1;

interface Made {
  readonly corner: Corner;
  /** State by state: camber, caster, toe, then the tie. */
  readonly numbers: readonly (readonly number[])[];
  readonly minutes: readonly number[];
  readonly slack?: number;
  /** How far each angle of each state is from what it is taken for; none: not at all. */
  readonly off?: (state: number, angle: number) => number;
}

/** One wheel's states from what they are found to be. */
export function madeStates({ corner, numbers, minutes, slack = 0, off = () => 0 }: Made): StateSpace {
  const near = (state: number): Float64Array => values.slice(state * STRIDE, (state + 1) * STRIDE);
  const values = Float64Array.from(
    numbers.flatMap((own, state) => own.map((x, angle) => (angle < ANGLES_A_WHEEL ? x + off(state, angle) : x))),
  );
  const states = {
    corners: [corner],
    count: numbers.length,
    stride: STRIDE,
    slack,
    values,
    effort: Float32Array.from(minutes),
    placeOf: (_: Corner, angle: number) => angle,
    near,
    exact: (state: number) => Float64Array.from(numbers[state] ?? []),
  };
  return states as unknown as StateSpace;
}

/** So many states anywhere within a degree, one in ten of them without a pose. */
export function randomStates(random: Random, corner: Corner, count: number, slack = 0): StateSpace {
  const numbers = Array.from({ length: count }, (_, state) => {
    const lost = state > 0 && random() < 0.1;
    const angles = Array.from({ length: ANGLES_A_WHEEL }, () => (lost ? Number.NaN : between(random, -1, 1)));
    return [...angles, oneOf(random, [-1, 0, 1, 2])];
  });
  const offs = numbers.map((own) => own.map(() => between(random, -slack, slack)));
  const minutes = numbers.map(() => oneOf(random, [0, 5, 5.1, 8, 10]));
  return madeStates({ corner, numbers, minutes, slack, off: (state, angle) => offs[state]?.[angle] ?? Number.NaN });
}

/** A window about a sum of angles. */
export function madeTerm(parts: readonly TermPart[], aim: number, half: number, constant = 0): Term {
  return { where: 'front', angle: 'toe', parts, constant, window: { low: aim - half, aim, high: aim + half, half } };
}

/** The numbers of two wheels may part by so much at the most. */
export function madeTie(left: Corner, right: Corner, most: number): Term {
  const parts = [
    { corner: left, angle: ANGLES_A_WHEEL, factor: 1 },
    { corner: right, angle: ANGLES_A_WHEEL, factor: -1 },
  ];
  const window = { low: -most, aim: 0, high: most, half: Number.POSITIVE_INFINITY };
  return { where: 'front', angle: 'tie', parts, constant: 0, window, hard: true };
}

/** Windows of each wheel's own angles and of what the wheels have together. */
export function randomTerms(random: Random, corners: readonly Corner[], half: number): Term[] {
  const window = (parts: readonly TermPart[]): Term =>
    madeTerm(parts, between(random, -0.5, 0.5), half * between(random, 0.6, 1.4), between(random, -0.2, 0.2));
  const own = corners.flatMap((corner) => [0, 2].map((angle) => window([{ corner, angle, factor: 1 }])));
  const together = [0, 1, 2].map((angle) =>
    window(corners.map((corner) => ({ corner, angle, factor: oneOf(random, [1, -1, 0.5]) }))),
  );
  return [...own, ...together];
}

/** What a term is at what the states are found to be; written apart from the planner. */
export function numberOf({ parts, constant }: Term, states: readonly StateSpace[], chosen: readonly number[]): number {
  return parts.reduce((sum, { corner, angle, factor }) => {
    const a = states.findIndex(({ corners }) => corners.includes(corner));
    return sum + factor * (states[a]?.exact(chosen[a] ?? -1)[angle] ?? Number.NaN);
  }, constant);
}

/** Σ((value − aim)/half)², and whether all are in their windows, or at least what is a limit of the parts. */
export function scoreOf(terms: readonly Term[], states: readonly StateSpace[], chosen: readonly number[]) {
  let distance = 0;
  let inWindow = true;
  let allowed = true;
  for (const term of terms) {
    const value = numberOf(term, states, chosen);
    const { low, aim, high, half } = term.window;
    const isIn = value >= low - 1e-9 && value <= high + 1e-9;
    if (!isIn) inWindow = false;
    if (Number.isNaN(value) || (term.hard && !isIn)) allowed = false;
    distance += ((value - aim) / half) ** 2;
  }
  const effort = chosen.reduce((sum, state, a) => sum + (states[a]?.effort[state] ?? Number.NaN), 0);
  return { distance, inWindow, allowed, effort };
}

/** Every choice of one state each. */
export function everyChoice(states: readonly StateSpace[]): number[][] {
  let all: number[][] = [[]];
  for (const { count } of states) {
    const each = Array.from({ length: count }, (_, state) => state);
    all = all.flatMap((chosen) => each.map((state) => [...chosen, state]));
  }
  return all;
}
