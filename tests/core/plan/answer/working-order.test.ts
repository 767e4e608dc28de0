import { describe, expect, it } from 'vitest';
import type { Adjuster } from '../../../../core/contract.ts';
import { hasLowerCams, type Role, rankOf, roleOf } from '../../../../core/plan/answer/working-order.ts';
import { Mechanism } from '../../../../core/pose/mechanism.ts';
import { LAYOUTS, rod } from '../../../tools/random-cars.ts';

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

describe('where a move stands', () => {
  const ROLES = ['caster', 'camber', 'toe'] as const;
  const order = (lowerCams: boolean) =>
    (['LF', 'RF', 'LR', 'RR'] as const)
      .flatMap((corner) => ROLES.map((role) => ({ at: `${corner} ${role}`, rank: rankOf(corner, role, lowerCams) })))
      .sort((a, b) => a.rank - b.rank)
      .map(({ at }) => at);

  it('rear before front, caster before camber before toe, left before right', () => {
    expect(order(false)).toEqual([
      'LR caster',
      'RR caster',
      'LR camber',
      'RR camber',
      'LR toe',
      'RR toe',
      'LF caster',
      'RF caster',
      'LF camber',
      'RF camber',
      'LF toe',
      'RF toe',
    ]);
  });

  it('camber before caster where there are cams at a lower arm', () => {
    expect(order(true)).toEqual([
      'LR camber',
      'RR camber',
      'LR caster',
      'RR caster',
      'LR toe',
      'RR toe',
      'LF camber',
      'RF camber',
      'LF caster',
      'RF caster',
      'LF toe',
      'RF toe',
    ]);
  });
});

describe('cams at a lower arm', () => {
  const suspension = { kind: 'double-wishbone', points: LAYOUTS['double-wishbone'] ?? {}, camber: 0, toe: 0 };
  const eccentric = (at: string): Adjuster => ({
    id: at,
    kind: 'eccentric-cam',
    at,
    direction: [0, 1, 0],
    eccentricity: 3,
    marks: 12,
    range: [-90, 90],
    zero: 'middle',
    reference: 0,
  });
  const numbered = (at: string): Adjuster => ({
    id: at,
    kind: 'indexed-cam',
    at,
    positions: [{ label: '1', offset: [0, 0, 0] }],
    reference: '1',
  });
  const slide = (at: string): Adjuster => ({
    id: at,
    kind: 'slide',
    at,
    direction: [0, 1, 0],
    step: 1,
    range: [-3, 3],
    reference: 0,
  });
  it.each([
    ['an eccentric one there', [eccentric('lowerFront')], true],
    ['a numbered one there', [numbered('lowerRear')], true],
    ['one there beside others', [slide('upperRear'), rod('rod', 'tieInner'), eccentric('lowerRear')], true],
    ['one at the upper arm', [eccentric('upperFront')], false],
    ['a slide at the lower arm', [slide('lowerFront')], false],
    ['none', [], false],
  ] as const)('%s: %s', (_, adjusters, has) => {
    expect(hasLowerCams({ suspension, adjusters })).toBe(has);
  });

  it('there are none where there is no lower arm', () => {
    const beam = { kind: 'unknown', points: {}, camber: 0, toe: 0 };
    expect(hasLowerCams({ suspension: beam, adjusters: [eccentric('lowerFront')] })).toBe(false);
  });
});

it('one of a kind that is not known is taken to be there for camber', () => {
  const bare = { kind: 'unknown', points: {}, camber: 0, toe: 0 };
  const model = Mechanism.ofCorner(bare, []).corner();
  expect(roleOf(model, { id: 'a', kind: 'no such kind', reference: 0 })).toBe('camber');
});
