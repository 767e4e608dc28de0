/**
 * Kinds that nobody here knows, added as a stranger would: one object each in the catalogues and nothing else. What they
 * do is what kinds that are known do in other words, so that every answer about them is known as well.
 */
import * as v from 'valibot';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { base, number, positive, range, text } from '../../core/adjuster/fields.ts';
import type { AdjusterKind } from '../../core/adjuster/kind.ts';
import { multiples, onwards, within } from '../../core/adjuster/steps.ts';
import type { Adjuster, Axle, Car, Move, PlanRequest, Suspension } from '../../core/contract.ts';
import {
  adjusterEffects,
  adjusterKinds,
  chartPair,
  planChoices,
  planMoves,
  type SuspensionKind,
  suspensionKinds,
  whatWouldFree,
} from '../../core/index.ts';
import { randomReading, randomSpec } from '../tools/brute-force.ts';
import { randomSuspension, stream } from '../tools/random-cars.ts';
import { sampleAdjuster } from '../tools/samples.ts';

/** Two threads of two pitches on one body: its link grows by both. The same as a rod whose lead is their sum. */
const turnbuckle: AdjusterKind = {
  kind: 'turnbuckle',
  name: 'Turnbuckle',
  schema: v.object({
    ...base('turnbuckle'),
    link: text(),
    pitches: v.tuple([positive(10, 'mm'), positive(10, 'mm')]),
    step: positive(10, 'turns'),
    range: range(60, 'turns'),
    reference: number(-60, 60, 'turns'),
  }),
  touches: ({ link = 'inner1' }) => ({ links: [link] }),
  positions: ({ step, range: [low, high] }) => multiples(step, low, high),
  allowed: ({ range: [low, high] }) => ({ is: 'place', on: 'turns', low, high }),
  accepts: ({ range: [low, high] }, position) => within(position, low, high),
  effect: ({ link, pitches: [a, b] }, turns) => ({ lengthen: { [link]: (turns as number) * (a + b) } }),
  act: ({ pitches: [a, b] }, from, to) => {
    const turns = (to as number) - (from as number);
    return { act: 'turn-rod', turns, mm: turns * (a + b) };
  },
  place: (_, turns) => ({ as: 'turns', turns: turns as number }),
  step: ({ reference }) => ({
    from: reference,
    to: (reference as number) + 1,
    said: { step: 'longer', turns: 1 },
  }),
  fields: [],
  start: {},
  sample: { adjuster: { link: 'inner1', pitches: [1, 0.5], step: 0.25, range: [-2, 2], reference: 0 }, from: 0, to: 1 },
  extension: {
    unit: 'turns',
    takes: ['shorter-rod', 'longer-rod'],
    beyond: (one, end) => onwards(turnbuckle.positions(one), end, Math.max(one.step, 0.25), 6),
  },
  tolerance: { usual: 0.05, unit: 'turns' },
  effort: 4,
};

/** A swinging arm under other names. */
const swinging: SuspensionKind = {
  kind: 'swinging-arm',
  name: 'Swinging arm',
  points: ['near', 'far', 'wheelCentre'],
  seats: ['near'],
  lines: [['far', 'near']],
  height: true,
};

const catalogues = [
  [adjusterKinds, turnbuckle],
  [suspensionKinds, swinging],
] as [Record<string, unknown>, { readonly kind: string }][];
beforeAll(() => {
  for (const [catalogue, kind] of catalogues) catalogue[kind.kind] = kind;
});
afterAll(() => {
  for (const [catalogue, kind] of catalogues) delete catalogue[kind.kind];
});

const random = stream(77);
const links = randomSuspension(random, 'five-link');
const fields = { step: 0.25, range: [-1.5, 1.5], reference: 0 };
const buckles = ['inner1', 'inner5'].map(
  (link): Adjuster => ({ id: link, name: link, kind: 'turnbuckle', link, pitches: [1, 0.75], ...fields }),
);
const rods = ['inner1', 'inner5'].map((link): Adjuster => {
  const { step: stepTurns, ...rest } = fields;
  return { id: link, name: link, kind: 'threaded-rod', links: [link], lead: 1.75, stepTurns, ...rest };
});
const arm = randomSuspension(random, 'trailing-arm');
const same: Suspension = {
  ...arm,
  kind: 'swinging-arm',
  points: {
    near: arm.points.pivotInner!,
    far: arm.points.pivotOuter!,
    wheelCentre: arm.points.wheelCentre!,
  },
};
const cam = sampleAdjuster(random, 'eccentric-cam', { ...arm, points: { pivotOuter: arm.points.pivotOuter! } }, 'cam');
const carOf = (front: Axle, rear: Axle): Car => ({ id: 'a', label: 'a', wheel: { rimDiameter: 420 }, front, rear });
const rear = (suspension: Suspension, adjusters: readonly Adjuster[]): Axle => ({
  suspension,
  adjusters,
  steered: false,
});

const known = carOf(rear(arm, [{ ...cam, at: 'pivotOuter' }]), rear(links, rods));
const strange = carOf(rear(same, [{ ...cam, at: 'far' }]), rear(links, buckles));
const asked = (car: Car, seed: number): PlanRequest => {
  const draw = stream(seed);
  const spec = { front: randomSpec(draw, false), rear: randomSpec(draw, false) };
  return { car, spec, reading: randomReading(draw, 0.6), settings: {} };
};

/** A move of the stranger's point is the same of the one that it stands for. */
const underKnownNames = ({ act, ...move }: Move) => ({
  ...move,
  act: 'at' in act && act.at === 'far' ? { ...act, at: 'pivotOuter' } : act,
});

describe('kinds that a stranger adds', () => {
  it.each([1, 2, 3, 4])('are planned as what they are the same as: seed %d', (seed) => {
    for (const style of ['closest', 'least-work', 'surest'] as const) {
      const [a, b] = [known, strange].map((car) => planMoves({ ...asked(car, seed), style }));
      expect(b!.positions).toEqual(a!.positions);
      expect(b!.moves.map(underKnownNames)).toEqual(a!.moves);
      expect(b!.predicted).toEqual(a!.predicted);
      expect(b!.chance).toBeCloseTo(a!.chance, 2);
    }
    expect(planChoices(asked(strange, seed))).toHaveLength(planChoices(asked(known, seed)).length);
  });

  it('are told how much further they would have to go', () => {
    const out = { rear: { toe: { low: 4, high: 4.2 } } };
    const [a, b] = [known, strange].map((car) =>
      whatWouldFree({ ...asked(car, 5), spec: out, reading: { LR: { camber: -1, toe: 0 } } }),
    );
    expect(a![0]?.ways.length).toBeGreaterThan(0);
    expect(b).toEqual(a);
  });

  it('are told of step by step, and a chart is not about them where they are rods', () => {
    const [a, b] = [rods, buckles].map((fitted) => adjusterEffects(links, fitted));
    expect(b).toEqual(a);
    const cams = ['c1', 'c2'].map((id) => ({ ...cam, id, at: 'inner2' }));
    expect(chartPair(rear(links, [...buckles, ...cams]))).toEqual(['c1', 'c2']);
  });
});
