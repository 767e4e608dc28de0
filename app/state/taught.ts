/** What a car's readings have taught, asked of the engine with all its visits. */
import type { CarFile } from '../../core/contract.ts';
import type { TaughtOfFile } from '../../core/index.ts';
import type { CarRecord } from '../../core/records/stored.ts';
import { engine } from '../engine/index.ts';
import { type Asked, useAsked } from './asking.ts';
import { visitsThatTeach } from './earlier.ts';
import { gauge } from './preferences.ts';

/** Nothing is asked where no visit has two readings to hold against each other. */
export function useTaught(record: CarRecord | undefined): Asked<TaughtOfFile> {
  const visits = record ? visitsThatTeach(record) : [];
  const file: CarFile | undefined =
    record && visits.length > 0
      ? { format: 'cornerwright', version: 1, car: record.car, spec: record.spec, visits }
      : undefined;
  const args = file && ([file, gauge.value ? { gauge: gauge.value } : {}] as const);
  return useAsked(args && `taught ${JSON.stringify(args)}`, (signal) =>
    engine.call('taughtOfFile', [...(args as NonNullable<typeof args>)], { signal, latest: 'taught' }),
  );
}
