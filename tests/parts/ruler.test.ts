import fc from 'fast-check';
import { expect, it } from 'vitest';
import { scaleOf } from '../../app/parts/ruler.tsx';

const value = fc.double({ min: -30, max: 30, noNaN: true });

it('keeps every value on the ruler, in order, with room at both ends', () => {
  fc.assert(
    fc.property(fc.array(value, { minLength: 1, maxLength: 6 }), (values) => {
      const { at } = scaleOf(values);
      const places = [...values].sort((a, b) => a - b).map((v) => Number.parseFloat(at(v)));
      expect(places[0]).toBeGreaterThan(10);
      expect(places.at(-1)).toBeLessThan(90);
      expect(places).toEqual([...places].sort((a, b) => a - b));
    }),
  );
});

it('ticks at round steps, few enough to tell apart', () => {
  fc.assert(
    fc.property(value, value, (a, b) => {
      const { ticks } = scaleOf([a, b]);
      expect(ticks.length).toBeGreaterThanOrEqual(4);
      expect(ticks.length).toBeLessThanOrEqual(13);
    }),
  );
  expect(scaleOf([0, 1]).ticks.map((t) => Math.round(t * 10) / 10)).toEqual([-0.2, 0, 0.2, 0.4, 0.6, 0.8, 1, 1.2]);
});
