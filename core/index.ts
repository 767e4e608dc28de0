/**
 * The public surface of core, re-exports only: the checked functions that outside callers, the terminal and the app's worker
 * ask (all of ask/), the files they exchange, the catalogues, and what reads and writes figures. The app's page takes no
 * more than types from here: what it needs at once it imports from the rooms that are small, and what solves it asks of the
 * worker by name.
 */

export { adjusterKinds } from './adjuster/catalogue.ts';
export { chartPair } from './adjuster/chart-pair.ts';
export { misfit } from './adjuster/fits.ts';
export type { AdjusterKind, Effect } from './adjuster/kind.ts';
export { adjustersOf } from './adjuster/of-corner.ts';
export { adjusterPositions } from './adjuster/positions.ts';
export { DEFAULT_TOLERANCE } from './adjuster/unknowns.ts';
export { adjusterEffects, axleEffects } from './ask/adjuster-effects.ts';
export { type Assessment, type AssessOptions, assess, hintsOfFile, type ToldHint, whatIsBent } from './ask/assess.ts';
export { axleCharts, chartOf } from './ask/chart-of.ts';
export { dimensionWorth } from './ask/dimension-worth.ts';
export { type ExplainOptions, explain, explanationOfFile } from './ask/explain.ts';
export { type MeasureBetween, measureBetween } from './ask/first-move.ts';
export { learn, learnOfFile } from './ask/learn.ts';
export { choicesOfFile, planOfFile, reachOfFile, whatWouldFreeOfFile } from './ask/of-file.ts';
export { planChoices, planMoves } from './ask/plan-moves.ts';
export { expectationOfFile, type PlanRequestOptions, planRequest } from './ask/plan-request.ts';
export { expectReading, predictReading } from './ask/predict-reading.ts';
export { reachOf } from './ask/reach-of.ts';
export { readAgainst } from './ask/read-against.ts';
export { heightEffect, sideEffects } from './ask/side-effects.ts';
export { type AxlePose, solveAxle } from './ask/solve-axle.ts';
export { solveCorner } from './ask/solve-corner.ts';
export { type TaughtOfFile, type ToldTaught, taughtOfFile } from './ask/taught.ts';
export { type TurnsThatTell, turnsThatTell, type WatchedTurn } from './ask/turns-that-tell.ts';
export { whatElse } from './ask/what-else.ts';
export { type FreeChange, type Stuck, whatWouldFree } from './ask/what-would-free.ts';
export { validateCar } from './check/car.ts';
export * from './contract.ts';
export { InputError } from './input-error.ts';
export type { BentMeasures } from './measure/bent.ts';
export { type RimDistances, toeFromRimDistances, totalToeAcross } from './measure/distances.ts';
export { casterAgainstFrame, casterToMeasure } from './measure/frame-angle.ts';
export { camberFromPlumb, floorSlope, onLevelFloor, type Plumb } from './measure/plumb.ts';
export { type Repeatability, repeatability } from './measure/repeats.ts';
export { type AxleHeight, heightsOff, type RideHeights } from './measure/ride-heights.ts';
export { asideFromGaps, type FrameHeights, frameAngleFrom } from './measure/rigid-axle.ts';
export { type RoughToe, type RoughTurns, roughToe } from './measure/rough-toe.ts';
export { type RunOut, withoutRunOut } from './measure/run-out.ts';
export { sideSlipOf, toeFromSideSlip } from './measure/side-slip.ts';
export type { Measured } from './measure/spread.ts';
export { type Stringed, type Strings, toeFromStrings } from './measure/strings.ts';
export { axisFromSweep, casterFromSweep, type SweepEnd, type SweptAxis, saiFromSweep } from './measure/sweep.ts';
export { type TurnedRound, turnedRound } from './measure/turned-round.ts';
export type { Chart } from './plan/chart.ts';
export type { PlanChoice } from './plan/choices.ts';
export type { Way } from './plan/extension/extended-travel.ts';
export type { Both, Place, Range, Reach, Reached } from './plan/reach/reach.ts';
export type { WhatElse } from './plan/what-else.ts';
export type { LengthWorth, Worth } from './plan/worth.ts';
export type { StepEffect } from './pose/effects.ts';
export { type HeightEffect, type HeightGain, type Raise, USUAL_WHEELBASE } from './pose/height.ts';
export type { PoseOptions } from './pose/mechanism.ts';
export type { SideEffects } from './pose/side-effects.ts';
export type { AssessedAngle } from './reading/assess.ts';
export { axleAngles, includedAngle } from './reading/axle-angles.ts';
export { DEFAULT_GAUGE } from './reading/gauge.ts';
export { parseCarFile, problemsOf, validateCarFile } from './records/car-file.ts';
export { mergeCarFiles } from './records/merge.ts';
export { current, movedOn } from './records/rounds.ts';
export type { Refused, Rule } from './rule.ts';
export { suspensionKinds } from './suspension/catalogue.ts';
export type { SuspensionKind } from './suspension/kind.ts';
export { pointsFromTape } from './suspension/tape/points-from-tape.ts';
export type { TapeDimension } from './suspension/tape/tape.ts';

export { formatAngle } from './units/format.ts';
export { formatLength, parseLength } from './units/length.ts';
export { parseAngle } from './units/parse.ts';
export { type ShimStack, shimStack } from './units/shim-stack.ts';
export { lengthToToe, toeToLength } from './units/toe.ts';
