import { describe, expect, test } from 'vitest';
import { InputError } from '../../core/input-error.ts';
import { pointsFromTape } from '../../core/suspension/tape/points-from-tape.ts';

describe('tape dimensions', () => {
  const tape = { caster: 4, camber: 0, toe: 0 };
  test.each<[Record<string, unknown>, string]>([
    [{}, 'tape.caster: nothing is not allowed; allowed: a number from -30 to 30 degrees'],
    [{ ...tape, track: 1e9 }, 'tape.track: 1000000000 is not allowed; allowed: a number from 600 to 3000 mm'],
    [{ ...tape, track: 'wide' }, 'tape.track: "wide" is not allowed; allowed: a number from 600 to 3000 mm'],
    [{ ...tape, track: Number.NaN }, 'tape.track: NaN is not allowed; allowed: a number from 600 to 3000 mm'],
    [
      { ...tape, track: { value: 1500, tolerance: -1 } },
      'tape.track.tolerance: -1 is not allowed; allowed: a number from 0 to 200 mm',
    ],
    [
      { ...tape, trak: 1500 },
      'tape.trak: 1500 is not allowed; allowed: nothing: the dimensions are tie, caster, camber,',
    ],
    [{ ...tape, tie: 'left' }, 'tape.tie: "left" is not allowed; allowed: ahead or behind'],
    [
      { ...tape, upperFrontLength: 100, upperRearLength: 100, upperPivotSpacing: 250 },
      'tape.upperPivotSpacing: 250 is not allowed; allowed: mm between 0.0 and 200.0, so that the upper arm',
    ],
    [
      { ...tape, lowerFrontLength: 500, lowerRearLength: 300, lowerPivotSpacing: 150 },
      'tape.lowerPivotSpacing: 150 is not allowed; allowed: mm between 200.0 and 800.0, so that the lower arm',
    ],
    [
      { ...tape, lowerBallHeight: 200, lowerFrontHeight: 600 },
      'tape.lowerFrontLength: 380 is not allowed; allowed: mm above 400.0, the difference of its ends’ heights',
    ],
    [
      { ...tape, tieRodLength: 100, tieInnerHeight: 400 },
      'tape.tieRodLength: 100 is not allowed; allowed: mm above 190.0, the difference of its ends’ heights',
    ],
    [
      { ...tape, kind: 'cart-spring' },
      'tape.kind: "cart-spring" is not allowed; allowed: one of double-wishbone, strut',
    ],
    [
      { ...tape, kind: 'trailing-arm' },
      'tape.kind: "trailing-arm" is not allowed; allowed: one of double-wishbone, strut, five-link',
    ],
    [
      { kind: 'five-link', camber: 0, toe: 0, link3Length: 100 },
      'tape.link3Length: 100 is not allowed; allowed: mm above 183.3, how far its ends are apart along the car and in height',
    ],
    [{ ...tape, kind: 7 }, 'tape.kind: 7 is not allowed; allowed: one of double-wishbone, strut'],
    [
      { ...tape, kind: 'strut', ballSpacing: 270 },
      'tape.ballSpacing: 270 is not allowed; allowed: nothing: the dimensions are tie, caster, camber, toe, sai, strutLength,',
    ],
    [
      { ...tape, kind: 'strut', strutLowerInset: 300, strutLength: 150 },
      'tape.strutLength: 150 is not allowed; allowed: mm above 245.',
    ],
    [
      { ...tape, kind: 'strut', strutLength: 1501 },
      'tape.strutLength: 1501 is not allowed; allowed: a number from 100 to 1500 mm',
    ],
  ])('%j', (dimensions, message) => {
    expect(() => pointsFromTape(dimensions)).toThrow(InputError);
    expect(() => pointsFromTape(dimensions)).toThrow(message.replace('’', "'"));
  });

  test.each([undefined, null, 7, 'tape', [tape]])('%j is no tape', (dimensions) => {
    expect(() => pointsFromTape(dimensions as never)).toThrow(/^tape: .* is not allowed; allowed: \{ kind/);
  });
});
