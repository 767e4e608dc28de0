import type { Place } from '../../said.ts';
import { plain } from '../../units/plain.ts';

/** With the sign that a scale with a middle has. */
export const signed = (x: number, decimals?: number): string => `${x > 0 ? '+' : ''}${plain(x, decimals)}`;
/** Four decimals of a mm, so that a sixteenth of an inch is exact. */
export const shimMm = (mm: number): string => plain(mm, 4);
export const plural = (count: string, one: string): string => `${count} ${one}${count === '1' ? '' : 's'}`;

export const wedge = (degrees: number): string => (degrees === 0 ? 'no wedge' : `${plain(degrees)}° wedge`);
export const taper = (disc: Extract<Place, { as: 'taper' }>['disc']): string =>
  disc ? `${plain(disc.taper)}° shim at ${plain(disc.at, 1)}°` : 'no shim';

type Sayings = { readonly [A in Place['as']]: (place: Extract<Place, { as: A }>) => string };

const SAYINGS: Sayings = {
  thickness: ({ mm }) => `${shimMm(mm)} mm`,
  scale: ({ mm }) => `${signed(mm)} mm`,
  number: ({ label }) => `number ${label}`,
  chart: ({ label }) => `position ${label}`,
  label: ({ label }) => String(label),
  steps: ({ steps }) => `step ${plain(steps)}`,
  mark: ({ marks, degrees }) => `mark ${signed(marks, 1)} (${plain(degrees, 1)}°)`,
  angle: ({ degrees }) => `${plain(degrees, 1)}°`,
  tilt: ({ degrees }) => `${signed(degrees, 2)}°`,
  turns: ({ turns }) => `${signed(turns)} turns`,
  wedge: ({ degrees }) => wedge(degrees),
  taper: ({ disc }) => taper(disc),
};

export const place = (one: Place): string => (SAYINGS[one.as] as (place: Place) => string)(one);
