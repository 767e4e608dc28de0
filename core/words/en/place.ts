import type { Place } from '../../said.ts';
import { plain } from '../../units/plain.ts';
import type { Units } from '../words.ts';
import { bareLength, lengthText, signed, unitOf } from './figures.ts';

export const wedge = (degrees: number): string => (degrees === 0 ? 'no wedge' : `${plain(degrees)}° wedge`);
export const taper = ({ disc, part }: Extract<Place, { as: 'taper' }>): string =>
  disc ? `${plain(disc.taper)}° ${part ?? 'shim'} at ${plain(disc.at, 1)}°` : part ? `plain ${part}` : 'no shim';

type Sayings = { readonly [A in Place['as']]: (place: Extract<Place, { as: A }>, units?: Units) => string };

const SAYINGS: Sayings = {
  thickness: ({ mm }, units) => lengthText(mm, units),
  scale: ({ mm }, units) => `${mm > 0 ? '+' : ''}${bareLength(mm, units)} ${unitOf(units)}`,
  number: ({ label }) => `number ${label}`,
  chart: ({ label }) => `position ${label}`,
  label: ({ label }) => String(label),
  steps: ({ steps }) => `step ${plain(steps)}`,
  mark: ({ marks, degrees }) => `${mark(marks)} (${plain(degrees, 1)}°)`,
  angle: ({ degrees }) => `${plain(degrees, 1)}°`,
  tilt: ({ degrees }) => `${signed(degrees, 2)}°`,
  turns: ({ turns }) => `${signed(turns)} turns`,
  wedge: ({ degrees }) => wedge(degrees),
  taper,
};

export const place = (one: Place, units?: Units): string =>
  (SAYINGS[one.as] as (place: Place, units?: Units) => string)(one, units);

/** `mark −2`; half way from one to the next `between marks 1 and 2`. */
export function mark(marks: number): string {
  const half = Math.round(marks * 2) / 2;
  if (Math.abs(marks - half) > 1e-6 || Number.isInteger(half)) return `mark ${signed(marks, 1)}`;
  const [a, b] = [Math.floor(half), Math.ceil(half)].sort((x, y) => Math.abs(x) - Math.abs(y));
  return `between marks ${signed(a!)} and ${signed(b!)}`;
}
