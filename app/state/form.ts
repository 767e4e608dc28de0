/**
 * First load. What a reading's form asks: SAI too or not, toe of each wheel or the total of each axle, and how an axle on
 * links stands.
 */
import type { Reading } from '../../core/contract.ts';
import type { ReadingRecord } from '../../core/records/stored.ts';

export interface Form {
  readonly sai: boolean;
  readonly total: boolean;
  /** Pinion angle and where the axle stands across the car; absent: no. */
  readonly axle?: boolean;
}

/** Among the typed texts, so that another choice later changes nothing that was typed. */
const SAI = 'form:sai';
const TOE = 'form:toe';
const AXLE = 'form:axle';

export const formTexts = ({ sai, total, axle }: Form): Readonly<Record<string, string>> => ({
  [SAI]: sai ? 'taken' : 'not taken',
  [TOE]: total ? 'total' : 'each',
  ...(axle === undefined ? {} : { [AXLE]: axle ? 'taken' : 'not taken' }),
});

/** The form of an entry or a reading: as its texts say, else as it is usual on this car. */
export function formOf(texts: Readonly<Record<string, string>>, usual: Form): Form {
  return {
    sai: texts[SAI] === undefined ? usual.sai : texts[SAI] === 'taken',
    total: texts[TOE] === undefined ? usual.total : texts[TOE] === 'total',
    ...(texts[AXLE] ? { axle: texts[AXLE] === 'taken' } : {}),
  };
}

/** What was taken in a reading; one that came in a file has each wheel's toe. */
export const formOfRecord = ({ typed, reading }: Pick<ReadingRecord, 'typed' | 'reading'>): Form => ({
  sai: anySai(reading),
  total: typed[TOE] === 'total',
  ...(reading.front || reading.rear ? { axle: true } : {}),
});

const anySai = ({ LF, RF, LR, RR }: Reading): boolean => [LF, RF, LR, RR].some((wheel) => wheel?.sai !== undefined);
