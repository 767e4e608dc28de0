/** Angles and toe as this technician types and reads them; the core's units with the chosen ones filled in. */
import { signal } from '@preact/signals';
import type { Car } from '../../core/contract.ts';
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
/** The same of a length such as how far an axle stands aside. */
export const canReadLengths = (): boolean => lengths() !== undefined;

/**
 * Degrees from a typed angle. A point is always decimal degrees and ° always splits off minutes, whichever the
 * keypad is set to now, so that changing it half way changes nothing that was typed before.
 * @throws InputError
 */
export const readAngle = (text: string): number => parseAngle(text);

/** The units in which a car is read: toe is an angle where nobody has said at which diameter it is a length. */
export const unitsFor = ({ wheel }: Pick<Car, 'wheel'>, now: Units = units.value): Units =>
  wheel.rimDiameter === undefined ? { ...now, toe: 'angle' } : now;

/**
 * mm of a typed length; undefined for the moment that the length units load.
 * @throws InputError
 */
export const readLength = (text: string, { length }: Pick<Units, 'length'>): number | undefined =>
  lengths()?.parseLength(text, { unit: length });

type ToeAngle = 'toe' | 'totalToe';
/** Lengths of both wheels add up; the sine of the sum of their angles does not. */
const wheelsIn = (angle: ToeAngle): number => (angle === 'totalToe' ? 2 : 1);

/**
 * Degrees of toe of a wheel or of an axle, from an angle or from a length at the rim; undefined for the moment that the
 * length units load.
 * @throws InputError
 */
export function readToe(
  text: string,
  { toe }: Units,
  rimDiameter: number | undefined,
  angle: ToeAngle,
): number | undefined {
  if (toe === 'angle' || rimDiameter === undefined) return parseAngle(text);
  const mm = lengths()?.parseLength(text, { unit: toe, field: 'toe' });
  const wheels = wheelsIn(angle);
  return mm === undefined ? undefined : lengthToToe(mm / wheels, rimDiameter) * wheels;
}

/** An angle in the chosen units. */
export function angleText(degrees: number, sign = false): string {
  return formatAngle(degrees, { mode: units.value.angle, decimal: units.value.decimal, sign });
}

/** Toe of a wheel or of an axle in a unit, without the unit's name. */
function toeText(degrees: number, rimDiameter: number | undefined, angle: ToeAngle, toe: Units['toe']): string {
  if (toe === 'angle') return angleText(degrees);
  // With its mark: nobody takes it for a length.
  if (rimDiameter === undefined)
    return formatAngle(degrees, { mode: units.value.angle, decimal: units.value.decimal, mark: true });
  const length = lengths();
  if (!length) return '…';
  const digits = toe === 'mm' ? 1 : 2;
  const { decimal, toeParts } = units.value;
  const parts = toe === 'inch' && toeParts !== 'decimal' ? ({ fraction: toeParts === '16' ? 16 : 32 } as const) : {};
  const wheels = wheelsIn(angle);
  const mm = toeToLength(degrees / wheels, rimDiameter) * wheels;
  return length.formatLength(mm, { unit: toe, digits, bare: true, decimal, ...parts });
}

/** Any wheel or axle angle by its name; toe and total toe follow the toe unit; what a tape gives has its unit with it. */
export function valueText(
  angle: string,
  degrees: number,
  rimDiameter: number | undefined,
  toe: Units['toe'] = units.value.toe,
): string {
  if (angle === 'toe' || angle === 'totalToe') return toeText(degrees, rimDiameter, angle, toe);
  if (angle === 'thrustAngle') return thrustText(degrees);
  if (angle === 'lateral') return asideText(degrees);
  if (angle === 'rideHeight' || angle === 'crossHeight') return heightText(degrees, angle === 'crossHeight');
  return angleText(degrees);
}

/** A wheel's angle within a sentence: with its mark, or the unit of a length. */
export function figureText(car: Pick<Car, 'wheel'>, angle: 'camber' | 'caster' | 'toe', degrees: number): string {
  const { toe } = unitsFor(car);
  const text = valueText(angle, degrees, car.wheel.rimDiameter, toe);
  if (angle === 'toe' && toe !== 'angle') return `${text} ${toe === 'mm' ? 'mm' : 'in'} of`;
  return units.value.angle === 'degrees' ? `${text}°` : text;
}

/** mm as a tape has them: `1.2 mm`, `0.05 in`. */
function asideText(mm: number): string {
  const { length, decimal } = units.value;
  if (length === 'mm') return `${formatAngle(mm, { digits: 1, decimal })} mm`;
  return lengths()?.formatLength(mm, { unit: length, digits: 2, decimal }) ?? '…';
}

/** mm as a tape has them, no finer than it need be: `385 mm`, `−4.5 mm`, `15.16 in`. */
function heightText(mm: number, sign: boolean): string {
  const { length, decimal } = units.value;
  const digits = length === 'inch' ? 2 : Math.abs(mm - Math.round(mm)) < 0.05 ? 0 : 1;
  const text = length === 'mm' ? `${formatAngle(mm, { digits, decimal, sign })} mm` : inches(mm, digits, sign);
  // A figure and its unit stay in one line of a narrow table.
  return text.replace(' ', '\u00a0');
}

const inches = (mm: number, digits: number, sign: boolean): string =>
  lengths()?.formatLength(mm, { unit: 'inch', digits, decimal: units.value.decimal, sign }) ?? '…';

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
