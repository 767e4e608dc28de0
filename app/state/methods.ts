/** What a figure of an entry was measured with, where it came from the bench: among the typed texts, so that it is kept with them. */
import { MEASURED_BY, type Measuring, type Methods, type Reading } from '../../core/contract.ts';
import { isAxle } from '../../core/corners.ts';
import { isOneOf } from '../../core/records/preferences.ts';
import { cornersOf, type Field } from './fields.ts';
import { units } from './preferences.ts';
import { angleText, valueText } from './units.ts';

const METHOD = 'method:';
type Texts = Readonly<Record<string, string>>;

/** The text that says how a field was measured: it holds as long as the field has the figure that it was measured as. */
export const methodTexts = (fieldId: string, text: string, { by, sd }: Measuring): Texts => ({
  [METHOD + fieldId]: `${by} ${Number(sd.toPrecision(3))} ${text}`,
});

/** How a field's figure was measured; nothing where it was typed, or typed over. */
export function methodOf(texts: Texts, fieldId: string): Measuring | undefined {
  const [by, sd, ...figure] = (texts[METHOD + fieldId] ?? '').split(' ');
  const holds = figure.join(' ') === texts[fieldId] && Number(sd) >= 0 && Number(sd) <= 10;
  return isOneOf(MEASURED_BY, by) && holds ? { by, sd: Number(sd) } : undefined;
}

/** A reading with what its figures were measured with. Each wheel has 1/√2 of what a total may be off. */
export function withMethods(reading: Reading, fields: readonly Field[], texts: Texts): Reading {
  const methods: Record<string, Record<string, Measuring>> = {};
  const put = (where: string, angle: string, one: Measuring) => {
    methods[where] = { ...methods[where], [angle]: one };
  };
  for (const { id, where, angle } of fields) {
    const one = methodOf(texts, id);
    if (!one) continue;
    if (angle === 'totalToe' && isAxle(where)) {
      for (const corner of cornersOf(where)) put(corner, 'toe', { ...one, sd: one.sd * Math.SQRT1_2 });
    } else if (angle !== 'rideHeight' && angle !== 'steeringWheel') put(where, angle, one);
  }
  return Object.keys(methods).length > 0 ? { ...reading, methods: methods as Methods } : reading;
}

/** As a sheet names them. */
export const METHOD_WORDS: Readonly<Record<Measuring['by'], string>> = {
  sweep: 'steering sweep',
  tape: 'tape across',
  plates: 'toe plates',
  string: 'string',
  level: 'level',
  plumb: 'plumb line',
  phone: 'phone',
  'side-slip': 'side slip plate',
};

/** What of a reading was not read off the rack: "LF, RF toe: string, ± 0.06°", a method and scatter each. */
export function measuredWith({ methods = {} }: Reading): readonly string[] {
  const told = new Map<string, string[]>();
  for (const [where, angles] of Object.entries(methods)) {
    for (const [angle, { by, sd }] of Object.entries(angles) as [Field['angle'], Measuring][]) {
      const off =
        angle === 'lateral' ? lengthText(sd) : `${angleText(sd)}${units.value.angle === 'degrees' ? '°' : ''}`;
      const key = `${NAMES[angle] ?? angle}: ${METHOD_WORDS[by]}, ± ${off}`;
      told.set(key, [...(told.get(key) ?? []), where]);
    }
  }
  return [...told].map(([key, places]) => `${places.join(', ')} ${key}`);
}
const NAMES: Readonly<Partial<Record<Field['angle'], string>>> = {
  sai: 'SAI',
  pinionAngle: 'pinion angle',
  lateral: 'place across',
};
const lengthText = (mm: number): string => valueText('lateral', mm, undefined);
