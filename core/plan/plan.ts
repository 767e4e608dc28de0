/**
 * From what was read and what is wanted to the moves: the states of every corner, the search over them, the working
 * order, what the rack shows after each move, how sure it is, and what is missing where the window is out of reach.
 */
import { adjusterKinds } from '../adjuster/catalogue.ts';
import type { AdjusterKind } from '../adjuster/kind.ts';
import { adjustersOf } from '../adjuster/of-corner.ts';
import {
  type Adjuster,
  type AdjusterRef,
  type CarSettings,
  CORNERS,
  type Corner,
  type Move,
  type Plan,
  type PlanRequest,
  type Position,
  type Reading,
  type Settings,
  type Shortfall,
  type WheelReading,
} from '../contract.ts';
import { sideEffectsOf, TRAVEL } from '../pose/side-effects.ts';
import { ANGLES, CAMBER, CASTER, TOE } from '../pose/unit.ts';
import { AXLES, axleOf, isAxle } from '../reading/axle-angles.ts';
import { outside } from '../reading/spec-terms.ts';
import { validatePlanRequest } from '../records/validate.ts';
import { samePosition } from './axis.ts';
import { type CarModel, compileCar, cornerOf, type Unit } from './car-model.ts';
import { chanceOf } from './chance.ts';
import { doubtsOf } from './doubt.ts';
import { type Role, rankOf, roleOf } from './order.ts';
import { place } from './placed.ts';
import { predictWith } from './predict.ts';
import { type Found, search } from './search.ts';
import { type Stand, UnitStates } from './states.ts';
import { distanceOf, groups, isIn, type Term, termsOf, termValue, tiesOf, tieTerms } from './terms.ts';
import { type Covariance, DEFAULT_GAUGE, Unknowns } from './unknowns.ts';

/**
 * The moves that bring the car into its windows: the global optimum over every position of every adjuster.
 *
 * `closest` minimises Σ((value − aim)/(half window))² over every spec given, with everything in its window if any
 * combination does that; `least-work` first the minutes of the adjusters moved, then the same sum. Where no
 * combination has everything in its window, the plan is the one with the least sum, in either style.
 * @param given readings, windows and angles in degrees, signs as in the contract; positions as their kinds have them
 * @throws InputError naming the field, the value and what is allowed
 */
export function planMoves(given: PlanRequest): Plan {
  const request = validatePlanRequest(given);
  const model = compileCar(request.car);
  const now = complete(request);
  const { terms, unmeasured } = termsOf(request.spec, request.reading);
  const { found, combinations } = best(request, model, now, terms);
  const positions = byCorner((corner) => found.get(corner) ?? now[corner]);
  const predicted = predictWith(model, request.reading, now, positions);
  // The terms carry the thrust angle's share themselves: they take each wheel's own angles.
  const own = predictWith(model, { ...request.reading, toeReference: 'centreline' }, now, positions);
  const angles = CORNERS.map((corner) => anglesOf(own[corner]));
  const values = new Map(terms.map((term) => [term, termValue(term, CORNERS, angles)]));
  const inWindow = terms.every((term) => isIn(term, values.get(term) as number));
  const gauge = request.gauge ?? DEFAULT_GAUGE;
  const covariances = model.map((unit) => {
    const at = (settings: Record<Corner, Settings>) => unit.corners.map((corner) => settings[corner]);
    return new Unknowns(unit, at(now), gauge).covariance(at(positions));
  });
  const moves = inOrder(request, model, now, positions);
  return {
    moves,
    positions,
    predicted,
    deviation: deviationsOf(model, predicted, covariances),
    inWindow,
    chance: chanceOf(terms, model, angles, covariances),
    distance: terms.reduce((sum, term) => sum + distanceOf(term, values.get(term) as number), 0),
    effort: moves.reduce((sum, move) => sum + minutesOf(adjusterOf(request, move)), 0),
    optimum: { proven: true, combinations },
    shortfall: terms.flatMap((term) => shortfallOf(request, term, values.get(term) as number, positions)),
    notes: notesOf(request, model, moves, now, positions),
    unmeasured: unmeasured.map(({ where, angle }) => ({ where, angle })),
  };
}

/** What a person must know beside the figures. */
function notesOf(
  request: PlanRequest,
  model: CarModel,
  moves: readonly Move[],
  now: Record<Corner, Settings>,
  then: Record<Corner, Settings>,
) {
  const byChart = moves.filter((move) => kindOfAdjuster(adjusterOf(request, move)).byChart);
  const names = [...new Set(byChart.map((move) => adjusterOf(request, move).name ?? move.adjuster))];
  const chart =
    names.length > 0
      ? [
          `${names.join(', ')}: the effect is the chart's; what it does to other angles is not known. Re-measure them all.`,
        ]
      : [];
  const moved = CORNERS.filter((corner) => moves.some((move) => move.corner === corner));
  const strains = model
    .filter(({ corners }) => corners.length > 1 && corners.some((corner) => moved.includes(corner)))
    .flatMap((axle) => strainNote(axle, now, then));
  return [...chart, ...moved.flatMap((corner) => bumpSteerNote(model, corner, now, then)), ...strains];
}

/** Degrees over 25 mm that bump steer may grow by before it is spoken of: trade practice, no source. */
const CLEARLY_WORSE = 0.1;

function bumpSteerNote(
  model: CarModel,
  corner: Corner,
  now: Record<Corner, Settings>,
  then: Record<Corner, Settings>,
): string[] {
  const most = (at: Record<Corner, Settings>): number =>
    Math.max(...(sideEffectsOf(cornerOf(model, corner, at), at[corner]).bumpSteer ?? [0]).map(Math.abs));
  const before = most(now);
  const after = most(then);
  if (after - before < CLEARLY_WORSE) return [];
  return [
    `${corner}: bump steer gets worse, from ${before.toFixed(2)}° to ${after.toFixed(2)}° of toe over ${TRAVEL} mm of travel.`,
  ];
}

/** mm that links on bushes may be stretched more than before without a word: trade practice, no source. */
const CLEARLY_STRAINED = 1;

function strainNote({ corners, model }: Unit, now: CarSettings, then: CarSettings): string[] {
  const strain = (at: CarSettings): number => {
    const pose = model.pose(corners.map((corner) => at[corner] ?? {}));
    return pose.reachable ? (pose.corners[0]?.verdict.residual ?? 0) : 0;
  };
  const [before, after] = [strain(now), strain(then)];
  if (after - before < CLEARLY_STRAINED) return [];
  return [
    `${corners.join(' and ')}: the links no longer agree; their bushes take up ${after.toFixed(1)} mm (before: ${before.toFixed(1)} mm).`,
  ];
}

const byCorner = <T>(make: (corner: Corner) => T): Record<Corner, T> =>
  Object.fromEntries(CORNERS.map((corner) => [corner, make(corner)])) as Record<Corner, T>;

/** Where every adjuster stands, those that were not given at their reference. */
export function complete({ car, settings }: Pick<PlanRequest, 'car' | 'settings'>): Record<Corner, Settings> {
  return byCorner((corner) =>
    Object.fromEntries(
      adjustersOf(car, corner).map(({ id, reference }) => [id, settings[corner]?.[id] ?? reference] as const),
    ),
  );
}

function anglesOf(wheel: WheelReading = {}): Float64Array {
  const angles = new Float64Array(3);
  angles[CAMBER] = wheel.camber ?? 0;
  angles[CASTER] = wheel.caster ?? 0;
  angles[TOE] = wheel.toe ?? 0;
  return angles;
}

function best(request: PlanRequest, model: CarModel, now: Record<Corner, Settings>, spec: readonly Term[]) {
  const isLocked = (corner: Corner, { id }: Adjuster): boolean =>
    (request.locked ?? []).some((ref) => ref.corner === corner && ref.adjuster === id);
  const terms = [...spec, ...tieTerms(request.car, now)];
  const found = new Map<Corner, Settings>();
  let combinations = 1;
  const stand = (corner: Corner): Stand => {
    const measured = request.reading[corner];
    const own = adjustersOf(request.car, corner);
    const movable = measured ? own.filter((adjuster) => !isLocked(corner, adjuster)) : [];
    return { measured: measured ?? {}, current: now[corner], movable, ties: tiesOf(request.car[axleOf(corner)]) };
  };
  const doubts = (units: readonly Unit[], states: readonly UnitStates[], own: readonly Term[]): Float64Array[] => {
    const placed = own.map((term) => place(term, states));
    return units.map((unit, u) => {
      const from = unit.corners.map((corner) => now[corner]);
      const unknowns = new Unknowns(unit, from, request.gauge ?? DEFAULT_GAUGE);
      return doubtsOf(states[u] as UnitStates, placed, u, unknowns, from);
    });
  };
  const problems = groups(terms, model).map((units) => {
    const states = units.map((unit) => new UnitStates(unit, unit.corners.map(stand)));
    for (const { count } of states) combinations *= count;
    const corners = units.flatMap((unit) => unit.corners);
    const own = terms.filter(({ parts }) => corners.includes(parts[0]?.corner as Corner));
    const extra = request.style === 'surest' ? { extra: doubts(units, states, own) } : {};
    return { states, terms: own, ...extra };
  });
  const solve = (inWindow: boolean): (Found | undefined)[] => {
    const effortFirst = inWindow && request.style === 'least-work';
    return problems.map(({ states, terms, ...p }) => search(states, terms, { inWindow, effortFirst, ...p }));
  };
  // Everything in its window if any combination does it; else the nearest to the aims, whatever the style.
  let answers = solve(true);
  if (answers.some((answer) => answer === undefined)) answers = solve(false);
  problems.forEach(({ states }, p) => {
    states.forEach((own, i) => {
      const state = answers[p]?.states[i];
      if (state === undefined) return;
      own.settings(state).forEach((settings, side) => {
        found.set(own.corners[side] as Corner, settings);
      });
    });
  });
  return { found, combinations };
}

const kindOfAdjuster = (adjuster: Adjuster): AdjusterKind => adjusterKinds[adjuster.kind] as AdjusterKind;
const minutesOf = (adjuster: Adjuster): number => adjuster.effort ?? kindOfAdjuster(adjuster).effort;

function adjusterOf({ car }: PlanRequest, { corner, adjuster }: AdjusterRef): Adjuster {
  return adjustersOf(car, corner).find(({ id }) => id === adjuster) as Adjuster;
}

function inOrder(
  request: PlanRequest,
  model: CarModel,
  now: Record<Corner, Settings>,
  positions: Record<Corner, Settings>,
): Move[] {
  const steps = CORNERS.flatMap((corner) =>
    adjustersOf(request.car, corner).flatMap((adjuster) => {
      const from = now[corner][adjuster.id] as Position;
      const to = positions[corner][adjuster.id] as Position;
      if (samePosition(from, to)) return [];
      const role: Role = roleOf(cornerOf(model, corner, now), adjuster);
      return [{ corner, adjuster, from, to, rank: rankOf(corner, role) }];
    }),
  ).sort((a, b) => a.rank - b.rank);
  let stands: CarSettings = now;
  return steps.map(({ corner, adjuster, from, to }) => {
    stands = { ...stands, [corner]: { ...stands[corner], [adjuster.id]: to } };
    return {
      corner,
      adjuster: adjuster.id,
      from,
      to,
      instruction: kindOfAdjuster(adjuster).instruction(adjuster, from, to, corner),
      expectAfter: predictWith(model, request.reading, now, stands),
    };
  });
}

function deviationsOf(model: CarModel, predicted: Reading, covariances: readonly Covariance[]): Plan['deviation'] {
  const deviation: Partial<Record<Corner, WheelReading>> = {};
  model.forEach(({ corners }, u) => {
    corners.forEach((corner, side) => {
      const wheel = predicted[corner];
      if (!wheel) return;
      const place = (k: number): number => (ANGLES * side + k) * (ANGLES * corners.length + 1);
      const sigma = (k: number): number => Math.sqrt((covariances[u] as Covariance)[place(k)] as number);
      deviation[corner] = {
        ...(wheel.camber !== undefined && { camber: sigma(CAMBER) }),
        ...(wheel.caster !== undefined && { caster: sigma(CASTER) }),
        ...(wheel.toe !== undefined && { toe: sigma(TOE) }),
      };
    });
  });
  return deviation;
}

function shortfallOf(
  request: PlanRequest,
  term: Term,
  predicted: number,
  positions: Record<Corner, Settings>,
): Shortfall[] {
  const by = outside(predicted, term.window);
  if (by === 0) return [];
  const corners = isAxle(term.where) ? AXLES[term.where] : [term.where];
  const atStop = corners.flatMap((corner) =>
    adjustersOf(request.car, corner)
      .filter((adjuster) => isAtStop(adjuster, positions[corner][adjuster.id] as Position))
      .map(({ id }) => ({ corner, adjuster: id })),
  );
  return [{ where: term.where, angle: term.angle, predicted, by, atStop }];
}

/** Numbers end at both ends of their range; a numbered cam goes round and has no stop. */
function isAtStop(adjuster: Adjuster, position: Position): boolean {
  const all = kindOfAdjuster(adjuster).positions(adjuster);
  if (typeof position !== 'number') return false;
  return samePosition(position, all[0] as Position) || samePosition(position, all.at(-1) as Position);
}
