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
export { adjusterEffects, axleEffects } from './ask/adjuster-effects.ts';
export { type Assessment, assess, hintsOfFile, type ToldHint } from './ask/assess.ts';
export { axleCharts, chartOf } from './ask/chart-of.ts';
export { choicesOfFile, planOfFile, reachOfFile, whatWouldFreeOfFile } from './ask/of-file.ts';
export { planChoices, planMoves } from './ask/plan-moves.ts';
export { expectationOfFile, type PlanRequestOptions, planRequest } from './ask/plan-request.ts';
export { expectReading, predictReading } from './ask/predict-reading.ts';
export { reachOf } from './ask/reach-of.ts';
export { readAgainst } from './ask/read-against.ts';
export { heightEffect, sideEffects } from './ask/side-effects.ts';
export { type AxlePose, solveAxle } from './ask/solve-axle.ts';
export { solveCorner } from './ask/solve-corner.ts';
export { whatElse } from './ask/what-else.ts';
export { type FreeChange, type Stuck, whatWouldFree } from './ask/what-would-free.ts';
export { validateCar } from './check/car.ts';
export * from './contract.ts';
export { InputError } from './input-error.ts';
export { DEFAULT_TOLERANCE } from './plan/chance/covariance.ts';
export type { Chart } from './plan/chart.ts';
export type { PlanChoice } from './plan/choices.ts';
export type { Way } from './plan/extension/extended-travel.ts';
export type { Both, Place, Range, Reach, Reached } from './plan/reach/reach.ts';
export type { WhatElse } from './plan/what-else.ts';
export type { StepEffect } from './pose/effects.ts';
export { type HeightEffect, type HeightGain, type Raise, USUAL_WHEELBASE } from './pose/height.ts';
export type { PoseOptions } from './pose/mechanism.ts';
export type { SideEffects } from './pose/side-effects.ts';
export type { AssessedAngle } from './reading/assess.ts';
export { axleAngles, includedAngle } from './reading/axle-angles.ts';
export { casterAgainstFrame, casterToMeasure } from './reading/frame-angle.ts';
export { DEFAULT_GAUGE } from './reading/gauge.ts';
export { toeFromRimDistances } from './reading/rim-distances.ts';
export { casterFromSweep, saiFromSweep } from './reading/sweep.ts';
export { parseCarFile, validateCarFile } from './records/car-file.ts';
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
