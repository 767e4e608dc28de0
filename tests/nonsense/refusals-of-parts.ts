/** What is refused of adjusters, suspensions, questions about them, and of what is typed. */
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import { chartOf } from '../../core/ask/chart-of.ts';
import { planMoves } from '../../core/ask/plan-moves.ts';
import { planRequest } from '../../core/ask/plan-request.ts';
import { reachOf } from '../../core/ask/reach-of.ts';
import { heightEffect } from '../../core/ask/side-effects.ts';
import { solveAxle } from '../../core/ask/solve-axle.ts';
import { solveCorner } from '../../core/ask/solve-corner.ts';
import { validateAdjusters } from '../../core/check/adjusters.ts';
import { validateAxle, validateCar } from '../../core/check/car.ts';
import { validateSuspension } from '../../core/check/suspension.ts';
import type { Adjuster, Axle, PlanRequest, Suspension } from '../../core/contract.ts';
import {
  asideFromGaps,
  axisFromSweep,
  camberFromPlumb,
  casterAgainstFrame,
  casterFromSweep,
  floorSlope,
  frameAngleFrom,
  heightsOff,
  repeatability,
  roughToe,
  saiFromSweep,
  sideSlipOf,
  toeFromRimDistances,
  toeFromSideSlip,
  toeFromStrings,
  totalToeAcross,
  turnedRound,
  whatIsBent,
  withoutRunOut,
} from '../../core/index.ts';
import type { InputError } from '../../core/input-error.ts';
import { startersFor } from '../../core/starters/catalogue.ts';
import { suspensionFromStarter } from '../../core/starters/starter.ts';
import { suspensionKinds } from '../../core/suspension/catalogue.ts';
import { tapeLayouts } from '../../core/suspension/tape/catalogue.ts';
import { pointsFromTape } from '../../core/suspension/tape/points-from-tape.ts';
import { formatAngle } from '../../core/units/format.ts';
import { formatLength, parseLength } from '../../core/units/length.ts';
import { parseAngle } from '../../core/units/parse.ts';
import { parsePlusMinus } from '../../core/units/plus-minus.ts';
import { shimStack } from '../../core/units/shim-stack.ts';
import { lengthToToe, toeToLength } from '../../core/units/toe.ts';
import { carFile } from '../core/records/fixture.ts';
import { LAYOUTS, randomSuspension, rod, shims, stream } from '../tools/random-cars.ts';
import { FITTING, sampleAdjuster } from '../tools/samples.ts';
import { refusalOf, refusalsOf } from '../tools/spoil.ts';

/** All of them. */
export const refusalsOfParts = (): InputError[] => [
  ...ofAdjusters(),
  ...ofSuspensions(),
  ...ofQuestions(planRequest(carFile('tarn-gt.json'))),
  ...ofUnits(),
  ...ofTools(),
];

/** Fields of every adjuster that no sample has. */
const BESIDE = { name: 'x', torque: 'x', effort: 5, tolerance: 1 };

function ofAdjusters(): InputError[] {
  return FITTING.flatMap(({ suspension: kind, adjuster }, seed) => {
    const random = stream(seed + 1);
    const suspension = validateSuspension(randomSuspension(random, kind));
    const sample = sampleAdjuster(random, adjuster, suspension);
    const asked = adjusterKinds[adjuster]?.fields.map(({ name }) => name.split('.')[0] ?? name) ?? [];
    const absent = Object.fromEntries(asked.filter((name) => !(name in sample)).map((name) => [name, undefined]));
    return [
      ...refusalsOf({ ...absent, ...BESIDE, ...sample }, (bad) => validateAdjusters([bad], suspension)),
      ...refusalsOf([sample, sample], (bad) => validateAdjusters(bad, suspension)),
      // Where it does not fit.
      ...Object.keys(suspensionKinds).flatMap((other) =>
        refusalOf(() => validateAdjusters([sample], validateSuspension(randomSuspension(random, other)))),
      ),
    ];
  }).concat(ofPacks());
}

function ofPacks(): InputError[] {
  const suspension = randomSuspension(stream(1), 'double-wishbone');
  const pack = shims(stream(1), 'pack', 'upperFront');
  const both = (more: object): Adjuster[] => [
    { ...pack, ...more },
    { ...pack, id: 'other' },
  ];
  return [
    { pair: { with: 'nobody', most: 1 } },
    { pair: { with: 'other', most: -1 } },
    { pair: { with: '', most: 1 } },
    { pair: 1 },
    { sizes: [0.0101, 0.0103, 0.0107], max: 90 },
    { kind: 'clamp-bolt', step: 1, range: [-1, 1], reference: 0 },
    { kind: 'clamp-bolt', step: 1, range: [-1, 1], reference: 0, eccentricity: 2, spacing: 1 },
    { kind: 'threaded-rod', links: ['x'], lead: 1, stepTurns: 0.5, range: [-1, 1], reference: 0 },
    { kind: 'threaded-rod', links: ['tieInner'], lead: 1, stepTurns: 9, range: [1, 2], reference: 1 },
    { kind: 'indexed-cam', positions: [{ label: 'A', offset: [0, 0, 0] }], reference: 'B' },
    { kind: 'slide', step: 1e-9, range: [-1, 1], reference: 0 },
    { kind: 'eccentric-cam', eccentricity: 4, marks: 24, stepMarks: 1e-6, reference: 0 },
  ].flatMap((more) => refusalOf(() => validateAdjusters(both(more), suspension)));
}

const WEDGE = { id: 'wedge', kind: 'axle-wedge', degrees: [1, 2], reference: 0, tolerance: 0.1 };

function ofSuspensions(): InputError[] {
  const random = stream(5);
  const beam: Axle = { suspension: randomSuspension(random, 'beam-front'), adjusters: [], steered: true };
  const axle = (kind: string, right: string): Axle => ({
    suspension: randomSuspension(random, kind),
    rightSuspension: randomSuspension(random, right),
    adjusters: [],
    steered: false,
  });
  const usual = suspensionFromStarter(startersFor('double-wishbone', 'front')[0]!, 'front');
  const withRod = { kind: 'beam-linked', points: LAYOUTS['beam-linked']!, camber: 0, toe: 0 };
  return [
    ...Object.keys(suspensionKinds).flatMap((kind) => {
      const own = { ...randomSuspension(random, kind), tolerance: 5 };
      const { points: _, ...taped } = { ...own, tape: { caster: 3 } };
      return [own, taped].flatMap((one) => refusalsOf(one, validateSuspension));
    }),
    ...Object.values(tapeLayouts).flatMap(({ kind, dimensions }) => {
      const all = Object.fromEntries(dimensions.map(({ name }) => [name, undefined]));
      const own = { ...('caster' in all && { caster: 3 }), camber: 0, toe: 0 };
      const tape = { ...own, track: { value: 1500, tolerance: 5 }, tie: 'ahead' };
      const taped = (bad: object) => pointsFromTape({ kind, ...own, ...bad });
      return refusalsOf({ ...all, ...tape, kind }, taped);
    }),
    ...[
      { upperFrontLength: 100, upperRearLength: 100, upperPivotSpacing: 250 },
      { lowerBallHeight: 200, lowerFrontHeight: 600 },
      { kind: 'strut', strutLowerInset: 300, strutLength: 150 },
      {},
    ].flatMap((tape) => refusalOf(() => pointsFromTape({ caster: 4, camber: 0, toe: 0, ...tape }))),
    ...refusalOf(() => pointsFromTape({})),
    ...refusalOf(() => pointsFromTape({ kind: 'five-link', camber: 0, toe: 0, link3Length: 100 })),
    ...[
      { upperPivotSpacing: 60, upperFrontHeight: 200, upperRearHeight: 600 },
      { nothing: 1 },
      { ballSpacing: { value: 300, tolerance: -1 } },
    ].flatMap((measured) =>
      refusalOf(() =>
        validateCar({
          ...{ id: 'c', label: 'c', wheel: {}, rear: beam },
          front: { suspension: { ...usual, measured }, adjusters: [], steered: true },
        }),
      ),
    ),
    ...refusalOf(() => validateAxle(axle('beam-linked', 'beam-rear'))),
    ...refusalOf(() => validateAxle({ ...axle('beam-linked', 'beam-linked'), rightSuspension: withRod })),
    ...refusalsOf({ adjusters: [WEDGE], rightAdjusters: [WEDGE] }, (bad) => validateAxle(Object.assign({}, beam, bad))),
    ...refusalOf(() => validateAxle({ ...beam, adjusters: [WEDGE], rightAdjusters: [] })),
    ...refusalOf(() => validateAxle({ ...beam, rightAdjusters: [WEDGE] })),
  ];
}

function ofQuestions(request: PlanRequest): InputError[] {
  const random = stream(7);
  const of = (kind: string): Suspension => randomSuspension(random, kind);
  const wishbone = of('double-wishbone');
  const pack = shims(random, 'pack', 'upperFront');
  const loose = { ...wishbone, points: { ...wishbone.points, tieOuter: wishbone.points.lowerBall! } };
  return [
    ...refusalsOf({ travel: 1, rack: 1 }, (bad) => solveCorner(wishbone, [], {}, bad)),
    ...refusalOf(() => solveCorner(of('five-link'), [], {}, { rack: 1 })),
    ...refusalsOf({ pack: 0 }, (bad) => solveCorner(wishbone, [pack], bad)),
    ...refusalOf(() => solveCorner(parallel(wishbone), [], {})),
    ...refusalOf(() => solveCorner(loose, [], {})),
    ...refusalOf(() => heightEffect(wishbone, [], {}, 1e4)),
    ...refusalsOf({ front: 1, rear: 1 }, (bad) => heightEffect(request.car, {}, bad)),
    ...refusalsOf({ wheelbase: 2600 }, (bad) => heightEffect(Object.assign({}, request.car, bad), {}, {})),
    ...refusalOf(() => chartOf(wishbone, [pack], {}, 'pack', 'other')),
    ...refusalOf(() => solveAxle({ suspension: wishbone, adjusters: [], steered: true })),
    ...refusalsOf({ left: {}, right: {} }, (bad) =>
      solveAxle({ suspension: of('beam-linked'), adjusters: [], steered: false }, bad),
    ),
    ...refusalOf(() => reachOf(request, 'FL' as never)),
    ...refusalOf(() => reachOf({ ...request, reading: {} }, 'LF')),
    ...refusalOf(() => reachOf(request, 'LF', { LF: { 'upper-front': 60 } })),
    ...ofPlans(request),
  ];
}

/** Both ends of every arm on one line: the wheel may go along it. */
function parallel({ points, ...rest }: Suspension): Suspension {
  const flat = Object.entries(points).map(
    ([name, [x, y, z]]) => [name, [name.startsWith('tie') ? x : 0, y, z]] as const,
  );
  return { ...rest, points: Object.fromEntries(flat) as Suspension['points'] };
}

function ofPlans(request: PlanRequest): InputError[] {
  const { car } = request;
  const fine = (id: string, link: string) => rod(id, link, 60, 1 / 12);
  const links = ['upperFront', 'upperRear', 'lowerFront', 'lowerRear'];
  const many = { ...car, front: { ...car.front, adjusters: links.map((link) => fine(link, link)) } };
  const far = { ...car, front: { ...car.front, adjusters: [{ ...rod('r', 'upperFront', 60), lead: 20 }] } };
  return [
    ...refusalOf(() => planMoves({ ...request, car: many, settings: {} })),
    ...refusalOf(() => planMoves({ ...request, car: far, settings: { LF: { r: 60 } } })),
  ];
}

function ofTools(): InputError[] {
  const end = { turned: 20, camber: 1, roll: 2 };
  const none = { camber: 0, turned: 0, roll: 0 };
  const across = { front: 1500, rear: 1503, diameter: 600 };
  const wheel = { ahead: 150, behind: 151, hub: 150 };
  const base = { diameter: 400, track: { front: 1500, rear: 1490 }, wheelbase: { left: 2600, right: 2600 } };
  const rough = { distances: across, aim: 0, lead: 1.5, arm: 100, wheelOff: 3, ratio: 16 };
  const numbers = <T extends object>(good: T, work: (bad: T) => unknown): InputError[] =>
    Object.keys(good).flatMap((key) =>
      [undefined, Number.NaN, -1e6, 1e6].flatMap((bad) => refusalOf(() => work({ ...good, [key]: bad }))),
    );
  return [
    ...numbers(end, (bad) => axisFromSweep(bad, { ...end, turned: -20 }, none)),
    ...refusalOf(() => axisFromSweep(end, end, none)),
    ...refusalOf(() => axisFromSweep(end, { turned: -20, camber: 1 }, none, { value: 90, sd: 0 })),
    ...numbers(across, (bad) => totalToeAcross(bad, 1)),
    ...refusalOf(() => totalToeAcross({ ...across, diameter: 17 }, 1)),
    ...numbers(wheel, (LF) => toeFromStrings({ ...base, wheels: { LF } }, { rule: 1, tape: 1 })),
    ...numbers(base.track, (track) => toeFromStrings({ ...base, track, wheels: { LF: wheel } }, { rule: 1, tape: 1 })),
    ...numbers(base.wheelbase, (wheelbase) =>
      toeFromStrings({ ...base, wheelbase, wheels: { LF: wheel } }, { rule: 1, tape: 1 }),
    ),
    ...refusalOf(() => toeFromStrings({ diameter: 400, wheels: {} }, { rule: 1, tape: 1 })),
    ...refusalOf(() =>
      toeFromStrings({ diameter: 400, track: base.track, wheels: { LF: wheel } }, { rule: 1, tape: 1 }),
    ),
    ...numbers(rough, (bad) => roughToe({ ...bad, distances: across, rods: 'ahead' }, { tape: 1 })),
    ...numbers({ above: 100, below: 101, diameter: 400 }, (bad) => camberFromPlumb(bad, 1)),
    ...refusalOf(() => camberFromPlumb({ above: 900, below: 1, diameter: 400 }, 1)),
    ...refusalOf(() => floorSlope(900, 1500)),
    ...refusalOf(() => floorSlope(9, 15)),
    ...[[], [1, 5], [1000]].flatMap((readings) => refusalOf(() => turnedRound(readings, [0]))),
    ...[[], [[1]], [[1, 99]], [[1, Number.NaN]]].flatMap((things) => refusalOf(() => repeatability(things, 5))),
    ...[
      [1, 2, 3],
      [1, Number.NaN],
    ].flatMap((readings) => refusalOf(() => withoutRunOut(readings, 0.1))),
    ...numbers({ left: 100, right: 101 }, (bad) => asideFromGaps(bad, 1)),
    ...numbers({ front: 400, rear: 410, between: 1000 }, (bad) => frameAngleFrom(bad, 1)),
    ...numbers({ LF: 300, RF: 300 }, (bad) => heightsOff(bad, bad, 1)),
    ...refusalOf(() => toeFromSideSlip(99, 1)),
    ...refusalOf(() => sideSlipOf(99)),
    ...refusalOf(() => whatIsBent({}, {}, { setback: 999 })),
    ...refusalOf(() => whatIsBent({}, {}, { outer: { left: 99, right: 18 } })),
    ...refusalsOf({ low: 11, high: 13 }, (sai) => whatIsBent({}, {}, { sai })),
  ];
}

function ofUnits(): InputError[] {
  return [
    ...['', 'x', '91', "1°60'"].flatMap((text) => refusalOf(() => parseAngle(text))),
    ...refusalOf(() => parsePlusMinus('1 ± 0', Number)),
    ...refusalOf(() => parseAngle('1.30', { mode: 'degrees-minutes' })),
    ...['', 'x', '3/16'].flatMap((text) => refusalOf(() => parseLength(text))),
    ...refusalOf(() => formatAngle(Number.NaN)),
    ...refusalOf(() => formatLength(Number.NaN)),
    ...refusalOf(() => toeToLength(1, 50)),
    ...refusalOf(() => toeToLength(Number.NaN, 500)),
    ...refusalOf(() => lengthToToe(501.23456, 500)),
    ...refusalOf(() => lengthToToe(501, 500.98765)),
    ...refusalsOf([1, 1.5], (bad) => shimStack(1, bad)),
    ...refusalOf(() => shimStack(100, [0.100001, 0.100002])),
    ...refusalOf(() => shimStack(-1, [1])),
    ...refusalOf(() => shimStack(1, [1], { max: -1 })),
    ...refusalOf(() => shimStack(1, [1], { maxCount: Number.NaN })),
    ...refusalsOf({ camberOut: 1, camberIn: -1, steer: 20, sai: 10 }, (bad: object) =>
      casterFromSweep({ camberOut: 1, camberIn: -1, steer: 20, ...bad }),
    ),
    ...refusalOf(() => saiFromSweep({ rollOut: 50, rollIn: 1, steer: 20 })),
    ...refusalOf(() => toeFromRimDistances({ front: 0, rear: 1500, diameter: 500 })),
    ...refusalOf(() => toeFromRimDistances({ front: 900, rear: 1500, diameter: 500 })),
    ...refusalOf(() => casterAgainstFrame(100, 0)),
  ];
}
