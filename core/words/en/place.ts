import type { Bearing, Place } from '../../said.ts';
import { bareLength, figure, lengthText, lengthUnit, partAngle } from '../../units/shop.ts';
import type { Units } from '../words.ts';
import { counted, plural, signed, turnsAndFlats } from './figures.ts';

export const wedge = (degrees: number, units?: Units): string =>
  degrees === 0 ? 'no wedge' : `${partAngle(degrees, units)} wedge`;
export const taper = ({ disc, part }: Extract<Place, { as: 'taper' }>, units?: Units): string =>
  disc
    ? `${partAngle(disc.taper, units)} ${part ?? 'shim'} at ${partAngle(disc.at, units, 1)}`
    : part
      ? `plain ${part}`
      : 'no shim';

type Sayings = { readonly [A in Place['as']]: (place: Extract<Place, { as: A }>, units?: Units) => string };

const SAYINGS: Sayings = {
  thickness: ({ mm }, units) => lengthText(mm, units),
  scale: ({ mm }, units) => `${mm > 0 ? '+' : ''}${bareLength(mm, units)} ${lengthUnit(units)}`,
  number: ({ label }) => `number ${label}`,
  chart: ({ label }) => `position ${label}`,
  label: ({ label }) => String(label),
  steps: ({ steps }, units) => `step ${figure(steps, units)}`,
  mark: ({ marks, degrees, side }, units) =>
    side ? offMiddle(marks, side) : `${mark(marks, units)} (${partAngle(degrees, units, 1)})`,
  angle: ({ degrees }, units) => partAngle(degrees, units, 1),
  tilt: ({ degrees }, units) => `${degrees > 0 ? '+' : ''}${partAngle(degrees, units, 2)}`,
  turns: ({ turns }) => `${turnsAndFlats(turns)}${turns === 0 ? '' : turns > 0 ? ' longer' : ' shorter'}`,
  wedge: ({ degrees }, units) => wedge(degrees, units),
  taper,
};

export const place = (one: Place, units?: Units): string =>
  (SAYINGS[one.as] as (place: Place, units?: Units) => string)(one, units);

/** `mark −2`; half way from one to the next `between marks 1 and 2`. */
export function mark(marks: number, units?: Units): string {
  const half = Math.round(marks * 2) / 2;
  if (Math.abs(marks - half) > 1e-6 || Number.isInteger(half)) return `mark ${signed(marks, units, 1)}`;
  const [a, b] = [Math.floor(half), Math.ceil(half)].sort((x, y) => Math.abs(x) - Math.abs(y));
  return `between marks ${signed(a!)} and ${signed(b!)}`;
}

/** `2 marks outboard from the middle`: where nobody said which way the marks count. */
export function offMiddle(marks: number, side: Bearing | 'end'): string {
  const count = plural(counted(Math.abs(marks)), 'mark');
  if (side === 'end') return marks === 0 ? 'the end of its travel' : `${count} from the end of its travel`;
  return marks === 0 ? 'the middle' : `${count} ${side} from the middle`;
}
