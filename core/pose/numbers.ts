/** Which number is which in what a mechanism writes: a wheel's angles, wheel by wheel, then how an axle's body stands. */
import type { Side } from '../adjuster/of-corner.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';

export const CAMBER = 0;
export const CASTER = 1;
export const TOE = 2;
/** How many angles a wheel has. */
export const ANGLES_A_WHEEL = 3;

/** Of the body that an axle is, where an angle of one of its corners is asked for. */
export const PITCH = 3;
export const LATERAL = 4;
/** How many numbers the body has. */
const BODY = 2;

/** Whether how the body stands is among an assembly's numbers: that of an axle on links. */
export const hasBody = ([first]: readonly Side[]): boolean =>
  suspensionKinds[first?.suspension.kind ?? '']?.rigidAxle?.onLinks === true;

/** How many numbers an assembly has. */
export const numbersOf = (sides: readonly Side[]): number =>
  ANGLES_A_WHEEL * sides.length + (hasBody(sides) ? BODY : 0);
