/** What the page may call by name: functions of core that are too big or too slow for the first load, and their rehearsal. */

import {
  adjusterEffects,
  assess,
  axleEffects,
  chartOf,
  expectReading,
  heightEffect,
  planChoices,
  planMoves,
  pointsFromTape,
  reachOf,
  solveCorner,
  whatElse,
  whatWouldFree,
} from '../../core/index.ts';
import { parseCarFile, validateCarFile } from '../../core/records/car-file.ts';
import { rehearse } from './rehearse.ts';

export const functions = {
  adjusterEffects,
  axleEffects,
  assess,
  chartOf,
  heightEffect,
  parseCarFile,
  planChoices,
  planMoves,
  pointsFromTape,
  expectReading,
  reachOf,
  rehearse,
  solveCorner,
  validateCarFile,
  whatElse,
  whatWouldFree,
} as const;

export type Functions = typeof functions;
export type FunctionName = keyof Functions;
