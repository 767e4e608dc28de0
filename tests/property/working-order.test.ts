/**
 * The order in which moves are made: rear before front, caster, camber and toe last (Nissan and Volvo service manuals, US
 * Army TM 5-4210-230-14&P-1); cams of a lower arm for camber before caster (Mazda MX-5 2016 service manual).
 */
import { describe, expect, it } from 'vitest';
import type { Adjuster, Car, Plan, Suspension, Vec3 } from '../../core/contract.ts';
import { adjusterEffects, planMoves } from '../../core/index.ts';
import { startersFor } from '../../core/starters/catalogue.ts';
import { type Starter, suspensionFromStarter } from '../../core/starters/starter.ts';

const strut = suspensionFromStarter(startersFor('strut', 'front')[0] as Starter, 'front');
const wishbone = suspensionFromStarter(startersFor('double-wishbone', 'front')[0] as Starter, 'front');
/** A lower arm whose front pivot lies straight inboard of its ball joint: that one is for camber, the rear one for caster. */
const lShaped: Suspension = {
  ...wishbone,
  points: {
    ...wishbone.points,
    lowerFront: [wishbone.points.lowerBall?.[0] ?? 0, wishbone.points.lowerFront?.[1] ?? 0, 205],
    lowerRear: [-700, wishbone.points.lowerRear?.[1] ?? 0, 205],
  },
};
const rearSuspension = suspensionFromStarter(startersFor('five-link', 'rear')[0] as Starter, 'rear');
const cam = (id: string, at: string, direction: Vec3 = [0, 1, 0]): Adjuster => ({
  id,
  name: id,
  kind: 'eccentric-cam',
  at,
  direction,
  eccentricity: 6,
  marks: 24,
  range: [-90, 90],
  zero: 'middle',
  reference: 0,
});
const rod = (link: string): Adjuster => ({
  id: 'rod',
  name: 'rod',
  kind: 'threaded-rod',
  links: [link],
  lead: 1.5,
  stepTurns: 1 / 12,
  range: [-6, 6],
  reference: 0,
});
const window = (aim: number, half: number) => ({ low: aim - half, aim, high: aim + half });

function plan(suspension: Suspension, front: readonly Adjuster[]): Plan {
  const car: Car = {
    id: 'order',
    label: 'Order',
    wheel: { rimDiameter: 420 },
    front: { suspension, adjusters: front, steered: true },
    // Typed in an order that is not the working order.
    rear: { suspension: rearSuspension, adjusters: [rod('inner5'), cam('upper', 'inner1')], steered: false },
  };
  const wheel = { camber: 0.4, caster: 2, toe: 0.6 };
  return planMoves({
    car,
    reading: { LF: wheel, RF: wheel, LR: { camber: -2, toe: 0.6 }, RR: { camber: -2, toe: 0.6 } },
    spec: {
      front: { camber: window(-0.3, 0.2), caster: window(2.6, 0.2), toe: window(0.05, 0.05) },
      rear: { camber: window(-1.2, 0.2), toe: window(0.1, 0.05) },
    },
    settings: {},
  });
}

const order = ({ moves }: Plan, axle: 'F' | 'R'): string[] =>
  moves.filter(({ corner }) => corner.endsWith(axle)).map(({ corner, adjuster }) => `${corner} ${adjuster}`);

describe('the working order', () => {
  const plate = (id: string, direction: Vec3): Adjuster => ({
    id,
    name: id,
    kind: 'slide',
    at: 'strutTop',
    direction,
    step: 1,
    range: [-24, 24],
    reference: 0,
  });
  const plates = [rod('tieInner'), plate('across', [0, 1, 0]), plate('along', [-1, 0, 0])];
  const lower = [rod('tieInner'), cam('back', 'lowerRear'), cam('ahead', 'lowerFront')];
  const byPlates = plan(strut, plates);

  it('the rear axle comes before the front one', () => {
    const axles = byPlates.moves.map(({ corner }) => corner[1]);
    expect(axles).toContain('R');
    expect(axles.join('')).toMatch(/^R+F+$/);
  });

  it('caster, then camber, then toe, both wheels of an axle together', () => {
    expect(order(byPlates, 'F')).toEqual(['LF along', 'RF along', 'LF across', 'RF across', 'LF rod', 'RF rod']);
    expect(order(byPlates, 'R')).toEqual(['LR upper', 'RR upper', 'LR rod', 'RR rod']);
  });

  it('with cams at the lower arm camber comes before caster', () => {
    const [, back, ahead] = adjusterEffects(lShaped, lower);
    expect(Math.abs(back?.caster ?? 0)).toBeGreaterThan(Math.abs(back?.camber ?? 0));
    expect(Math.abs(ahead?.caster ?? 0)).toBeLessThan(Math.abs(ahead?.camber ?? 0));
    const lean = order(plan(lShaped, lower), 'F').filter((move) => !move.endsWith('rod'));
    expect(lean).toEqual(['LF ahead', 'RF ahead', 'LF back', 'RF back']);
  });
});
