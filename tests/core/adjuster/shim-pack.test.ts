import { describe, expect, it } from 'vitest';
import { shimPack } from '../../../core/adjuster/shim-pack.ts';
import { adjusterPositions, InputError, solveCorner } from '../../../core/index.ts';
import { wordsOf } from '../../../core/words/catalogue.ts';
import { instruction } from '../../tools/instruction.ts';
import { randomSuspension, stream } from '../../tools/random-cars.ts';

const suspension = randomSuspension(stream(21), 'double-wishbone');
const pack = {
  id: 'front',
  kind: 'shim-pack',
  at: 'upperFront',
  direction: [0, 3, 4] as const,
  sizes: [1, 2.5],
  max: 6,
  reference: 2,
};

describe('a shim pack', () => {
  it('has every thickness that its sizes make, up to the largest pack', () => {
    expect(adjusterPositions(pack)).toEqual([0, 1, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6]);
  });

  it('of inch shims adds up exactly', () => {
    const inch = { ...pack, sizes: [0.79375], max: 2.38125 };
    expect(adjusterPositions(inch)).toEqual([0, 0.79375, 1.5875, 2.38125]);
  });

  it('leaves out what takes more shims than the bolt holds', () => {
    expect(adjusterPositions({ ...pack, maxCount: 2 })).toEqual([0, 1, 2, 2.5, 3.5, 5]);
    expect(adjusterPositions({ ...pack, maxCount: 1 })).toEqual([0, 1, 2.5]);
  });

  it('moves its point along the unit direction by the thickness', () => {
    expect(shimPack.effect(pack, 5, suspension)).toEqual({ shift: { upperFront: [0, 3, 4] } });
  });

  it('says what to add or take out, and which shims make the pack', () => {
    expect(instruction(shimPack, pack, 2, 4.5, 'LF')).toBe(
      'Support the arm and build this pack: 2.5 + 1 + 1 = 4.5 mm, 2.5 mm more than now; the full nut on its thread.',
    );
    expect(instruction(shimPack, pack, 3.5, 1, 'LF')).toBe(
      'Support the arm and build this pack: 1 mm, 2.5 mm less than now; the full nut on its thread.',
    );
  });

  it.each([
    ['empty', [1, 2.5], 6, 0],
    ['part full', [1, 2.5], 6, 2],
    ['a shim short of full', [1, 2.5], 6, 5],
    ['full', [1, 2.5], 6, 6],
    ['empty, of one shim', [1.5], 1.5, 0],
    ['full, of one shim', [1.5], 1.5, 1.5],
    ['with less room than its thinnest shim', [2, 1.5], 6, 5],
  ] as const)('%s: a step is its thinnest shim more or less, and never leaves the pack', (_, sizes, max, reference) => {
    const { from, to, said } = shimPack.step({ ...pack, sizes, max, reference });
    const thinnest = Math.min(...sizes);
    expect((to as number) - (from as number)).toBeCloseTo(thinnest, 12);
    expect(from).toBeGreaterThanOrEqual(0);
    expect(to).toBeLessThanOrEqual(max);
    expect([from, to]).toContain(reference);
    expect(wordsOf().step(said)).toBe(`${thinnest} mm more shim`);
  });

  it.each([
    [0, 0.8],
    [0.5, 0.5],
    [0.8, 0.8],
  ])(
    'which may be thinner than any shim and holds %d mm: a step is what there is room for, and stays in it',
    (reference, mm) => {
      const { from, to, said } = shimPack.step({ ...pack, sizes: [1, 2.5], max: 0.8, reference });
      expect([from, to]).toContain(reference);
      expect(from).toBeGreaterThanOrEqual(0);
      expect(to).toBeLessThanOrEqual(0.8);
      expect((to as number) - (from as number)).toBeCloseTo(mm, 12);
      expect(wordsOf().step(said)).toBe(`${mm} mm more shim`);
    },
  );

  it.each([
    [{ maxCount: 0 }, 'adjusters[0].maxCount: 0 is not allowed; allowed: a whole number of shims, 1 to 50'],
    [{ maxCount: 2.5 }, 'adjusters[0].maxCount'],
    [{ pair: { with: 'rear', most: 3 } }, 'adjusters[0].pair.with: "rear" is not allowed; allowed: nothing'],
    [{ pair: { with: 'front', most: 3 } }, 'adjusters[0].pair.with: "front" is not allowed'],
    [
      { pair: { with: 'rear', most: -1 } },
      'adjusters[0].pair.most: -1 is not allowed; allowed: a number from 0 to 100',
    ],
    [{ reference: 6.5 }, 'adjusters[0].reference: 6.5 is not allowed; allowed: a thickness from 0 to 6 mm'],
    [{ sizes: [] }, 'adjusters[0].sizes'],
  ])('%j is refused', (fields, message) => {
    const work = () => solveCorner(suspension, [{ ...pack, ...fields }], {});
    expect(work).toThrow(InputError);
    expect(work).toThrow(message);
  });

  it('may be paired with another pack of the corner, not with a rod', () => {
    const rear = { ...pack, id: 'rear', at: 'upperRear' };
    const rod = {
      id: 'rod',
      kind: 'threaded-rod',
      links: ['tieInner'],
      lead: 1,
      stepTurns: 1,
      range: [-1, 1],
      reference: 0,
    };
    const paired = (other: string) => [{ ...pack, pair: { with: other, most: 3 } }, rear, rod];
    expect(solveCorner(suspension, paired('rear'), {}).reachable).toBe(true);
    expect(() => solveCorner(suspension, paired('rod'), {})).toThrow('allowed: one of the adjusters: rear');
  });
});
