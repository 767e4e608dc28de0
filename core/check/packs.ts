/** What is said to be in packs has to be what their thickness is made of. */
import { adjusterKinds } from '../adjuster/catalogue.ts';
import { adjustersOf } from '../adjuster/of-corner.ts';
import type { Car, CarPacks, CarSettings } from '../contract.ts';
import { CORNERS } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { tidy } from '../units/plain.ts';
import { called } from './adjusters.ts';
import { check } from './refuse.ts';
import { carPacks } from './schema.ts';

/** mm by which shims and the thickness that they make may differ as they are written. */
const AS_WRITTEN = 0.005;

/**
 * The shims of a car's packs, by corner and adjuster id.
 * @param settings validated: where the packs stand; one that is absent at its reference
 * @throws InputError such as `packs.LF.upper-front`, where the car has no such pack or they do not make its thickness
 */
export function validatePacks(value: unknown, car: Car, settings: CarSettings, field = 'packs'): CarPacks {
  const packs = check(carPacks, value, field) as CarPacks;
  for (const corner of CORNERS) {
    const fitted = adjustersOf(car, corner).filter(({ kind }) => adjusterKinds[kind]?.stack);
    for (const [id, shims] of Object.entries(packs[corner] ?? {})) {
      const pack = fitted.find((one) => one.id === id);
      const at = `${field}.${corner}.${id}`;
      if (!pack) throw new InputError(at, shims, { is: 'no-such-adjuster', among: called(fitted) });
      const stands = (settings[corner]?.[id] ?? pack.reference) as number;
      const sum = shims.reduce((mm, { size, count }) => mm + size * count, 0);
      if (Math.abs(sum - stands) > AS_WRITTEN) {
        throw new InputError(at, tidy(sum), { is: 'makes', thickness: stands });
      }
    }
  }
  return packs;
}
