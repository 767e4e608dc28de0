import { describe, expect, it } from 'vitest';
import { clampBolt } from '../../../core/adjuster/clamp-bolt.ts';
import { adjusterPositions, InputError, solveCorner } from '../../../core/index.ts';
import { wordsOf } from '../../../core/words/catalogue.ts';
import { instruction } from '../../tools/instruction.ts';
import { poseOf } from '../../tools/pose.ts';
import { randomSuspension, stream } from '../../tools/random-cars.ts';

const suspension = randomSuspension(stream(26), 'strut');
const bolt = { id: 'clamp', kind: 'clamp-bolt', step: 0.5, range: [-1, 1.5] as const, reference: 0 };
const cam = { ...bolt, eccentricity: 1.5, spacing: 60, step: 45, range: [-90, 90] as const };

describe('a strut’s clamp bolt', () => {
  it('tilts directly in degrees, or by a cam in steps of its angle', () => {
    expect(adjusterPositions(bolt)).toEqual([-1, -0.5, 0, 0.5, 1, 1.5]);
    expect(adjusterPositions(cam)).toEqual([-90, -45, 0, 45, 90]);
    expect(clampBolt.effect(bolt, 1.25, suspension)).toEqual({ tilt: 1.25 });
    const { tilt = NaN } = clampBolt.effect(cam, 90, suspension);
    expect(60 * Math.sin((tilt * Math.PI) / 180)).toBeCloseTo(1.5, 12);
  });

  it('leans the wheel’s top out for +, and leaves the strut’s top and the steering axis where they are', () => {
    const [was, now] = [poseOf(suspension, [bolt]), poseOf(suspension, [bolt], { clamp: 1 })];
    expect(now.camber - was.camber).toBeGreaterThan(0.4);
    expect(now.camber - was.camber).toBeLessThan(1);
    expect(now.points.strutTop).toEqual(was.points.strutTop);
    // The ball joint hardly moves, so that the included angle takes the camber up.
    expect(Math.abs((now.sai ?? NaN) - (was.sai ?? NaN))).toBeLessThan(0.05);
  });

  it('two bolts in one clamp add up as angles', () => {
    const two = [bolt, { ...bolt, id: 'other' }];
    const wide = { ...bolt, range: [-4, 4] };
    for (const [a, b] of [
      [1.5, 1.5],
      [1.5, -1],
      [-1, -1],
    ] as const) {
      const both = poseOf(suspension, two, { clamp: a, other: b });
      expect(both.camber).toBeCloseTo(poseOf(suspension, [wide], { clamp: a + b }).camber, 9);
      expect(both.toe).toBeCloseTo(poseOf(suspension, [wide], { clamp: a + b }).toe, 9);
    }
  });

  it('says which way the top goes and what camber gains, which is what is seen; without it what the bolt does', () => {
    expect(wordsOf().act(clampBolt.act(bolt, 0, 1, { corner: 'LF', gains: { camber: 0.65 } }))).toBe(
      'Loosen both clamp bolts, lean the wheel’s top out until camber has risen by 0.65° (0° → +1° on the bolt’s scale); tighten.',
    );
    expect(wordsOf().act(clampBolt.act(bolt, 1, 0, { corner: 'LF', gains: { camber: -0.65 } }))).toContain(
      'top in until camber has fallen by 0.65°',
    );
    expect(instruction(clampBolt, cam, 90, 0, 'LF')).toContain(
      'turn the cam bolt and lean the wheel’s top in by 1.43° against the strut',
    );
  });

  it.each([
    [{ eccentricity: 1.5, spacing: undefined }, 'adjusters[0].spacing'],
    [
      { eccentricity: 12, spacing: 10 },
      'adjusters[0].spacing: 10 is not allowed; allowed: the distance between the two',
    ],
    [{ step: 0 }, 'adjusters[0].step: 0 is not allowed; allowed: a number above 0, up to 180 degrees'],
    [{ reference: 9 }, 'adjusters[0].reference: 9 is not allowed; allowed: degrees from −1 to 1.5'],
  ])('%j is refused', (fields, message) => {
    const work = () => solveCorner(suspension, [{ ...bolt, ...fields }], {});
    expect(work).toThrow(InputError);
    expect(work).toThrow(message);
  });

  it.each(['double-wishbone', 'five-link', 'trailing-arm', 'beam-front', 'beam-rear', 'unknown'])(
    'does not fit a %s',
    (kind) => {
      const given = randomSuspension(stream(3), kind);
      expect(() => solveCorner(given, [bolt], {})).toThrow('this one needs a suspension with a strut');
    },
  );
});
