/**
 * What a car file brings: its records, joined with those here by the core's union as a backup's are. Nothing is deleted,
 * and where the two differ both are kept; the file's build never takes the place of this phone's.
 */
import type { CarFile } from '../../../core/contract.ts';
import { broughtBack } from '../../../core/records/deletion-marks.ts';
import { fromCarFile } from '../../../core/records/exchange.ts';
import { identified } from '../../../core/records/identify.ts';
import type { CarRecord } from '../../../core/records/stored.ts';
import { unite } from '../../../core/records/union.ts';
import { otherVersions, sameVersion } from '../../../core/records/versions.ts';
import { isGone } from '../../state/gone.ts';
import type { Records } from '../../state/records.ts';
import type { Entry } from '../../store/index.ts';

export interface Incoming {
  readonly entries: readonly Entry[];
  /** Whether the car was here before. */
  readonly known: boolean;
  /** It was deleted here, and is brought back. */
  readonly isBack?: true;
  /** New to this phone. */
  readonly added: { readonly visits: number; readonly readings: number; readonly moves: number };
  /** Here already and told more by the file: a visit that it closes, a record that both tell in their own way. */
  readonly changed: number;
  /** The car as the file has it, where this phone's build or windows differ and nobody has decided yet. */
  readonly other?: CarRecord;
}

export function incoming(given: CarFile, all: Records, clock: Parameters<typeof fromCarFile>[1]): Incoming {
  const file = fromCarFile(identified(given), clock);
  const here = all.cars.find(({ id }) => id === file.car.id);
  // That it is the practice car is this phone's to know.
  const told: CarRecord = { ...file.car, ...(here?.practice && { practice: true }) };
  const joined = unite('cars', here ? [here] : [], [told]).changed;
  // Whoever opens the file of a car wants it, though it was deleted here.
  const isBack = here !== undefined && isGone(all, here);
  const car = isBack ? [broughtBack(joined[0] ?? here, clock.now)] : joined;
  const visits = unite('visits', all.visits, file.visits);
  const readings = unite('readings', all.readings, file.readings);
  const moves = unite('moves', all.moves, file.moves);
  const entries: Entry[] = [
    ...car.map((one) => ['cars', one] as const),
    ...visits.changed.map((one) => ['visits', one] as const),
    ...readings.changed.map((one) => ['readings', one] as const),
    ...moves.changed.map((one) => ['moves', one] as const),
  ];
  const added = { visits: visits.fresh, readings: readings.fresh, moves: moves.fresh };
  const changed = [visits, readings, moves].reduce((sum, one) => sum + one.changed.length - one.fresh, 0);
  const now = car[0] ?? here;
  const other = now && otherVersions(now).find((one) => sameVersion(one, told));
  return { entries, known: here !== undefined, ...(isBack && { isBack }), added, changed, ...(other && { other }) };
}
