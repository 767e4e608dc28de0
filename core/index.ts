/** The public surface of core: what the app, the terminal and outside checks may call. Re-exports only. */

export { adjusterKinds } from './adjuster/catalogue.ts';
export { misfit } from './adjuster/fits.ts';
export type { AdjusterKind, Effect } from './adjuster/kind.ts';
export { adjustersOf } from './adjuster/of-corner.ts';
export { adjusterPositions } from './adjuster/positions.ts';
export * from './contract.ts';
export { InputError } from './input-error.ts';
export { DEFAULT_GAUGE, DEFAULT_TOLERANCE } from './plan/chance.ts';
export { type Chart, chartOf } from './plan/chart.ts';
export { chartPair } from './plan/chart-pair.ts';
export { planMoves } from './plan/plan.ts';
export { predictReading } from './plan/predict.ts';
export { type WhatElse, whatElse } from './plan/what-else.ts';
export { adjusterEffects, axleEffects, type StepEffect } from './pose/effects.ts';
export { heightEffect, type SideEffects, sideEffects } from './pose/side-effects.ts';
export { type AxlePose, solveAxle } from './pose/solve-axle.ts';
export { solveCorner } from './pose/solve-corner.ts';
export type { PoseOptions } from './pose/unit.ts';
export { type AssessedAngle, type Assessment, assess } from './reading/assess.ts';
export { axleAngles, includedAngle } from './reading/axle-angles.ts';
export { casterAgainstFrame, casterToMeasure } from './reading/frame-angle.ts';
export { toeFromRimDistances } from './reading/rim-distances.ts';
export { casterFromSweep, saiFromSweep } from './reading/sweep.ts';
export { mergeCarFiles } from './records/merge.ts';
export { planRequest } from './records/plan-request.ts';
export { current, movedOn } from './records/rounds.ts';
export { parseCarFile, validateCar, validateCarFile } from './records/validate.ts';
export { suspensionKinds } from './suspension/catalogue.ts';
export type { SuspensionKind } from './suspension/kind.ts';
export { pointsFromTape } from './suspension/points-from-tape.ts';
export type { TapeDimension } from './suspension/tape.ts';

export { formatAngle } from './units/format.ts';
export { formatLength, parseLength } from './units/length.ts';
export { parseAngle } from './units/parse.ts';
export { type ShimStack, shimStack } from './units/shim-stack.ts';
export { lengthToToe, toeToLength } from './units/toe.ts';
