/** First load. Angles and toe as this technician types and reads them; the core's units with the chosen ones filled in. */
import { signal } from '@preact/signals';
import { formatAngle } from '../../core/units/format.ts';
import { parseAngle } from '../../core/units/parse.ts';
import { lengthToToe, toeToLength } from '../../core/units/toe.ts';
import { type Units, units } from './preferences.ts';

type Lengths = typeof import('../../core/units/length.ts');

/** Lengths bring a decimal library with them: fetched only for who reads toe as a length. */
const loaded = signal<Lengths | undefined>(undefined);
let asked = false;

function lengths(): Lengths | undefined {
  if (!asked) {
    asked = true;
    import('../../core/units/length.ts').then(
      (module) => {
        loaded.value = module;
      },
      () => {
        asked = false;
      },
    );
  }
  return loaded.value;
}

/** Whether toe in this unit can be read now; it draws the screen again when it can. */
export const canRead = (toe: Units['toe']): boolean => toe === 'angle' || lengths() !== undefined;

/**
 * Degrees from a typed angle. A point is always decimal degrees and ° always splits off minutes, whichever the
 * keypad is set to now, so that changing it half way changes nothing that was typed before.
 * @throws InputError
 */
export const readAngle = (text: string): number => parseAngle(text);

type ToeAngle = 'toe' | 'totalToe';
/** Lengths of both wheels add up; the sine of the sum of their angles does not. */
const wheelsIn = (angle: ToeAngle): number => (angle === 'totalToe' ? 2 : 1);

/**
 * Degrees of toe of a wheel or of an axle, from an angle or from a length at the rim; undefined for the moment that the
 * length units load.
 * @throws InputError
 */
export function readToe(text: string, { toe }: Units, rimDiameter: number, angle: ToeAngle): number | undefined {
  if (toe === 'angle') return parseAngle(text);
  const mm = lengths()?.parseLength(text, { unit: toe, field: 'toe' });
  const wheels = wheelsIn(angle);
  return mm === undefined ? undefined : lengthToToe(mm / wheels, rimDiameter) * wheels;
}

/** An angle in the chosen units. */
export function angleText(degrees: number, sign = false): string {
  return formatAngle(degrees, { mode: units.value.angle, decimal: units.value.decimal, sign });
}

/** Toe of a wheel or of an axle in a unit, without the unit's name. */
function toeText(degrees: number, rimDiameter: number, angle: ToeAngle, toe: Units['toe']): string {
  if (toe === 'angle') return angleText(degrees);
  const length = lengths();
  if (!length) return '…';
  const digits = toe === 'mm' ? 1 : 2;
  const { decimal } = units.value;
  const wheels = wheelsIn(angle);
  const mm = toeToLength(degrees / wheels, rimDiameter) * wheels;
  return length.formatLength(mm, { unit: toe, digits, bare: true, decimal });
}

/** Any wheel or axle angle by its name; toe and total toe follow the toe unit; how far an axle stands aside is in mm. */
export function valueText(
  angle: string,
  degrees: number,
  rimDiameter: number,
  toe: Units['toe'] = units.value.toe,
): string {
  if (angle === 'toe' || angle === 'totalToe') return toeText(degrees, rimDiameter, angle, toe);
  if (angle === 'thrustAngle') return thrustText(degrees);
  if (angle === 'lateral') return formatAngle(degrees, { digits: 1, decimal: units.value.decimal });
  return angleText(degrees);
}

/** Thrust angle with the sign that this technician's maker uses; the side in words settles it. */
export function thrustText(degrees: number): string {
  const shown = units.value.thrust === 'right-plus' ? degrees : -degrees;
  const side = Math.abs(degrees) < 0.005 ? '' : degrees > 0 ? ' right' : ' left';
  return `${angleText(shown, true)}${side}`;
}

/** What a column of toe is in: `mm`, `in`, or the angle's own unit. */
export function toeUnitWord(toe: Units['toe'] = units.value.toe): string {
  return toe === 'angle' ? 'degrees' : toe === 'mm' ? 'mm at the rim' : 'inch at the rim';
}
