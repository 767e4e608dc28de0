/**
 * What a car file brings. A car that is new here comes in whole; one that is here already is merged with the file by
 * the core's union, which deletes nothing and keeps both where two records claim one id.
 */
import type { CarFile } from '../../../core/contract.ts';
import { canonical } from '../../../core/records/canonical.ts';
import { fromCarFile, toCarFile } from '../../../core/records/exchange.ts';
import { identified } from '../../../core/records/identify.ts';
import { mergeCarFiles } from '../../../core/records/merge.ts';
import type { CarRecord, ReadingRecord } from '../../../core/records/stored.ts';
import type { Records } from '../../state/records.ts';
import type { Entry } from '../../store/index.ts';

export interface Incoming {
  readonly entries: readonly Entry[];
  /** Whether the car was here before. */
  readonly known: boolean;
  /** New to this phone. */
  readonly added: { readonly visits: number; readonly readings: number; readonly moves: number };
  /** Here already and told more by the file: a visit that it closes, a record that both tell in their own way. */
  readonly changed: number;
  /** The car as the file has it, where this phone's build or windows differ. */
  readonly other?: CarRecord;
}

type Clock = Parameters<typeof fromCarFile>[1];

export function incoming(given: CarFile, all: Records, clock: Clock): Incoming {
  const file = identified(given);
  const here = all.cars.find(({ id }) => id === file.car.id);
  const merged = here && mergeCarFiles(toCarFile(here, all.visits, all.readings, all.moves), file);
  const { car, visits, readings, moves } = fromCarFile(merged?.file ?? file, clock);
  const next = {
    // The pre-checks and the digits as they were typed are on this phone alone.
    visits: visits.map((visit) => ({ ...all.visits.find(({ id }) => id === visit.id), ...visit })),
    readings: readings.map((reading) => ({ ...reading, typed: typedOf(reading, all) })),
    moves,
  };
  const fresh = {
    visits: without(next.visits, all.visits),
    readings: without(next.readings, all.readings),
    moves: without(next.moves, all.moves),
  };
  const added = {
    visits: unknownIn(fresh.visits, all.visits),
    readings: unknownIn(fresh.readings, all.readings),
    moves: unknownIn(fresh.moves, all.moves),
  };
  const entries: Entry[] = [
    ...(here ? [] : [['cars', car] as const]),
    ...fresh.visits.map((one) => ['visits', one] as const),
    ...fresh.readings.map((one) => ['readings', one] as const),
    ...fresh.moves.map((one) => ['moves', one] as const),
  ];
  const changed = entries.length - (here ? 0 : 1) - added.visits - added.readings - added.moves;
  const differs = merged?.notes.some(({ field }) => field === 'car' || field === 'spec');
  const other = differs ? fromCarFile({ ...file, visits: [] }, clock).car : undefined;
  return { entries, known: here !== undefined, added, changed, ...(other ? { other } : {}) };
}

interface Known {
  readonly id: string;
}
const without = <T extends Known>(list: readonly T[], here: readonly Known[]): T[] =>
  list.filter((one) => {
    const present = here.find(({ id }) => id === one.id);
    return !present || canonical(present) !== canonical(one);
  });
const unknownIn = (list: readonly Known[], here: readonly Known[]): number =>
  list.filter(({ id }) => !here.some((one) => one.id === id)).length;

/** The digits of the reading with this content, whichever id it has by now. */
function typedOf(reading: ReadingRecord, all: Records): ReadingRecord['typed'] {
  const bare = ({ id: _, typed: __, ...rest }: ReadingRecord): string => canonical(rest);
  return all.readings.find((one) => bare(one) === bare(reading))?.typed ?? {};
}
