import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { Reading, Spec } from '../../../core/contract.ts';
import { assess } from '../../../core/index.ts';
import { stateIn } from '../../../core/reading/assess.ts';
import { angleOf, axleAngles, includedAngle } from '../../../core/reading/axle-angles.ts';
import { specTerms, windowFor } from '../../../core/reading/spec-terms.ts';

const SPEC: Spec = {
  front: {
    camber: { low: -0.5, high: 0.5 },
    caster: { low: 3, aim: 4, high: 6 },
    totalToe: { low: 0, high: 0.2 },
    crossCamber: { low: -0.5, high: 0.5 },
    right: { camber: { low: -0.75, high: 0.25 } },
  },
  rear: { thrustAngle: { low: -0.1, high: 0.1 } },
};

describe('axle angles keep the contract’s signs', () => {
  const angles = axleAngles({ toe: 0.3, camber: 1, caster: 4 }, { toe: 0.1, camber: 0.25, caster: 5 });
  test.each([
    ['total toe is the sum', angles.totalToe, 0.4],
    ['cross camber is left − right', angles.crossCamber, 0.75],
    ['cross caster is left − right', angles.crossCaster, -1],
    ['more toe-in on the left points the thrust line to the right: +', angles.thrustAngle, 0.1],
  ])('%s', (_, value, wanted) => {
    expect(value).toBeCloseTo(wanted, 12);
  });
  it('leaves out what was not measured on both sides', () => {
    expect(axleAngles({ toe: 0.3 }, {})).toEqual({});
    expect(axleAngles(undefined, { toe: 0.3, camber: 1, caster: 4 })).toEqual({});
    expect(includedAngle({ camber: 1 })).toBeUndefined();
    expect(includedAngle({ sai: 12 })).toBeUndefined();
    expect(includedAngle({ camber: -1, sai: 12 })).toBe(11);
  });
  it('is nil between a wheel and itself', () => {
    const angle = fc.double({ min: -10, max: 10, noNaN: true });
    fc.assert(
      fc.property(angle, angle, angle, (camber, caster, toe) => {
        const { crossCamber, crossCaster, thrustAngle } = axleAngles({ camber, caster, toe }, { camber, caster, toe });
        expect([crossCamber, crossCaster, thrustAngle]).toEqual([0, 0, 0]);
      }),
    );
  });
});

describe('spec terms', () => {
  it('default the aim to the middle and let a side override', () => {
    const terms = specTerms(SPEC);
    expect(terms.find(({ where, angle }) => where === 'LF' && angle === 'camber')?.window).toEqual({
      low: -0.5,
      aim: 0,
      high: 0.5,
      half: 0.5,
    });
    expect(terms.find(({ where, angle }) => where === 'RF' && angle === 'camber')?.window.aim).toBe(-0.25);
    expect(terms.find(({ where, angle }) => where === 'RF' && angle === 'caster')?.window).toMatchObject({
      aim: 4,
      half: 1.5,
    });
    expect(terms.map(({ where, angle }) => `${where} ${angle}`)).toEqual([
      'LF camber',
      'LF caster',
      'RF camber',
      'RF caster',
      'front totalToe',
      'front crossCamber',
      'rear thrustAngle',
    ]);
    expect(windowFor(SPEC, 'LR', 'camber')).toBeUndefined();
  });
});

describe('assess', () => {
  const reading: Reading = {
    LF: { camber: 0.45, caster: 2.5, toe: 0.1, sai: 12 },
    RF: { camber: 0.5, caster: 4, toe: 0.3 },
    LR: { toe: 0.2 },
  };
  const assessment = assess(reading, SPEC);
  const find = (where: string, angle: string) =>
    assessment.angles.find((one) => one.where === where && one.angle === angle);

  it('judges every window of the spec', () => {
    expect(find('LF', 'camber')).toMatchObject({ state: 'edge', by: 0, value: 0.45 });
    expect(find('LF', 'caster')).toMatchObject({ state: 'out-low', by: -0.5 });
    expect(find('RF', 'camber')).toMatchObject({ state: 'out-high', by: 0.25 });
    expect(find('RF', 'caster')).toMatchObject({ state: 'in', by: 0 });
    expect(find('front', 'totalToe')?.state).toBe('out-high');
    expect(find('rear', 'thrustAngle')).toMatchObject({ state: 'unmeasured', by: 0 });
    expect(assessment.angles).toHaveLength(7);
    expect(assessment.inWindow).toBe(false);
    expect(assessment.included).toEqual({ LF: 12.45 });
    expect(Object.keys(assessment.included)).toEqual(['LF']);
  });

  it('derives the angles of both axles, whatever the spec asks for', () => {
    const toes = (left: number, right: number) => axleAngles({ toe: left }, { toe: right });
    const { axles } = assess({ LF: { toe: 0.1 }, RF: { toe: 0.3 }, LR: { toe: 0.2 }, RR: { toe: -0.1 } }, {});
    expect(axles).toEqual({ front: toes(0.1, 0.3), rear: toes(0.2, -0.1) });
    expect(axles.front.totalToe).toBeCloseTo(0.4, 12);
    expect(axles.rear.thrustAngle).toBeCloseTo(0.15, 12);
  });

  it('is in the window at the edge of it', () => {
    const spec: Spec = { rear: { left: { toe: { low: 0, high: 0.3 } } } };
    expect(assess({ LR: { toe: 0.3 } }, spec)).toMatchObject({ inWindow: true, angles: [{ state: 'edge' }] });
  });

  it('is in the window only when all was measured', () => {
    const spec: Spec = { rear: { toe: { low: 0, high: 0.3 } } };
    expect(assess({ LR: { toe: 0.1 }, RR: { toe: 0.1 } }, spec).inWindow).toBe(true);
    expect(assess({ LR: { toe: 0.1 } }, spec).inWindow).toBe(false);
  });

  it('does not put a sum out of the window for its binary noise', () => {
    // 0.3 − 0.1 is 0.19999999999999998.
    const spec: Spec = { front: { crossCamber: { low: 0.2, high: 0.4 } } };
    expect(assess({ LF: { camber: 0.3 }, RF: { camber: 0.1 } }, spec).angles[0]?.state).toBe('edge');
  });

  it('has a state for every value: out by what it is beyond, edge within a tenth of the width', () => {
    const seen: Record<string, number> = {};
    // In ten-thousandths. Where in the window: from its lower limit at 0 to its upper one at 1, on no limit itself.
    const tenThousandths = (min: number, max: number) =>
      fc.integer({ min: Math.round(min * 1e4), max: Math.round(max * 1e4) - 1 }).map((n) => (n + 0.5) / 1e4);
    const about = [0, 0.1, 0.9, 1].map((limit) => tenThousandths(limit - 0.04, limit + 0.04));
    const shares = fc.oneof(tenThousandths(-0.5, 1.5), ...about);
    fc.assert(
      fc.property(tenThousandths(-5, 5), tenThousandths(0.01, 5), shares, (low, width, share) => {
        const { state, by } = stateIn(low + share * width, { low, high: low + width });
        const out = share < 0 || share > 1;
        const edge = Math.min(share, 1 - share) < 0.1;
        expect(state).toBe(out ? (share < 0 ? 'out-low' : 'out-high') : edge ? 'edge' : 'in');
        expect(by).toBeCloseTo(out ? (share < 0 ? share : share - 1) * width : 0, 12);
        seen[state] = (seen[state] ?? 0) + 1;
      }),
      { numRuns: 400 },
    );
    for (const state of ['in', 'edge', 'out-low', 'out-high']) expect(seen[state]).toBeGreaterThan(15);
  });

  it('finds an angle by the name that the spec gives it', () => {
    expect(angleOf(reading, 'front', 'totalToe')).toBeCloseTo(0.4, 12);
    expect(angleOf(reading, 'LF', 'sai')).toBe(12);
    expect(angleOf(reading, 'RR', 'camber')).toBeUndefined();
  });
});
