/** What the page may call by name: functions of core that are too big or too slow for the first load, and their rehearsal. */

import {
  adjusterEffects,
  axleCharts,
  axleEffects,
  choicesOfFile,
  expectationOfFile,
  heightEffect,
  hintsOfFile,
  parseCarFile,
  planOfFile,
  pointsFromTape,
  reachOfFile,
  solveCorner,
  validateCarFile,
  whatElse,
  whatWouldFreeOfFile,
} from '../../core/index.ts';
import { rehearse } from './rehearse.ts';

export const functions = {
  adjusterEffects,
  axleCharts,
  axleEffects,
  choicesOfFile,
  expectationOfFile,
  heightEffect,
  hintsOfFile,
  parseCarFile,
  planOfFile,
  pointsFromTape,
  reachOfFile,
  rehearse,
  solveCorner,
  validateCarFile,
  whatElse,
  whatWouldFreeOfFile,
} as const;

export type Functions = typeof functions;
export type FunctionName = keyof Functions;
