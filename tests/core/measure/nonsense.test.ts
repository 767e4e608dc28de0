/** What a measuring function is given that is no figure: an InputError that names it, and never NaN. */
import { describe, expect, it } from 'vitest';
import * as core from '../../../core/index.ts';

const { InputError } = core;
type Call = (...given: readonly unknown[]) => unknown;
const strings = {
  wheels: { LF: { ahead: 102, behind: 100 }, LR: { ahead: 101, behind: 100 } },
  ...{ diameter: 400, track: { front: 1500, rear: 1490 }, wheelbase: { left: 2600 } },
};
const rough = {
  distances: { front: 1520, rear: 1500, diameter: 600 },
  ...{ aim: 0, lead: 1.5, arm: 100, rods: 'behind', wheelOff: 8, ratio: 16 },
};
const end = (turned: number, camber: number, roll: number) => ({ turned, camber, roll });
/** Each with what it takes; the scatter of its instrument is left to what is usual. */
const CALLS: Readonly<Record<string, readonly [Call, ...unknown[]]>> = {
  casterFromSweep: [core.casterFromSweep as Call, { camberOut: 1.6, camberIn: -1.1, steer: 20, sai: 12 }],
  saiFromSweep: [
    core.saiFromSweep as Call,
    { rollOut: 4, rollIn: -4, steer: 20, camberOut: 1.6, camberIn: -1.1, caster: 4 },
  ],
  axisFromSweep: [core.axisFromSweep as Call, end(20, 1.6, 4), end(-18, -1.1, -4)],
  toeFromRimDistances: [core.toeFromRimDistances as Call, { front: 1500, rear: 1503, diameter: 573 }],
  totalToeAcross: [core.totalToeAcross as Call, { front: 1500, rear: 1503, diameter: 573 }],
  toeFromStrings: [core.toeFromStrings as Call, strings],
  camberFromPlumb: [core.camberFromPlumb as Call, { above: 100, below: 96, diameter: 400 }],
  roughToe: [core.roughToe as Call, rough],
  asideFromGaps: [core.asideFromGaps as Call, { left: 104, right: 96 }],
  frameAngleFrom: [core.frameAngleFrom as Call, { front: 400, rear: 430, between: 1000 }],
  heightsOff: [core.heightsOff as Call, { LF: 350, RF: 358 }, { LF: 362, RF: 362 }],
  toeFromSideSlip: [core.toeFromSideSlip as Call, 3],
  sideSlipOf: [core.sideSlipOf as Call, 0.3],
  casterAgainstFrame: [core.casterAgainstFrame as Call, 3, 1],
  casterToMeasure: [core.casterToMeasure as Call, 3, 1],
  toeToLength: [core.toeToLength as Call, 0.3, 573],
  lengthToToe: [core.lengthToToe as Call, 3, 573],
  withoutRunOut: [core.withoutRunOut as Call, [-0.5, -0.2, -0.9, -1.2]],
  turnedRound: [core.turnedRound as Call, [1.2, 1.22], [-0.4, -0.41]],
  repeatability: [core.repeatability as Call, [[1612, 1613, 1612.5]]],
};

const BAD = [Number.NaN, Number.POSITIVE_INFINITY, '20', null, {}, [], true] as const;

/** The arguments with one thing in them replaced, for everything that is a figure or holds some. */
function* spoilt(given: unknown): Generator<unknown> {
  yield* BAD.filter((bad) => !(Array.isArray(given) && Array.isArray(bad)));
  if (typeof given !== 'object' || given === null) return;
  for (const [key, value] of Object.entries(given)) {
    for (const bad of spoilt(value)) {
      yield Array.isArray(given) ? given.map((one, i) => (String(i) === key ? bad : one)) : { ...given, [key]: bad };
    }
  }
}

const hasNaN = (answer: unknown): boolean =>
  typeof answer === 'object' && answer !== null
    ? Object.values(answer).some(hasNaN)
    : typeof answer === 'number' && !Number.isFinite(answer);

describe.each(Object.entries(CALLS))('%s', (_, [call, ...given]) => {
  it('answers with its usual scatter, and no NaN', () => {
    const answer = call(...given);
    expect(hasNaN(answer)).toBe(false);
    expect(JSON.stringify(answer)).toMatch(/\d/);
  });

  it('refuses what is none by name', () => {
    const taken: string[] = [];
    let refused = 0;
    given.forEach((own, i) => {
      for (const bad of [undefined, ...spoilt(own)]) {
        try {
          const answer = call(...given.map((one, n) => (n === i ? bad : one)));
          if (hasNaN(answer)) taken.push(`${JSON.stringify(bad)} gives ${JSON.stringify(answer)}`);
        } catch (error) {
          if (!(error instanceof InputError)) taken.push(`${JSON.stringify(bad)}: ${error}`);
          else {
            refused += 1;
            expect(error.message).toMatch(/^\S.* is not allowed; allowed: \S/);
          }
        }
      }
    });
    expect(taken).toEqual([]);
    expect(refused).toBeGreaterThanOrEqual(given.length * 5);
  });
});

describe('a scatter that is none', () => {
  it.each([-1, Number.NaN, '0.5', Number.POSITIVE_INFINITY])('%s is refused', (sd) => {
    const tape = sd as number;
    expect(() => core.totalToeAcross({ front: 1500, rear: 1503, diameter: 573 }, tape)).toThrow('front.sd');
    expect(() => core.withoutRunOut([1, 2], tape)).toThrow('sd: ');
    expect(() => core.toeFromSideSlip(1, tape)).toThrow('slip.sd');
  });
});

describe('rods on no side of the axle', () => {
  it('are not taken for one: the sign of every turn hangs on it', () => {
    const wrong = { ...rough, rods: 'front' } as unknown as core.RoughToe;
    expect(() => core.roughToe(wrong)).toThrow('rods: "front" is not allowed');
  });
});

describe('a string that stands anyhow', () => {
  it('is not found from one wheel: it would pass for parallel', () => {
    const { LF } = strings.wheels;
    expect(() => core.toeFromStrings({ ...strings, wheels: { LF } })).toThrow('wheels.LR: nothing is not allowed');
  });
});
