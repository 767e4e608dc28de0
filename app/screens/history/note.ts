/** What its figures are in and against: said once for all lines, on the glass and on each page. */

import type { Car } from '../../../core/contract.ts';
import { isAgainst } from '../../../core/reading/toe-reference.ts';
import { lineText } from '../../state/against.ts';
import { units } from '../../state/preferences.ts';
import { toeUnitWord, unitsFor } from '../../state/units.ts';
import type { History } from './past.ts';

export function noteOf({ lines, reference, leftOut }: History, car: Car): string {
  const hasLength = unitsFor(car).toe !== 'angle' && lines.some(({ angle }) => angle === 'toe' || angle === 'totalToe');
  // Minutes have their marks.
  const told = [
    ...(units.value.angle === 'degrees' ? ['angles in degrees'] : []),
    ...(hasLength ? [`toe in ${toeUnitWord()}`] : []),
  ].join(', ');
  const out = leftOut > 0 ? `; left out where it was read without rear toe (${leftOut})` : '';
  const against = lines.some(({ where, angle }) => isAgainst(where, angle))
    ? `Front toe against ${lineText(reference)}${out}.`
    : '';
  return [told && `${told[0]!.toUpperCase()}${told.slice(1)}.`, against].filter(Boolean).join(' ');
}
