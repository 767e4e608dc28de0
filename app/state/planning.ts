/** The plan of a round, recomputed from its records: asked of the engine with the visit's file, never kept. */

import type {
  AdjusterRef,
  CarFile,
  Corner,
  Explanation,
  LiveAngle,
  Plan,
  PlanStyle,
  Reading,
} from '../../core/contract.ts';
import { CORNERS } from '../../core/contract.ts';
import type {
  MeasureBetween,
  PlanChoice,
  PlanRequestOptions,
  Reach,
  Stuck,
  ToldHint,
  TurnsThatTell,
} from '../../core/index.ts';
import type { ReadingRecord } from '../../core/records/stored.ts';
import { engine } from '../engine/index.ts';
import { type Asked, useAsked } from './asking.ts';
import { earlierVisits } from './earlier.ts';
import { formOfRecord } from './form.ts';
import { leftIn } from './leave.ts';
import { drawer, gauge, live } from './preferences.ts';
import { choice, choose } from './stage.ts';
import { unknownAtReading } from './unknown-places.ts';
import { visitFile } from './visit-file.ts';
import type { RoundView, VisitView } from './visits.ts';

/** What the planner is asked: the visit up to the last deviation of the round, and what the shop has. */
interface Question {
  readonly file: CarFile;
  readonly options: PlanRequestOptions;
}

export const questionOf = (view: VisitView, round: RoundView): Question => ({
  file: visitFile(view, round, round.base, earlierVisits(view)),
  options: {
    locked: leftIn(view, round).before,
    ...gaugeOption(),
    ...(shownLive(round).length > 0 && { live: shownLive(round) }),
    ...(drawer.value.counted ? { drawer: drawer.value.shims } : {}),
  },
});

/** How well the rack repeats, where the shop has said so. */
const gaugeOption = (): Pick<PlanRequestOptions, 'gauge'> => (gauge.value ? { gauge: gauge.value } : {});

/**
 * What the rack shows of it while something is turned: of a total nobody sees what one wheel does, and what was measured with
 * something else is on no rack.
 */
export const shownLive = ({ record }: RoundView): readonly LiveAngle[] =>
  live.value.angles.filter(
    (angle) =>
      !(angle === 'toe' && formOfRecord(record).total) &&
      !CORNERS.some((corner) => record.reading.methods?.[corner]?.[angle]),
  );

/** The plan that was chosen in this visit: the practical one until another is. */
export function chosenPlan(visitId: string): PlanChoice['ask'] {
  const style = STYLES.find((one) => one === choice(visitId, 'style')) ?? 'practical';
  const minutes = choice(visitId, 'maxEffort');
  return { style, ...(minutes ? { maxEffort: Number(minutes) } : {}) };
}
const STYLES: readonly PlanStyle[] = ['practical', 'surest', 'closest', 'least-work'];

export function choosePlan(visitId: string, { style = 'practical', maxEffort }: PlanChoice['ask']): void {
  choose(visitId, { style, maxEffort: maxEffort === undefined ? '' : String(maxEffort) });
}

/** The plans worth choosing among. */
export function usePlanChoices(view: VisitView, round: RoundView): Asked<PlanChoice[]> {
  const { file, options } = questionOf(view, round);
  return useAsked(`choices ${JSON.stringify([file, options])}`, (signal) =>
    engine.call('choicesOfFile', [file, options], { signal, latest: `choices ${view.visit.id}` }),
  );
}

/** @param undone moves that are left beside those that were */
export function usePlan(
  view: VisitView,
  round: RoundView | undefined,
  undone: readonly AdjusterRef[] = [],
): Asked<Plan> {
  const question = round && questionOf(view, round);
  const leave = round
    ? [...leftIn(view, round).now, ...undone.map(({ corner, adjuster }) => ({ corner, adjuster }))]
    : [];
  const args =
    question &&
    ([
      question.file,
      { ...question.options, ...chosenPlan(view.visit.id), ...(leave.length > 0 && { leave }) },
    ] as const);
  return useAsked(args && `plan ${JSON.stringify(args)}`, (signal) =>
    engine.call('planOfFile', [...(args as NonNullable<typeof args>)], { signal }),
  );
}

/** Plans on a reading that is not taken down yet, so that its plan is there, mostly, when it is asked for. */
export function usePlanAhead(view: VisitView, record: ReadingRecord): void {
  const corrected = view.rounds.find((one) => one.record.id === record.replaces);
  const rounds = corrected ? view.rounds.slice(0, view.rounds.indexOf(corrected)) : view.rounds;
  usePlan({ ...view, rounds }, { moves: [], base: [], done: [], ...corrected, record });
}

/** Everywhere that the adjusters of a corner can put its wheel, the others standing where the plan has them. */
export function useReach(view: VisitView, round: RoundView, plan: Plan, corner: Corner | undefined): Asked<Reach> {
  const { file, options } = questionOf(view, round);
  const { positions } = plan;
  return useAsked(corner && `reach ${JSON.stringify([file, options, corner, positions])}`, (signal) =>
    engine.call('reachOfFile', [file, options, corner as Corner, positions], { signal }),
  );
}

/** What would let the windows be met that cannot be. */
export function useWhatWouldFree(view: VisitView, round: RoundView): Asked<Stuck[]> {
  const { file, options } = questionOf(view, round);
  return useAsked(`free ${JSON.stringify([file, options])}`, (signal) =>
    engine.call('whatWouldFreeOfFile', [file, options], { signal }),
  );
}

/** What the round's reading points to beside adjustment. */
export function useHints(view: VisitView, round: RoundView): Asked<readonly ToldHint[]> {
  const file = visitFile(view, round, []);
  const unknown = unknownAtReading(view, round);
  return useAsked(`hints ${JSON.stringify([file, unknown])}`, (signal) =>
    engine.call('hintsOfFile', [file, unknown], { signal }),
  );
}

/** What the rack should read after all that was done in a round, by what was known of the car then. */
export function useExpected(view: VisitView, round: RoundView | undefined): Asked<Reading> {
  const args = round && ([visitFile(view, round, round.moves, earlierVisits(view)), gaugeOption()] as const);
  return useAsked(args && `expect ${JSON.stringify(args)}`, (signal) =>
    engine.call('expectationOfFile', [...(args as NonNullable<typeof args>)], { signal }),
  );
}

/** Why a round's reading is not as the moves before it were to make it, by what was known of the car before it was read. */
export function useExplanation(view: VisitView, round: RoundView | undefined): Asked<Explanation[]> {
  const args = round && ([visitFile(view, round, [], earlierVisits(view)), gaugeOption()] as const);
  return useAsked(args && `explain ${JSON.stringify(args)}`, (signal) =>
    engine.call('explanationOfFile', [...(args as NonNullable<typeof args>)], { signal }),
  );
}

/** What shows where the adjusters stand of which nobody knows; asked where there are such. */
export function useTurnsThatTell(view: VisitView, round: RoundView, isWanted: boolean): Asked<TurnsThatTell> {
  const args = [questionOf(view, round).file, gaugeOption()] as const;
  return useAsked(isWanted ? `turns ${JSON.stringify(args)}` : undefined, (signal) =>
    engine.call('turnsThatTell', [...args], { signal }),
  );
}

/** Whether a reading between the moves of a round would make the rest surer. */
export function useMeasureBetween(view: VisitView, round: RoundView, isWanted: boolean): Asked<MeasureBetween> {
  const { file, options } = questionOf(view, round);
  const args = [file, { ...options, ...chosenPlan(view.visit.id) }] as const;
  return useAsked(isWanted ? `between ${JSON.stringify(args)}` : undefined, (signal) =>
    engine.call('measureBetween', [...args], { signal, latest: `between ${view.visit.id}` }),
  );
}
