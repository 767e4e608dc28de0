import { describe, expect, it } from 'vitest';
import type { Adjuster } from '../../../../core/contract.ts';
import { type Role, roleOf } from '../../../../core/plan/answer/working-order.ts';
import { Mechanism } from '../../../../core/pose/mechanism.ts';

/** What an adjuster is there for that adds so many degrees a step, by its printed chart. */
function roleOfStep(degrees: Readonly<Partial<Record<Role, number>>>): Role {
  const chart: Adjuster = { id: 'a', kind: 'effect-table', perStep: degrees, range: [-2, 2], reference: 0 };
  return roleOf(Mechanism.ofCorner({ kind: 'unknown', points: {}, camber: 0, toe: 0 }, [chart]).corner(), chart);
}

// Trade practice without a source.
describe('an adjuster is there for toe where it turns the wheel more than twice as much as it leans it', () => {
  it.each([
    [{ toe: 0.1 }, 'toe'],
    [{ camber: 0.1, toe: 0.21 }, 'toe'],
    [{ camber: 0.1, toe: 0.19 }, 'camber'],
    [{ camber: -0.1, toe: 0.21 }, 'toe'],
    [{ camber: 0.1, toe: -0.21 }, 'toe'],
    [{ caster: 0.1, toe: 0.21 }, 'toe'],
    [{ caster: 0.1, toe: 0.19 }, 'caster'],
    [{ caster: -0.1, camber: 0.05, toe: -0.19 }, 'caster'],
    // Leaning is what it does most of, be it camber or caster.
    [{ caster: 0.05, camber: 0.1, toe: 0.19 }, 'camber'],
    [{ caster: 0.1, camber: 0.05, toe: 0.19 }, 'caster'],
  ] as const)('%j: %s', (degrees, role) => {
    expect(roleOfStep(degrees)).toBe(role);
  });
});

describe('one that leans the wheel is there for what it does more of', () => {
  it.each([
    [{ camber: 0.2, caster: 0.1 }, 'camber'],
    [{ camber: 0.1, caster: 0.2 }, 'caster'],
    [{ camber: -0.2, caster: 0.1 }, 'camber'],
    [{ camber: 0.1, caster: -0.2 }, 'caster'],
  ] as const)('%j: %s', (degrees, role) => {
    expect(roleOfStep(degrees)).toBe(role);
  });
});
