import type { Angle } from '../../contract.ts';
import { type ShopUnits, wheelAngle } from '../../units/shop.ts';

const ANGLES: Readonly<Record<Angle, string>> = { camber: 'Camber', caster: 'Caster', toe: 'Toe', sai: 'SAI' };

/** "Camber 12.00° is unusual (mostly −6.00° to 6.00°). Is it right?" */
export function unusual(
  angle: Angle,
  value: number,
  [low, high]: readonly [number, number],
  units?: ShopUnits,
): string {
  const usual = `${wheelAngle(low, units)} to ${wheelAngle(high, units)}`;
  return `${ANGLES[angle]} ${wheelAngle(value, units)} is unusual (mostly ${usual}). Is it right?`;
}
