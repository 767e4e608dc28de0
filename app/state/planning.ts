/** The plan of a round, recomputed from its records: asked of the engine, never kept. */

import { planRequest } from '../../core/ask/plan-request.ts';
import type { CarSettings, Plan, PlanRequest, PlanStyle, Reading } from '../../core/contract.ts';
import type { PlanChoice } from '../../core/plan/choices.ts';
import { toCarFile } from '../../core/records/exchange.ts';
import { movedOn } from '../../core/records/rounds.ts';
import type { ReadingRecord } from '../../core/records/stored.ts';
import { engine } from '../engine/index.ts';
import { type Asked, useAsked } from './asking.ts';
import { drawer, gauge } from './preferences.ts';
import { choice, choose } from './stage.ts';
import type { RoundView, VisitView } from './visits.ts';

/**
 * What the planner is asked: the reading and settings of the round moved on to its last deviation, all that refused
 * to move in this visit left alone. The same call as the terminal's.
 * @throws InputError
 */
export function roundRequest(view: VisitView, round: RoundView): PlanRequest {
  const base = round.base.map((move) => ({ ...move, readingId: round.record.id }));
  const file = toCarFile(view.car, [view.visit], [round.record], base);
  const options = {
    ...{ locked: view.locked, ...chosenPlan(view.visit.id) },
    ...(gauge.value ? { gauge: gauge.value } : {}),
    ...(drawer.value.counted ? { drawer: drawer.value.shims } : {}),
  };
  const key = JSON.stringify([file, options]);
  if (last?.key !== key) last = { key, request: planRequest(file, options) };
  return last.request;
}
/** Several parts of a screen ask for the same, at every drawing; the car as it was found takes solving. */
let last: { readonly key: string; readonly request: PlanRequest } | undefined;

/** The plan that was chosen in this visit: the surest until another is. */
export function chosenPlan(visitId: string): PlanChoice['ask'] {
  const style = STYLES.find((one) => one === choice(visitId, 'style')) ?? 'surest';
  const minutes = choice(visitId, 'maxEffort');
  return { style, ...(minutes ? { maxEffort: Number(minutes) } : {}) };
}
const STYLES: readonly PlanStyle[] = ['surest', 'closest', 'least-work'];

export function choosePlan(visitId: string, { style = 'surest', maxEffort }: PlanChoice['ask']): void {
  choose(visitId, { style, maxEffort: maxEffort === undefined ? '' : String(maxEffort) });
}

/** The plans worth choosing among. */
export function usePlanChoices(view: VisitView, round: RoundView): Asked<PlanChoice[]> {
  const request = attempt(() => roundRequest(view, round));
  const { style: _, maxEffort: __, ...bare } = request instanceof Error ? ({} as PlanRequest) : request;
  const asked = useAsked(bare.car && `choices ${JSON.stringify(bare)}`, (signal) =>
    engine.call('planChoices', [bare], { signal, latest: `choices ${view.visit.id}` }),
  );
  return request instanceof Error ? { error: request, busy: false } : asked;
}

export function usePlan(view: VisitView, round: RoundView | undefined): Asked<Plan> {
  const request = round && attempt(() => roundRequest(view, round));
  const ready = request instanceof Error ? undefined : request;
  const asked = useAsked(ready && `plan ${JSON.stringify(ready)}`, (signal) =>
    engine.call('planMoves', [ready as PlanRequest], { signal }),
  );
  return request instanceof Error ? { error: request, busy: false } : asked;
}

/** Plans on a reading that is not taken down yet, so that its plan is there, mostly, when it is asked for. */
export function usePlanAhead(view: VisitView, record: ReadingRecord): void {
  usePlan(view, { record, moves: [], base: [], done: [] });
}

/** What the rack should read after all that was done in a round. */
export function useExpected(view: VisitView, round: RoundView | undefined): Asked<Reading> {
  const from = round?.record.settings ?? {};
  const to: CarSettings = round ? movedOn(from, round.moves) : {};
  const reading = round?.record.reading ?? {};
  return useAsked(round && `expect ${JSON.stringify([view.car.car, reading, from, to])}`, (signal) =>
    engine.call('expectReading', [view.car.car, reading, from, to], { signal }),
  );
}

function attempt<T>(work: () => T): T | Error {
  try {
    return work();
  } catch (error) {
    return error instanceof Error ? error : new Error(String(error));
  }
}
