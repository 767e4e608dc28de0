/** One job is one: its moves stand together, carry one mark and say what each of them is. */
import { describe, expect, it } from 'vitest';
import { jobOf, jobsOf } from '../../../../core/adjuster/job.ts';
import type { Adjuster, Axle, Car, Plan, PlanRequest, Reading, Suspension } from '../../../../core/contract.ts';
import { planChoices, planMoves, predictReading } from '../../../../core/index.ts';
import { startersFor } from '../../../../core/starters/catalogue.ts';
import { type Starter, suspensionFromStarter } from '../../../../core/starters/starter.ts';
import { wordsOf } from '../../../../core/words/catalogue.ts';
import { sentence } from '../../../tools/jobs.ts';
import { rod, shims, stream } from '../../../tools/random-cars.ts';

const starter = (kind: string, axle: 'front' | 'rear'): Suspension =>
  suspensionFromStarter(startersFor(kind, axle)[0] as Starter, axle);
const bare: Axle = {
  suspension: { kind: 'beam-rear', points: { wheelCentre: [0, 770, 320] }, camber: 0, toe: 0 },
  adjusters: [],
  steered: false,
};
const carOf = (front: Axle, rear: Axle): Car => ({ id: 'a', label: 'a', wheel: { rimDiameter: 420 }, front, rear });
const about = (aim: number, half: number) => ({ low: aim - half, aim, high: aim + half });
const list = ({ moves }: Plan): string[] => moves.map(({ corner, adjuster }) => `${corner} ${adjuster}`);
const marks = ({ moves }: Plan): number[] => jobsOf(moves).map((job) => job.length);

describe('both packs of an arm', () => {
  const pack = (id: string, at: string): Adjuster => ({
    ...shims(stream(1), id, at),
    ...{ direction: [0, 1, 0], sizes: [0.5, 1], max: 8, reference: 3 },
  });
  const front: Axle = {
    suspension: starter('double-wishbone', 'front'),
    // Typed in an order that is not that of the arm.
    adjusters: [pack('behind', 'upperRear'), rod('tie', 'tieInner', 3, 0.25), pack('ahead', 'upperFront')],
    steered: true,
  };
  const car = carOf(front, bare);
  const wheel = { camber: 0.2, caster: 4.4, toe: 0.1 };
  const asked: PlanRequest = {
    car,
    reading: { LF: wheel, RF: { ...wheel, caster: 5.4 } },
    spec: { front: { camber: about(-0.3, 0.15), caster: about(4.9, 0.15), toe: about(0.05, 0.05) } },
    settings: {},
  };
  const plan = planMoves(asked);

  it('stand together, the front one first, and are one of the plan’s jobs', () => {
    expect(list(plan)).toEqual(['LF ahead', 'LF behind', 'RF ahead', 'RF behind', 'LF tie', 'RF tie']);
    expect(marks(plan)).toEqual([2, 2, 1, 1]);
    expect(plan.moves.map(({ job }) => job?.end)).toEqual(['front', 'rear', 'front', 'rear', undefined, undefined]);
    const closest = planChoices(asked).find(({ styles }) => styles.includes('closest'));
    expect([closest?.moves, closest?.jobs]).toEqual([6, 4]);
  });

  it('are said in one sentence, each pack by its place', () => {
    const said = sentence(jobsOf(plan.moves)[0]!);
    expect(said).toMatch(/^Upper arm: .*front pack .* mm.*; rear pack .*\.$/);
    expect(said.match(/Support|support/g)).toHaveLength(1);
  });

  it('read after each of them what a car reads that stands so', () => {
    let now: PlanRequest['settings'] = {};
    for (const { corner, adjuster, to, expectAfter } of plan.moves) {
      now = { ...now, [corner]: { ...now[corner], [adjuster]: to } };
      expect(expectAfter).toEqual(predictReading(car, asked.reading, {}, now));
    }
  });

  it('one that is moved alone has no mark, nor has a pack at a joint', () => {
    const alone = planMoves({ ...asked, locked: [{ corner: 'LF', adjuster: 'behind' }] });
    expect(alone.moves.find(({ adjuster, corner }) => corner === 'LF' && adjuster === 'ahead')?.job).toBeUndefined();
    const joint = carOf({ ...front, adjusters: [pack('joint', 'upperBall')] }, bare);
    expect(jobOf(joint, { corner: 'LF', adjuster: 'joint' })).toBeUndefined();
  });
});

describe('wedges under both springs', () => {
  const front: Axle = {
    suspension: starter('beam-front', 'front'),
    adjusters: [
      rod('tie', 'tieInner', 3, 0.25),
      { id: 'wedge', kind: 'axle-wedge', name: 'Spring wedge', degrees: [1, 2], reference: 0 },
    ],
    steered: true,
  };
  const car = carOf(front, bare);
  const wheel = { camber: 0, caster: 2, toe: 0.3 };
  const reading = { LF: wheel, RF: wheel };
  const spec = { front: { caster: about(4, 0.4), toe: about(0.05, 0.06) } };
  const plan = planMoves({ car, reading, spec, settings: {} });

  it('are one job with one sentence that names both sides and the thick end', () => {
    expect(list(plan)).toEqual(['LF wedge', 'RF wedge', 'LF tie', 'RF tie']);
    expect(marks(plan)).toEqual([2, 1, 1]);
    const said = sentence(jobsOf(plan.moves)[0]!);
    expect(said).toContain('on both sides, thick end to the rear');
    expect(said.match(/on both sides/g)).toHaveLength(1);
  });

  it('have no reading with one side in and the other not', () => {
    const both = predictReading(car, reading, {}, { LF: { wedge: 2 }, RF: { wedge: 2 } });
    expect(plan.moves.slice(0, 2).map(({ expectAfter }) => expectAfter)).toEqual([both, both]);
    expect([both.LF?.caster, both.RF?.caster]).toEqual([4, 4]);
  });
});

describe('the rods of an axle on links', () => {
  const rods = ['lower', 'upper'].map((name) => ({
    ...rod(name, `${name}Body`, 3, 0.5),
    name: `${name} link`,
    lead: 1.5,
  }));
  const car = carOf(bare, { suspension: starter('beam-linked', 'rear'), adjusters: rods, steered: false });
  const wheel = { camber: -0.4, toe: 0.05 };

  function goesTo(reading: Reading, settings: PlanRequest['settings']) {
    const { LR, RR, rear } = predictReading(car, reading, {}, settings);
    const thrustAngle = ((LR?.toe ?? 0) - (RR?.toe ?? 0)) / 2;
    return { thrustAngle, pinion: rear?.pinionChange ?? 0, aside: rear?.lateralChange ?? 0 };
  }

  it('left and right are one job, whatever else is turned', () => {
    const reading = { LR: wheel, RR: wheel };
    const settings = { LR: { lower: 1, upper: -1 }, RR: { lower: -1, upper: -2 } };
    const { thrustAngle: thrust, pinion, aside } = goesTo(reading, settings);
    const rear = {
      thrustAngle: about(thrust, 0.02),
      pinionChange: about(pinion, 0.1),
      lateralChange: about(aside, 0.5),
    };
    const plan = planMoves({ car, reading, spec: { rear }, settings: {} });
    expect(plan.inWindow).toBe(true);
    expect(new Set(list(plan))).toEqual(new Set(['LR lower', 'RR lower', 'LR upper', 'RR upper']));
    expect(marks(plan)).toEqual([2, 2]);
    for (const [a, b] of jobsOf(plan.moves))
      expect([a?.corner, b?.corner, b?.adjuster]).toEqual(['LR', 'RR', a?.adjuster]);
    expect(plan.moves.at(-1)?.expectAfter).toEqual(plan.predicted);
  });

  it('say how far left and right, in flats', () => {
    const turn = (turns: number) => ({ act: 'turn-rod', turns, mm: 1.5 * turns }) as const;
    const said = wordsOf().job([
      { end: 'left', act: turn(0.5) },
      { end: 'right', act: turn(-0.5) },
    ]);
    expect(said).toContain('left 3 flats longer (0.75 mm), right 3 flats shorter (0.75 mm)');
  });

  it('a tie rod of a wheel of its own is a job of its own', () => {
    const tie = { suspension: starter('strut', 'front'), adjusters: [rod('tie', 'tieInner')], steered: true };
    expect(jobOf(carOf(tie, bare), { corner: 'LF', adjuster: 'tie' })).toBeUndefined();
  });
});
