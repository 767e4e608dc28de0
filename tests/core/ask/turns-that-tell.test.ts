/** A turn that tells where an adjuster stands of which nobody knows. */
import { describe, expect, it } from 'vitest';
import type { CarFile, Reading } from '../../../core/contract.ts';
import { turnsThatTell } from '../../../core/index.ts';
import { cam, wishboneWithin } from '../../tools/learn-cars.ts';
import { rod } from '../../tools/random-cars.ts';
import { frontCar } from '../../tools/read-car.ts';

const found: Reading = { LF: { camber: 0.6, caster: 3.1, toe: 0.7 } };

describe('a cam of unknown place', () => {
  const car = frontCar(wishboneWithin(5), [cam('cam', 'lowerFront', 1), rod('rod', 'tieInner', 8)]);
  const unknown = [{ corner: 'LF', adjuster: 'cam' }] as const;

  it('is to be turned by a quarter of its travel, one way or the other, counted from where it is', () => {
    const file: CarFile = {
      ...{ format: 'cornerwright', version: 1, car },
      visits: [
        {
          ...{ id: 'v', carId: car.id, opened: '2026-03-02' },
          rounds: [{ id: 'found', reading: found, settings: { LF: { cam: 30 } }, unknown }],
        },
      ],
    };
    expect(turnsThatTell(file).watch).toEqual([
      expect.objectContaining({ ...unknown[0], from: 30, to: [75, -15], said: expect.objectContaining({ by: 3 }) }),
    ]);
  });
});
