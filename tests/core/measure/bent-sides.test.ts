/** What cambers and rear toe say by themselves. Trade practice, from memory: where to look, never a verdict. */
import { describe, expect, it, test } from 'vitest';
import type { Adjuster, Car, Reading, Spec } from '../../../core/contract.ts';
import { adjustersOf, solveCorner, whatIsBent } from '../../../core/index.ts';
import { starters } from '../../../core/starters/catalogue.ts';

const layout = (kind: string) => {
  const { points, camber, toe } = starters.find((one) => one.kind === kind)!;
  return { kind, points, camber, toe };
};
const car = (rear: string, adjusters: readonly Adjuster[] = []): Car => ({
  ...{ id: 'yard', label: 'Yard car', wheel: { rimDiameter: 410 } },
  front: { suspension: layout('double-wishbone'), adjusters: [], steered: true },
  rear: { suspension: layout(rear), adjusters, steered: false },
});
const SPEC: Spec = {
  front: { camber: { low: -1, high: 0 } },
  rear: { camber: { low: -1.5, high: -0.5 }, totalToe: { low: 0, high: 0.4 } },
};
const rear = (LR: object, RR: object, kind = 'beam-rear', adjusters: readonly Adjuster[] = []) =>
  whatIsBent({ LR, RR } as Reading, SPEC, {}, { car: car(kind, adjusters), settings: {} });

describe('rear camber', () => {
  test.each([
    ['beam-rear', 'axle-tube'],
    ['five-link', 'rear-arm'],
    ['trailing-arm', 'rear-arm'],
    ['beam-linked', 'axle-tube'],
  ])('%s: a wheel 1.6° off the middle of its window, look at %s', (kind, look) => {
    const found = rear({ camber: 0.6 }, { camber: -1 }, kind);
    expect(found).toEqual([
      expect.objectContaining({ where: 'LR', kind: 'camber', against: 'maker', by: expect.closeTo(1.6, 9), look }),
    ]);
    expect(found[0]!.text).toMatch(/^Camber is 1\.60° above the middle of its window/);
  });
  it('both in their windows and apart by more than means nothing', () => {
    expect(rear({ camber: -0.55 }, { camber: -1.45 })).toEqual([
      expect.objectContaining({ where: 'rear', kind: 'camber', against: 'other-side', by: expect.closeTo(0.9, 9) }),
    ]);
    expect(rear({ camber: -0.7 }, { camber: -1.4 })).toEqual([]);
  });
  it('a cross camber that the maker wants is taken off', () => {
    const spec = { rear: { crossCamber: { low: 0.6, high: 1 } } };
    const options = { car: car('beam-rear'), settings: {} };
    expect(whatIsBent({ LR: { camber: -0.5 }, RR: { camber: -1.4 } }, spec, {}, options)).toEqual([]);
    expect(whatIsBent({ LR: { camber: -1.4 }, RR: { camber: -0.5 } }, spec, {}, options)).toHaveLength(1);
  });
  it('is no sign where its own shims make it so, and nothing is said where nobody knows how many there are', () => {
    const shim = {
      ...{ id: 'shim', kind: 'wedge-shim', degrees: [1], marks: 4, reference: 'none' },
    } as unknown as Adjuster;
    const options = { car: car('five-link', [shim]) };
    const at = { LR: { shim: '1@0' }, RR: { shim: 'none' } };
    const [own] = adjustersOf(options.car, 'LR');
    expect(own).toBeDefined();
    const stands = (settings: Record<string, string | number>) => {
      const pose = solveCorner(options.car.rear.suspension, options.car.rear.adjusters, settings);
      if (!pose.reachable) throw new Error('no pose');
      return pose.camber;
    };
    const by = stands(at.LR) - stands(at.RR);
    expect(Math.abs(by)).toBeCloseTo(1, 1);
    const reading = { LR: { camber: -1 + by }, RR: { camber: -1 } };
    expect(whatIsBent(reading, SPEC, {}, { ...options, settings: at })).toEqual([]);
    const without = whatIsBent(reading, SPEC, {}, { car: car('five-link'), settings: {} });
    expect(without).toEqual([expect.objectContaining({ where: 'LR', kind: 'camber' })]);
    expect(whatIsBent(reading, SPEC, {}, options).map(({ kind }) => kind)).toEqual(['places-first']);
  });
});

describe('rear wheels that point aside', () => {
  test.each([
    ['beam-rear', 0.8, -0.3, 'rear-axle', 'right'],
    ['trailing-arm', -0.3, 0.8, 'rear-subframe', 'left'],
  ])('%s, toe %d and %d: %s, to the %s', (kind, left, right, look, to) => {
    const [hint, ...more] = rear({ toe: left }, { toe: right }, kind);
    // The thrust angle: half of left less right (Mercury 2004; + to the right).
    expect(hint).toMatchObject({ where: 'rear', kind: 'askew', by: (left - right) / 2, look });
    expect(hint!.text).toContain(`Both rear wheels point to the ${to}, by 0.55°`);
    expect(more).toEqual([]);
  });
  it('one alone is looked at by itself, against half of the total', () => {
    expect(rear({ toe: 0.9 }, { toe: 0.2 }, 'trailing-arm')).toEqual([
      expect.objectContaining({ where: 'LR', kind: 'rear-toe', by: expect.closeTo(0.8, 9), look: 'rear-arm' }),
    ]);
    expect(rear({ toe: 0.35 }, { toe: 0.1 }, 'trailing-arm')).toEqual([]);
  });
  it('what can be set is to be set: no sign of a bend', () => {
    const rod = { ...{ id: 'rod', kind: 'threaded-rod', links: ['inner5'], lead: 1.5, stepTurns: 1 / 12 } };
    const adjusters = [{ ...rod, range: [-8, 8], reference: 0 } as unknown as Adjuster];
    expect(rear({ toe: 0.8 }, { toe: -0.3 }, 'five-link', adjusters)).toEqual([]);
    // Without a car nobody knows whether it can.
    expect(whatIsBent({ LR: { toe: 0.8 }, RR: { toe: -0.3 } }, SPEC)).toEqual([]);
  });
});

describe('front camber without SAI', () => {
  const front = (LF: object, RF: object) => whatIsBent({ LF, RF } as Reading, SPEC, {}, { kinds: { front: 'strut' } });
  it('asks for SAI', () => {
    expect(front({ camber: -0.5 }, { camber: -2.2 })).toEqual([
      expect.objectContaining({ where: 'RF', kind: 'camber', look: 'sai-first', by: expect.closeTo(-1.7, 9) }),
    ]);
  });
  it('says it once: with SAI the pattern speaks', () => {
    const found = front({ camber: -0.5, sai: 12 }, { camber: -2.2, sai: 12 });
    expect(found.map(({ kind }) => kind)).toEqual(['pattern']);
  });
  it('inside the windows on both sides, and with equal included angles, a pivot has moved', () => {
    expect(front({ camber: 0, sai: 12 }, { camber: -0.9, sai: 12.9 })).toEqual([
      expect.objectContaining({ where: 'front', kind: 'camber', against: 'other-side', look: 'moved-pivot' }),
    ]);
  });
});
