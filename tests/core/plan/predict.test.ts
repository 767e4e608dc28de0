/** What the rack will read, where no pose exists and where not all was read. */
import { describe, expect, it } from 'vitest';
import type { Car, CarSettings, Reading } from '../../../core/contract.ts';
import { predictWith } from '../../../core/plan/predict.ts';
import { compileCar } from '../../../core/pose/car-model.ts';
import { LAYOUTS, rod } from '../../tools/random-cars.ts';

const suspension = { kind: 'double-wishbone', points: LAYOUTS['double-wishbone'] ?? {}, camber: 0, toe: 0 };
const turn = { id: 'turn', kind: 'effect-table', perStep: { toe: 0.1, caster: 1 }, range: [-5, 5], reference: 0 };
const car: Car = {
  id: 'a',
  label: 'a',
  wheel: { rimDiameter: 420 },
  front: { suspension, adjusters: [{ ...rod('rod', 'tieInner', 60, 5), lead: 4 }], steered: true },
  rear: { suspension: { kind: 'unknown', points: {}, camber: 0, toe: 0 }, adjusters: [turn], steered: false },
};
const model = compileCar(car);
const predict = (reading: Reading, from: CarSettings, to: CarSettings) => predictWith(model, reading, from, to);

describe('a wheel whose links do not reach', () => {
  it.each([
    [{}, { LF: { rod: 60 } }],
    [{ LF: { rod: 60 } }, {}],
  ])('from %j to %j has no angles and is named with where it stands', (from, to) => {
    const { LF, RF, unreachable } = predict({ LF: { toe: 0 }, RF: { toe: 0.2 } }, from, to);
    expect(LF).toBeUndefined();
    expect(RF?.toe).toBeCloseTo(0.2, 12);
    expect(unreachable?.map(({ corner }) => corner)).toEqual(['LF']);
    expect(unreachable?.[0]?.at?.length).toBeGreaterThan(0);
  });

  it('is not asked about where it was not read', () => {
    const after = predict({ RF: { toe: 0.2 } }, {}, { LF: { rod: 60 } });
    expect(after).toEqual({ RF: { toe: expect.closeTo(0.2, 12) } });
  });
});

describe('against the thrust line', () => {
  const to: CarSettings = { LR: { turn: 2 }, RR: { turn: -1 } };
  // Rear toe of +0.2° left and −0.1° right turns the line by half of 0.3°.
  it('front toe follows rear wheels that were not read', () => {
    const reading: Reading = { LF: { toe: 0.1 }, RF: { toe: 0.3, camber: 1 }, toeReference: 'thrust-line' };
    expect(predict(reading, {}, to)).toEqual({
      LF: { toe: expect.closeTo(0.1 - 0.15, 12) },
      RF: { toe: expect.closeTo(0.3 + 0.15, 12), camber: expect.closeTo(1, 12) },
      toeReference: 'thrust-line',
    });
  });

  it('or one of them alone; a wheel without toe stays without', () => {
    const reading: Reading = { LF: { camber: 0.1 }, RF: { toe: 0.3 }, toeReference: 'thrust-line' };
    expect(predict(reading, {}, { LR: { turn: 2 } })).toEqual({
      LF: { camber: expect.closeTo(0.1, 12) },
      RF: { toe: expect.closeTo(0.3 + 0.1, 12) },
      toeReference: 'thrust-line',
    });
  });

  it('and not where it is read against the centre line', () => {
    const reading: Reading = { RF: { toe: 0.3 }, LR: { toe: 0, caster: 2, sai: 9 }, toeReference: 'centreline' };
    expect(predict(reading, {}, to)).toEqual({
      RF: { toe: expect.closeTo(0.3, 12) },
      LR: { toe: expect.closeTo(0.2, 12), caster: expect.closeTo(4, 12), sai: expect.closeTo(9, 12) },
      toeReference: 'centreline',
    });
  });
});
