/** A shim's size as it is stamped: the shop's unit, inches as fractions where they are some. */

import { millionths } from '../../core/units/shim-drawer.ts';
import { lengthText } from '../../core/units/shop.ts';
import { units } from './preferences.ts';

export const sameSize = (a: number, b: number): boolean => millionths(a) === millionths(b);

/** `1.5 mm`, `1/16 in`, `0.0591 in`: as many digits as the size has. */
export const sizeText = (mm: number): string => lengthText(mm, units.value);
