/** Usual adjusters of a layout: each is whole, moves its wheel as its name says, and can be planned with. */
import { describe, expect, it } from 'vitest';
import { adjusterEffects, adjusterKinds, axleEffects, suspensionKinds, validateCar } from '../../../core/index.ts';
import { starters } from '../../../core/starters/catalogue.ts';
import { fitmentsFor } from '../../../core/starters/fitments.ts';
import { suspensionFromStarter } from '../../../core/starters/starter.ts';

const cases = starters.map((starter) => [`${starter.kind}, ${starter.axle}`, starter] as const);

describe.each(cases)('%s', (_, starter) => {
  const { kind, axle } = starter;
  const suspension = suspensionFromStarter(starter, axle);
  const fitments = fitmentsFor(kind, axle);

  it('has some, under ids and names that no other of them has', () => {
    expect(fitments.length).toBeGreaterThan(0);
    for (const of of ['id', 'name'] as const) {
      const all = fitments.map((one) => one[of]);
      expect(new Set(all).size).toBe(all.length);
      // Of those that a car has one of, both may be called alike.
      const together = fitments.filter(
        (one, i) => !one.oneOf || fitments.findIndex((other) => other.oneOf === one.oneOf) === i,
      );
      const own = (of === 'id' ? fitments : together).flatMap(({ adjusters }) => adjusters.map((one) => one[of]));
      expect(new Set(own).size).toBe(own.length);
    }
  });

  it('is a car with all of them, and nothing that a check would add to', () => {
    const adjusters = fitments.flatMap((one) => one.adjusters);
    const made = { suspension, adjusters, steered: axle === 'front' };
    const car = validateCar({ id: 'c', label: 'c', wheel: {}, front: made, rear: made });
    expect(car.front.adjusters).toEqual(adjusters);
  });

  it('moves its wheel with each', () => {
    for (const fitment of fitments) {
      const effects = suspensionKinds[kind]?.rigidAxle
        ? axleEffects({ suspension, adjusters: fitment.adjusters, steered: axle === 'front' }).left
        : adjusterEffects(suspension, fitment.adjusters);
      for (const { camber, toe, caster = 0 } of effects) {
        expect(Math.abs(camber) + Math.abs(toe) + Math.abs(caster), fitment.name).toBeGreaterThan(0.01);
      }
      expect(effects).toHaveLength(fitment.adjusters.length);
      for (const { kind: own } of fitment.adjusters) expect(adjusterKinds[own]).toBeDefined();
    }
  });
});

it('shims push the upper arm out or pull it in as their names say: camber rises or falls', () => {
  const starter = starters.find((one) => one.kind === 'double-wishbone' && one.axle === 'front')!;
  const suspension = suspensionFromStarter(starter, 'front');
  const of = (id: string) =>
    adjusterEffects(suspension, fitmentsFor('double-wishbone', 'front').find((one) => one.id === id)!.adjusters);
  for (const { camber } of of('shims-out')) expect(camber).toBeGreaterThan(0);
  for (const { camber } of of('shims-in')) expect(camber).toBeLessThan(0);
});

it('nothing is known of a layout without geometry', () => {
  expect(fitmentsFor('unknown', 'front')).toEqual([]);
  expect(fitmentsFor('constructor', 'front')).toEqual([]);
});
