/** What nobody knows to be in a pack is not counted on, and not spoken of. */
import { describe, expect, it } from 'vitest';
import { type CarPacks, CORNERS, type PlanRequest, type ShimCount } from '../../../../core/contract.ts';
import { type CarFile, planMoves, planOfFile, planRequest, shimStack } from '../../../../core/index.ts';
import { Choices } from '../../../../core/plan/choose.ts';
import { problemOf } from '../../../../core/plan/problem.ts';
import { adjustersAt, request, SEEDS } from '../../../tools/shim-request.ts';

const fewest = (asked: PlanRequest): CarPacks =>
  Object.fromEntries(
    CORNERS.map((corner) => {
      const packs = adjustersAt(asked, corner).filter(({ kind }) => kind === 'shim-pack');
      return [corner, Object.fromEntries(packs.map((p) => [p.id, shimStack(p.reference as number, p.sizes).shims]))];
    }),
  );
const used = (plan: ReturnType<typeof planMoves>, size: number): number =>
  plan.moves.reduce((sum, { shims = [] }) => sum + (shims.find((one) => one.size === size)?.count ?? 0), 0);

describe.each(SEEDS.slice(0, 6))('seed %i', (seed) => {
  const asked = request(seed);

  it('with the packs said to hold what they were taken to hold the plan is the same, and says what comes out', () => {
    const [taken, said] = [planMoves(asked), planMoves({ ...asked, packs: fewest(asked) })];
    expect(said.positions).toEqual(taken.positions);
    expect(said.moves.map(({ shims }) => shims)).toEqual(taken.moves.map(({ shims }) => shims));
  });

  it('with nothing known of them no pack is built of more than lies in the drawer', () => {
    const plan = planMoves({ ...asked, packs: {} });
    for (const { size, count } of asked.drawer ?? []) expect(used(plan, size)).toBeLessThanOrEqual(count);
    for (const { act } of plan.moves) expect(act).not.toHaveProperty('holds');
    // Every pack with a counted size is one that nobody knows.
    const { drawer } = new Choices(problemOf({ ...asked, packs: {} }));
    const counted = plan.moves.filter((move) => drawer?.find(move));
    const noted = plan.noted.flatMap((one) => (one.note === 'packs-unknown' ? one.packs : []));
    expect(noted.map(({ corner, adjuster }) => [corner, adjuster])).toEqual(
      counted.map(({ corner, adjuster }) => [corner, adjuster]),
    );
  });
});

describe('a least pack', () => {
  const asked = request(2);
  const least = { ...asked.car.rear.adjusters[0]!, id: 'only', sizes: [1], max: 6, min: 2, reference: 2 };
  const { drawer: _, ...plenty } = asked;
  const car = { ...asked.car, rear: { ...asked.car.rear, adjusters: [least] } };
  const spec = { rear: { camber: { low: -9, high: 9 } } };
  const at = (thickness: number, rear: object = spec.rear) =>
    planMoves({ ...plenty, car, spec: { rear }, settings: { LR: { only: thickness }, RR: { only: 2 } } });

  it('stays in, whichever way the camber is wanted', () => {
    for (const aim of [-2, -1, 1, 2]) {
      const { positions } = at(3, { camber: { low: aim - 0.1, high: aim + 0.1 } });
      for (const corner of ['LR', 'RR'] as const) expect(positions[corner].only).toBeGreaterThanOrEqual(2);
    }
  });

  it('that was not in is told where the plan leaves it', () => {
    const [found, kept] = [at(1), at(2)];
    expect(found.positions.LR.only).toBe(1);
    expect(found.noted).toContainEqual(expect.objectContaining({ note: 'below-least', holds: 1, least: 2 }));
    expect(kept.noted.map(({ note }) => note)).not.toContain('below-least');
  });
});

describe('a car file', () => {
  const { car, reading } = request(3);
  const spec = { front: { camber: { low: 0.6, high: 1.4 } } };
  const pack = car.front.adjusters[0]!;
  const shims: readonly ShimCount[] = shimStack(pack.reference as number, pack.sizes).shims;
  const fileOf = (packs?: CarPacks, shimsBuilt?: readonly ShimCount[]): CarFile => {
    const first = { corner: 'LF', adjuster: pack.id, from: 0, to: pack.reference } as const;
    const moved = shimsBuilt ? [{ ...first, shims: shimsBuilt }] : [];
    const settings = shimsBuilt ? { LF: { [pack.id]: 0 } } : {};
    const round = { reading, settings, ...(packs && { packs }), moved };
    const visits = [{ id: 'v', carId: car.id, opened: '2026-01-01', rounds: [round] }];
    return { format: 'cornerwright', version: 1, car, spec, visits };
  };

  it('knows what it says, or what a move says that a pack was built of', () => {
    expect(planRequest(fileOf()).packs).toEqual({});
    const packs = { LF: { [pack.id]: shims } };
    expect(planRequest(fileOf(packs)).packs).toEqual(packs);
    expect(planRequest(fileOf(undefined, shims)).packs).toEqual(packs);
    const moved = planOfFile(fileOf(packs)).moves.filter(({ adjuster }) => adjuster === pack.id);
    for (const { corner, act } of moved) {
      if (corner === 'LF') expect(act).toHaveProperty('holds');
      else expect(act).not.toHaveProperty('holds');
    }
  });

  it.each<[string, CarPacks, string]>([
    ['another thickness', { LF: { [pack.id]: [...shims, { size: 1, count: 3 }] } }, `packs.LF.${pack.id}: `],
    ['what is no pack', { LF: { rod: [] } }, 'packs.LF.rod: [] is not allowed'],
    ['a pack that is not there', { RR: { nothing: [] } }, 'packs.RR.nothing: [] is not allowed'],
    ['half a shim', { LF: { [pack.id]: [{ size: 1, count: 0.5 }] } }, `packs.LF.${pack.id}[0].count: 0.5`],
  ])('with %s in a pack is refused', (_, packs, message) => {
    expect(() => planRequest(fileOf(packs))).toThrow(message);
    expect(() => planMoves({ ...request(3), packs })).toThrow(message);
  });
});
