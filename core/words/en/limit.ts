/** What limits a plan. */
import type { Limit } from '../../said.ts';

const ANGLES: Readonly<Record<string, string>> = {
  totalToe: 'total toe',
  crossCamber: 'cross camber',
  crossCaster: 'cross caster',
};

/** "Limited by LR toe: 62 %; nothing adjusts it." */
export function limit({ where, angle, chance, fixed, atStop = [] }: Limit): string {
  const share = Math.min(99, Math.max(1, Math.round(chance * 100)));
  const why = fixed ? '; nothing adjusts it' : atStop.length > 0 ? `; at the end of travel: ${stops(atStop)}` : '';
  return `Limited by ${where} ${name(where, angle)}: ${share} %${why}.`;
}

const stops = (atStop: NonNullable<Limit['atStop']>): string =>
  atStop.map(({ corner, name }) => `${corner} ${name}`).join(', ');

function name(where: string, angle: string): string {
  if (angle === 'thrustAngle') return where === 'front' ? 'steer-ahead' : 'thrust angle';
  return ANGLES[angle] ?? angle;
}
