/**
 * The bend that is hidden in a visit of the practice car: one part of one front wheel, told by its id alone. It shows as
 * such a part does: one that moves a ball joint tilts wheel and steering axis as much one way as the other, a bent knuckle
 * the wheel alone.
 */
import type { Corner, Suspension } from '../../core/contract.ts';
import { seeded, within } from './seed.ts';

export interface Bend {
  readonly corner: Corner;
  readonly part: 'knuckle' | 'lower arm' | 'upper arm';
  /** Degrees that the wheel's camber and SAI are off. */
  readonly camber: number;
  readonly sai: number;
}

/** Degrees: seen for sure beside what the gauge scatters and the sides differ by, and what the adjusters can take out. */
const [SIZE, VARIES] = [1.25, 0.08] as const;

export function bendOf(visitId: string, { points }: Suspension): Bend {
  const next = seeded(`hidden ${visitId}`);
  const corner = next() < 0.5 ? 'LF' : 'RF';
  const size = SIZE + within(next, VARIES);
  const parts = points.upperBall ? (['knuckle', 'lower arm', 'upper arm'] as const) : (['knuckle'] as const);
  const part = parts[Math.floor(next() * parts.length)] ?? 'knuckle';
  if (part === 'lower arm') return { corner, part, camber: size, sai: -size };
  if (part === 'upper arm') return { corner, part, camber: -size, sai: size };
  return { corner, part, camber: next() < 0.5 ? size : -size, sai: 0 };
}
