/** What the page may call by name: functions of core that are too big or too slow for the first load, and their rehearsal. */

import {
  adjusterEffects,
  axleCharts,
  axleEffects,
  choicesOfFile,
  dimensionWorth,
  expectationOfFile,
  explanationOfFile,
  heightEffect,
  hintsOfFile,
  measureBetween,
  parseCarFile,
  planOfFile,
  pointsFromTape,
  problemsOf,
  reachOfFile,
  solveCorner,
  taughtOfFile,
  turnsThatTell,
  validateCarFile,
  whatElse,
  whatIsBent,
  whatWouldFreeOfFile,
} from '../../core/index.ts';
import { counted, whileCold } from './compiled.ts';
import { rehearse } from './rehearse.ts';

/** Plans among which somebody chooses, as they mostly come. */
const CHOICES = 4;

export const functions = {
  adjusterEffects,
  axleCharts,
  axleEffects,
  choicesOfFile: counted(choicesOfFile, CHOICES),
  dimensionWorth,
  expectationOfFile,
  explanationOfFile,
  heightEffect,
  hintsOfFile,
  measureBetween,
  parseCarFile,
  planOfFile: counted(planOfFile, 1),
  pointsFromTape,
  problemsOf,
  reachOfFile,
  rehearse: whileCold(rehearse),
  solveCorner,
  taughtOfFile,
  turnsThatTell,
  validateCarFile,
  whatElse,
  whatIsBent,
  whatWouldFreeOfFile,
} as const;

export type Functions = typeof functions;
export type FunctionName = keyof Functions;
