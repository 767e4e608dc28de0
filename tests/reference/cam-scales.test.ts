/** Sources: two makers' service manuals, named in fixtures/published/README.md. */
import { describe, expect, it } from 'vitest';
import { eccentricCam } from '../../core/adjuster/eccentric-cam.ts';
import type { Adjuster, Suspension } from '../../core/contract.ts';
import published from '../../fixtures/published/cam-scales.json' with { type: 'json' };

function cam(zero: 'middle' | 'end'): Adjuster {
  const { eccentricity, degreesPerMark } = published[zero];
  return {
    id: 'cam',
    name: 'Lower arm cam',
    kind: 'eccentric-cam',
    at: 'lowerRear',
    direction: [0, 1, 0],
    eccentricity,
    marks: 360 / degreesPerMark,
    zero,
    reference: 0,
  };
}

/** A cam's offset is its own: the suspension has no say in it. */
const NOWHERE: Suspension = { kind: 'unknown', points: {}, camber: 0, toe: 0 };
const offsetOf = (adjuster: Adjuster, angle: number): number =>
  eccentricCam.effect(adjuster, angle, NOWHERE).shift?.lowerRear?.[1] ?? Number.NaN;

describe('eccentric cams', () => {
  for (const zero of ['middle', 'end'] as const) {
    const { offsets, degreesPerMark, within } = published[zero];
    it(`counted from the ${zero}: offsets of the printed scale`, () => {
      offsets.forEach((offset, i) => {
        expect(Math.abs(offsetOf(cam(zero), (i + 1) * degreesPerMark) - offset)).toBeLessThanOrEqual(within + 1e-9);
      });
    });
  }

  it('has every mark of the scale, within 90° of the middle, among its positions', () => {
    const positions = eccentricCam.positions(cam('middle'));
    expect(positions).toEqual(Array.from({ length: 13 }, (_, i) => (i - 6) * 15));
  });

  it('camber goes with the offset: the published minutes are 20.0 a mm in every row, rounding apart', () => {
    published.middleCamberMinutes.forEach((minutes, i) => {
      const offset = offsetOf(cam('middle'), (i + 1) * 15);
      expect(Math.abs(minutes + 20 * offset)).toBeLessThan(20 * published.middle.within + 0.5);
    });
  });
});
