import type { Angle } from '../../contract.ts';
import { formatAngle } from '../../units/format.ts';

const ANGLES: Readonly<Record<Angle, string>> = { camber: 'Camber', caster: 'Caster', toe: 'Toe', sai: 'SAI' };

/** "Camber 12.00° is unusual (mostly −6.00 to 6.00). Is it right?" */
export function unusual(angle: Angle, value: number, [low, high]: readonly [number, number]): string {
  const usual = `${formatAngle(low)} to ${formatAngle(high)}`;
  return `${ANGLES[angle]} ${formatAngle(value, { mark: true })} is unusual (mostly ${usual}). Is it right?`;
}
