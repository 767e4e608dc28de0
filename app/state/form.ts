/**
 * What a reading's form asks: SAI too or not, toe of each wheel or the total of each axle, how an axle on links
 * stands, how far the steering wheel stood off, how high the body stands; and what front toe is read against.
 */
import type { Reading } from '../../core/contract.ts';
import type { ReadingRecord } from '../../core/records/stored.ts';

export interface Form {
  readonly sai: boolean;
  readonly total: boolean;
  /** Pinion angle and where the axle stands across the car; absent: no. */
  readonly axle?: boolean;
  /** How far the steering wheel stood off level; absent: it was level. */
  readonly wheel?: boolean;
  /** How high the body stands at each corner; absent: no. */
  readonly heights?: boolean;
  /** What the rack reads front toe against; without rear toe there is nothing but the centre line. */
  readonly reference: NonNullable<Reading['toeReference']>;
}

/** Among the typed texts, so that another choice later changes nothing that was typed. */
const SAI = 'form:sai';
const TOE = 'form:toe';
const AXLE = 'form:axle';
const WHEEL = 'form:wheel';
const HEIGHTS = 'form:heights';
const REFERENCE = 'form:reference';

export const formTexts = ({ sai, total, axle, wheel, heights, reference }: Form): Readonly<Record<string, string>> => ({
  [SAI]: sai ? 'taken' : 'not taken',
  [TOE]: total ? 'total' : 'each',
  [REFERENCE]: reference,
  ...(axle === undefined ? {} : { [AXLE]: axle ? 'taken' : 'not taken' }),
  ...(wheel === undefined ? {} : { [WHEEL]: wheel ? 'off' : 'level' }),
  ...(heights === undefined ? {} : { [HEIGHTS]: heights ? 'taken' : 'not taken' }),
});

/** The form of an entry or a reading: as its texts say, else as it is usual on this car. */
export function formOf(texts: Readonly<Record<string, string>>, usual: Form): Form {
  const heights = texts[HEIGHTS] === undefined ? usual.heights : texts[HEIGHTS] === 'taken';
  return {
    sai: texts[SAI] === undefined ? usual.sai : texts[SAI] === 'taken',
    total: texts[TOE] === undefined ? usual.total : texts[TOE] === 'total',
    reference: referenceIn(texts) ?? usual.reference,
    ...(texts[AXLE] ? { axle: texts[AXLE] === 'taken' } : {}),
    ...(texts[WHEEL] ? { wheel: texts[WHEEL] === 'off' } : {}),
    ...(heights === undefined ? {} : { heights }),
  };
}

/** What was taken in a reading; one that came in a file has each wheel's toe. */
export const formOfRecord = ({ typed, reading }: Pick<ReadingRecord, 'typed' | 'reading'>): Form => ({
  sai: anySai(reading),
  total: typed[TOE] === 'total',
  reference: referenceIn(typed) ?? reading.toeReference ?? 'centreline',
  ...(reading.front || reading.rear ? { axle: true } : {}),
  ...(reading.steeringWheel === undefined ? {} : { wheel: true }),
  ...(reading.rideHeights === undefined ? {} : { heights: true }),
});

function referenceIn({ [REFERENCE]: text }: Readonly<Record<string, string>>): Form['reference'] | undefined {
  return text === 'thrust-line' || text === 'centreline' ? text : undefined;
}

const anySai = ({ LF, RF, LR, RR }: Reading): boolean => [LF, RF, LR, RR].some((wheel) => wheel?.sai !== undefined);
