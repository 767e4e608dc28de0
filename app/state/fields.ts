/** The fields of a reading in the order in which a rack shows them, and what is typed in them. */

import { chartsCaster } from '../../core/adjuster/charts-caster.ts';
import type { Angle, Axle, AxleName, Car, Corner, Reading } from '../../core/contract.ts';
import { AXLES, isAxle } from '../../core/corners.ts';
import { InputError } from '../../core/input-error.ts';
import { unusual } from '../../core/reading/unusual.ts';
import { isOneOf, UNIT_CHOICES } from '../../core/records/preferences.ts';
import type { Rule } from '../../core/rule.ts';
import { suspensionKinds } from '../../core/suspension/catalogue.ts';
import type { Form } from './form.ts';
import type { Rack, Units } from './preferences.ts';
import { readAngle, readLength, readToe } from './units.ts';

/**
 * An angle of one wheel, the total toe of an axle where that is what the rack gives, or how the steering wheel, an axle on
 * links or the body above a wheel stands.
 */
export interface Field {
  /** `LF.camber`, `front.totalToe`: as in the form grid and the draft. */
  readonly id: string;
  readonly where: Corner | AxleName;
  readonly angle: Angle | 'totalToe' | keyof typeof STANDS;
}

/** How an axle on links, the steering wheel and the body stand, degrees and mm; what is usual of it nobody knows. */
const STANDS = {
  pinionAngle: 'Pinion',
  lateral: 'Axle left',
  steeringWheel: 'Steering wheel',
  rideHeight: 'Ride height',
};
const isOfStand = (angle: Field['angle']): angle is keyof typeof STANDS => angle in STANDS;
export const isOnLinks = ({ suspension }: Axle): boolean => !!suspensionKinds[suspension.kind]?.rigidAxle?.onLinks;

export const cornersOf = (axle: AxleName): readonly Corner[] => AXLES[axle];

/**
 * Caster and SAI are asked for on a steered axle with a steering axis; caster also where a chart says what it does to
 * caster.
 */
function anglesOf({ suspension, adjusters, rightAdjusters = [], steered }: Axle, sai: boolean): readonly Angle[] {
  const axis = steered && suspensionKinds[suspension.kind]?.steeringAxis !== undefined;
  if (axis) return sai ? ['caster', 'camber', 'toe', 'sai'] : ['caster', 'camber', 'toe'];
  const charted = steered && [...adjusters, ...rightAdjusters].some(chartsCaster);
  return charted ? ['caster', 'camber', 'toe'] : ['camber', 'toe'];
}

/** Whether SAI can be asked for anywhere on the car. */
export const hasSai = ({ front, rear }: Car): boolean =>
  [front, rear].some((axle) => anglesOf(axle, true).includes('sai'));

/** Whether toe of an axle can be taken as a total: wheels that steer are held straight by the steering wheel only. */
export const canTotal = (car: Car, axle: AxleName): boolean => axle === 'rear' || car.front.steered;

/** One row of the form: an angle of both wheels, or one figure for the axle. */
export function rowsOf(car: Car, axle: AxleName, form: Asked): readonly (readonly Field[])[] {
  const { sai, total, axle: stands, wheel, heights } = form;
  const field = (where: Corner | AxleName, angle: Field['angle']): Field => ({ id: `${where}.${angle}`, where, angle });
  const rows = anglesOf(car[axle], sai).map((angle) =>
    angle === 'toe' && total && canTotal(car, axle)
      ? [field(axle, 'totalToe')]
      : cornersOf(axle).map((corner) => field(corner, angle)),
  );
  // Height comes first: the angles hang on it.
  if (heights) rows.unshift(cornersOf(axle).map((corner) => field(corner, 'rideHeight')));
  if (wheel && axle === 'front' && car.front.steered) rows.push([field(axle, 'steeringWheel')]);
  return stands && isOnLinks(car[axle]) ? [...rows, [field(axle, 'pinionAngle')], [field(axle, 'lateral')]] : rows;
}

/** What of a form says which fields there are. */
type Asked = Omit<Form, 'reference'>;

export const fieldsOf = (car: Car, form: Asked): readonly Field[] =>
  (['front', 'rear'] as const).flatMap((axle) => rowsOf(car, axle, form).flat());

/**
 * The same as a rack goes through them: left and right of each angle, or all of a wheel and then the next. All ride heights
 * come before: they are taken with a tape, and a whole number must not follow on a figure that walks on by itself.
 */
export function walkOf(fields: readonly Field[], order: Rack['order']): readonly Field[] {
  const places: readonly Field['where'][] = ['LF', 'RF', 'front', 'LR', 'RR', 'rear'];
  const rank = ({ where, angle }: Field): number =>
    angle === 'rideHeight' ? -1 : order === 'across' ? 0 : places.indexOf(where);
  return [...fields].sort((a, b) => rank(a) - rank(b));
}

/** What a figure is, for how many decimals the rack shows of it; nothing of parts of an inch and of what no rack shows. */
export function figureOf({ angle }: Field, units: Units): keyof Rack['decimals'] | undefined {
  if (angle === 'rideHeight') return undefined;
  if (angle === 'lateral') return 'mm';
  if (!isToe(angle)) return 'angle';
  if (units.toe === 'angle') return 'toe';
  return units.toe === 'inch' && units.toeParts !== 'decimal' ? undefined : units.toe;
}

/** Among the typed texts: the units in which toe and lengths were typed, so that another choice later changes nothing. */
const TOE_UNIT = 'unit:toe';
const LENGTH_UNIT = 'unit:length';
export const unitTexts = ({ toe, length }: Pick<Units, 'toe' | 'length'>): Readonly<Record<string, string>> => ({
  [TOE_UNIT]: toe,
  [LENGTH_UNIT]: length,
});

/** The units that typed texts are in: those of when they were typed. */
export function unitsOf(texts: Readonly<Record<string, string>>, now: Units): Units {
  const { [TOE_UNIT]: toe, [LENGTH_UNIT]: length } = texts;
  if (!isOneOf(UNIT_CHOICES.toe, toe)) return now;
  // Before lengths were asked in the shop's unit they were typed in mm.
  return { ...now, toe, length: isOneOf(UNIT_CHOICES.length, length) ? length : 'mm' };
}

/** Whether a key of typed texts is a field of a reading. */
export const isField = (key: string): boolean => /^(LF|RF|LR|RR|front|rear)\./.test(key);

export interface Typed {
  /** Degrees. */
  readonly value?: number;
  /** Why the text is not a value: what it may be. */
  readonly error?: Rule;
  /** An unlikely value, of each wheel, and what it mostly is; it is taken all the same. */
  readonly unusual?: { readonly value: number; readonly usual: readonly [number, number] };
}

export function readField({ angle }: Field, text: string, units: Units, rimDiameter: number | undefined): Typed {
  if (text === '') return {};
  try {
    const value = readValue(angle, text, units, rimDiameter);
    if (value === undefined) return {};
    if (isOfStand(angle)) return { value };
    const each = angle === 'totalToe' ? value / 2 : value;
    const usual = unusual(angle === 'totalToe' ? 'toe' : angle, each);
    return usual ? { value, unusual: { value: each, usual } } : { value };
  } catch (error) {
    if (error instanceof InputError) return { error: error.rule };
    throw error;
  }
}

function readValue(
  angle: Field['angle'],
  text: string,
  units: Units,
  rimDiameter: number | undefined,
): number | undefined {
  if (isTape(angle)) return readLength(text, units);
  return isToe(angle) ? readToe(text, units, rimDiameter, angle) : readAngle(text);
}

/** What a tape gives: a length in the shop's own unit. */
export const isTape = (angle: Field['angle']): boolean => angle === 'lateral' || angle === 'rideHeight';
export const isToe = (angle: Field['angle']): angle is 'toe' | 'totalToe' => angle === 'toe' || angle === 'totalToe';

/** The reading as far as it can be read; what is empty or refused is absent. Each wheel has half of a total. */
export function readingOf(
  fields: readonly Field[],
  texts: Readonly<Record<string, string>>,
  now: Units,
  rimDiameter: number | undefined,
): Reading {
  const units = unitsOf(texts, now);
  const reading: { -readonly [P in keyof Reading]: Reading[P] } = {};
  for (const field of fields) {
    const { where, angle } = field;
    const { value } = readField(field, texts[field.id] ?? '', units, rimDiameter);
    if (value === undefined) continue;
    if (angle === 'steeringWheel') {
      reading.steeringWheel = value;
      continue;
    }
    if (isOfStand(angle)) {
      if (isAxle(where)) reading[where] = { ...reading[where], [angle]: value };
      else reading.rideHeights = { ...reading.rideHeights, [where]: value };
      continue;
    }
    const half = angle === 'totalToe' ? { toe: value / 2 } : { [angle]: value };
    for (const corner of isAxle(where) ? cornersOf(where) : [where]) reading[corner] = { ...reading[corner], ...half };
  }
  return reading;
}

const WORDS: Record<Field['angle'], string> = {
  caster: 'Caster',
  camber: 'Camber',
  toe: 'Toe',
  sai: 'SAI',
  totalToe: 'Total toe',
  ...STANDS,
};
export const angleWord = (angle: Field['angle']): string => WORDS[angle];
/** `LF camber`, `front total toe`. */
export const fieldWord = ({ where, angle }: Field): string =>
  angle === 'steeringWheel' ? WORDS[angle] : `${where} ${angle === 'sai' ? 'SAI' : WORDS[angle].toLowerCase()}`;
