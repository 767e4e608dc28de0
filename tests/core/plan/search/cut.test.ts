/** A search that would take too long is cut: the plan is a good one, says that it is not proven, and is the same again. */
import { describe, expect, it } from 'vitest';
import type { PlanRequest, PlanStyle } from '../../../../core/contract.ts';
import { CORNERS } from '../../../../core/contract.ts';
import { planOf } from '../../../../core/plan/plan.ts';
import { evaluate, problemOf } from '../../../../core/plan/problem.ts';
import { Work } from '../../../../core/plan/search/work.ts';
import { en } from '../../../../core/words/en/index.ts';
import { wholeCar } from '../../../bench/cars.ts';

const STYLES: readonly PlanStyle[] = ['closest', 'least-work', 'surest', 'practical'];
const notes = ({ noted }: { readonly noted: readonly { readonly note: string }[] }) => noted.map(({ note }) => note);

/** Four corners that one window ties and hardly tells apart: front toe alone, read against the thrust line, rods locked. */
const contrived = (positions: number): PlanRequest => ({
  ...wholeCar(positions, true),
  style: 'closest',
  spec: { front: { toe: { low: 0, aim: 0.075, high: 0.15 } } },
  locked: CORNERS.map((corner) => ({ corner, adjuster: 'rod' })),
});

describe.each([true, false])('a plan of the whole car, windows in reach: %s', (within) => {
  const asked = wholeCar(9, within);
  const now = problemOf(asked).now;

  it.each(STYLES)('that has little work to do is a plan all the same, and says so: %s', (style) => {
    const whole = planOf({ ...asked, style });
    const cut = planOf({ ...asked, style }, undefined, new Work(5e4));
    expect(cut.optimum.proven).toBe(false);
    expect(notes(cut)).toContain('not-proven');
    const problem = problemOf(asked);
    const judged = evaluate(problem, cut.positions);
    expect(judged.inWindow).toBe(cut.inWindow);
    expect(cut.distance).toBeCloseTo(judged.distance, 9);
    // Nothing is found that cannot be, and never is it worse than to leave all as it stands.
    if (!whole.inWindow) expect(cut.inWindow).toBe(false);
    if (style === 'closest' && cut.inWindow === whole.inWindow) {
      expect(cut.distance).toBeGreaterThanOrEqual(whole.distance - 1e-9);
    }
    if (!cut.inWindow) expect(cut.distance).toBeLessThanOrEqual(evaluate(problem, now).distance + 1e-9);
    expect(planOf({ ...asked, style }, undefined, new Work(5e4)).positions).toEqual(cut.positions);
  });

  it.each(STYLES)('that has its usual work to do is not cut: %s', (style) => {
    const work = new Work();
    expect(notes(planOf({ ...asked, style }, undefined, work))).not.toContain('not-proven');
    expect(work.isCut).toBe(false);
  });
});

it('meets the windows even where it is cut at once, on a car whose windows are wide', () => {
  const plan = planOf({ ...wholeCar(17, true), style: 'closest' }, undefined, new Work(0));
  expect(plan.optimum.proven).toBe(false);
  expect(plan.inWindow).toBe(true);
});

it('what ties both axles so that no bound tells its settings apart is answered, and on the aim', () => {
  const before = process.cpuUsage();
  const plan = planOf(contrived(33));
  const { user, system } = process.cpuUsage(before);
  expect((user + system) / 1000).toBeLessThan(30_000);
  expect(plan.optimum.proven).toBe(false);
  expect(plan.inWindow).toBe(true);
  expect(plan.distance).toBeLessThan(0.01);
}, 180_000);

it('is told in plain words, and that another setting may meet the windows only where this one does not', () => {
  expect(en.note({ note: 'not-proven', inWindow: true })).toBe(
    'That no other setting is better could not be proven in the time there is. This is the best that was found.',
  );
  expect(en.note({ note: 'not-proven', inWindow: false })).toMatch(/ Another one may meet the windows\.$/);
});

it('sixteen adjusters a corner that all take other times are planned, though their sums of minutes are many', () => {
  const asked = wholeCar(5, true);
  const adjusters = Array.from({ length: 16 }, (_, i) => ({
    ...{
      id: `plate-${i}`,
      kind: 'slide',
      direction: [0, 1, i / 10] as const,
      step: 1,
      range: [0, 1] as const,
      reference: 0,
    },
    at: ['upperFront', 'upperRear', 'lowerFront', 'lowerRear'][i % 4]!,
    effort: 1 + 0.013 * 2 ** i,
  }));
  const front = { ...asked.car.front, adjusters };
  const before = process.cpuUsage();
  const plan = planOf({ ...asked, car: { ...asked.car, front }, style: 'practical' });
  const { user, system } = process.cpuUsage(before);
  expect(plan.moves.length).toBeGreaterThan(0);
  expect((user + system) / 1000).toBeLessThan(30_000);
}, 180_000);
