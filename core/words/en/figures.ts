/** Figures as a hand reads them: with their signs, and parts as parts. */
import { inFlats } from '../../units/flats.ts';
import { inQuarters } from '../../units/fractions.ts';
import { figure, type ShopUnits } from '../../units/shop.ts';

/** With the sign that a scale with a middle has. */
export const signed = (x: number, units?: ShopUnits, decimals?: number): string =>
  `${x > 0 ? '+' : ''}${figure(x, units, decimals)}`;
export const plural = (count: string, one: string): string => `${count} ${one}${/^(1|[¼½¾])$/.test(count) ? '' : 's'}`;

/** So many, halves and quarters as a hand counts them: `2½`; what is neither is near one, and said to be about. */
export function counted(count: number): string {
  const text = inQuarters(count);
  return Math.abs(count * 4 - Math.round(count * 4)) < 0.04 ? text : `about ${text}`;
}

/** "1 turn 2 flats", "½ flat", as hands count on a six-sided nut. */
export function turnsAndFlats(turns: number): string {
  const { whole, flats } = inFlats(turns);
  return [
    ...(whole > 0 || flats === 0 ? [plural(String(whole), 'turn')] : []),
    ...(flats > 0 ? [plural(counted(flats), 'flat')] : []),
  ].join(' ');
}
