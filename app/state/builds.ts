/** Builds of one car that are kept beside each other: what tells them apart, for a person. */
import type { AxleName } from '../../core/contract.ts';
import { canonical } from '../../core/records/canonical.ts';
import { UNDATED } from '../../core/records/exchange.ts';
import type { CarRecord } from '../../core/records/stored.ts';
import { fullTime } from './days.ts';

/** `saved 12 November 2026 at 09:12` */
export const buildName = ({ changed }: CarRecord): string =>
  changed === UNDATED ? 'from a car file' : `saved ${fullTime(changed)}`;

const AXLES = ['front', 'rear'] as const satisfies readonly AxleName[];

/** Where two builds differ, in a few words each. */
export function differences(a: CarRecord, b: CarRecord): readonly string[] {
  const parts: readonly (readonly [string, (record: CarRecord) => unknown])[] = [
    ['name', ({ car }) => car.label],
    ['plate', ({ car }) => car.plate],
    ['notes', ({ car }) => car.notes],
    ['customer', ({ car }) => [car.customer, car.vin, car.tyres]],
    ['wheels', ({ car, spec }) => [car.wheel, spec.toeDiameter, car.wheelbase, car.steeringRatio]],
    ...AXLES.flatMap(
      (axle) =>
        [
          [`${axle} suspension`, ({ car }) => [car[axle].suspension, car[axle].rightSuspension, car[axle].steered]],
          [`${axle} adjusters`, ({ car }) => [car[axle].adjusters, car[axle].rightAdjusters]],
          [`${axle} windows`, ({ spec }) => spec[axle]],
        ] as const satisfies readonly (readonly [string, (record: CarRecord) => unknown])[],
    ),
  ];
  const found = parts.filter(([, of]) => canonical(of(a)) !== canonical(of(b))).map(([words]) => words);
  return found.length > 0 ? found : ['what the card does not show'];
}
