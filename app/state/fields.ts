/** First load. The fields of a reading in the order in which a rack shows them, and what is typed in them. */
import {
  type Angle,
  type AxleName,
  type Car,
  CORNERS,
  type Corner,
  type Reading,
  type WheelReading,
} from '../../core/contract.ts';
import { InputError } from '../../core/input-error.ts';
import { suspensionKinds } from '../../core/suspension/catalogue.ts';
import { odd } from '../../core/units/odd.ts';
import type { Units } from './preferences.ts';
import { readAngle, readToe } from './units.ts';

export interface Field {
  /** `LF.camber`, as in the form grid and the draft. */
  readonly id: string;
  readonly corner: Corner;
  readonly angle: Angle;
}

export const axleOf = (corner: Corner): AxleName => (corner.endsWith('F') ? 'front' : 'rear');
export const cornersOf = (axle: AxleName): readonly Corner[] => CORNERS.filter((corner) => axleOf(corner) === axle);

/**
 * Caster and SAI are asked for where the suspension has a steering axis and the axle steers; caster also where a chart
 * stands for the geometry, as it may be about caster.
 */
export function anglesOf(car: Car, axle: AxleName, sai: boolean): readonly Angle[] {
  const kind = suspensionKinds[car[axle].suspension.kind];
  if (!car[axle].steered || !kind) return ['camber', 'toe'];
  if (kind.steeringAxis) return sai ? ['caster', 'camber', 'toe', 'sai'] : ['caster', 'camber', 'toe'];
  return kind.points.length === 0 ? ['caster', 'camber', 'toe'] : ['camber', 'toe'];
}

export function fieldsOf(car: Car, sai: boolean): readonly Field[] {
  return (['front', 'rear'] as const).flatMap((axle) =>
    anglesOf(car, axle, sai).flatMap((angle) =>
      cornersOf(axle).map((corner) => ({ id: `${corner}.${angle}`, corner, angle })),
    ),
  );
}

/** Among the typed texts: the unit in which toe was typed, so that another choice later changes nothing. */
export const TOE_UNIT = 'unit:toe';

/** The units that typed texts are in: those of when they were typed. */
export function unitsOf(texts: Readonly<Record<string, string>>, now: Units): Units {
  const toe = texts[TOE_UNIT];
  return toe === 'angle' || toe === 'mm' || toe === 'inch' ? { ...now, toe } : now;
}

/** Whether a key of typed texts is a field of a reading. */
export const isField = (key: string): boolean => /^(LF|RF|LR|RR)\./.test(key);

export interface Typed {
  /** Degrees. */
  readonly value?: number;
  /** Why the text is not a value. */
  readonly error?: string;
  /** What to ask about an unlikely value; it is taken all the same. */
  readonly question?: string;
}

export function readField(field: Field, text: string, units: Units, rimDiameter: number): Typed {
  if (text === '') return {};
  try {
    const value = field.angle === 'toe' ? readToe(text, units, rimDiameter) : readAngle(text);
    if (value === undefined) return {};
    const question = odd(field.angle, value);
    return question ? { value, question } : { value };
  } catch (error) {
    if (error instanceof InputError) return { error: error.allowed };
    throw error;
  }
}

/** The reading as far as it can be read; what is empty or refused is absent. */
export function readingOf(
  fields: readonly Field[],
  texts: Readonly<Record<string, string>>,
  now: Units,
  rimDiameter: number,
): Reading {
  const units = unitsOf(texts, now);
  const reading: Partial<Record<Corner, WheelReading>> = {};
  for (const field of fields) {
    const { value } = readField(field, texts[field.id] ?? '', units, rimDiameter);
    if (value !== undefined) reading[field.corner] = { ...reading[field.corner], [field.angle]: value };
  }
  return reading;
}

const WORDS: Record<Angle, string> = { caster: 'Caster', camber: 'Camber', toe: 'Toe', sai: 'SAI' };
export const angleWord = (angle: Angle): string => WORDS[angle];
export const fieldWord = ({ corner, angle }: Field): string => `${corner} ${angle === 'sai' ? 'SAI' : angle}`;
