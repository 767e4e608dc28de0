/**
 * What a position costs for not being surely reached: −2 ln of the chance to be in the window, the error function being
 * that of mathjs. Points and gauge are taken for certain, so that the move alone is in doubt.
 */
import { erf } from 'mathjs';
import { describe, expect, it } from 'vitest';
import type { Adjuster, Car, Suspension, Vec3 } from '../../../../core/contract.ts';
import { ChanceCost } from '../../../../core/plan/chance/chance-cost.ts';
import { problemOf, settingsOf } from '../../../../core/plan/problem.ts';
import { indexTerm } from '../../../../core/plan/states/indexed-term.ts';
import { subproblemsOf } from '../../../../core/plan/subproblem.ts';
import { chartSigmas } from '../../../tools/chart-error.ts';
import { generalPose } from '../../../tools/general-pose.ts';
import { LAYOUTS, rod } from '../../../tools/random-cars.ts';

type Angle = 'camber' | 'caster' | 'toe';
type Degrees = Readonly<Partial<Record<Angle, number>>>;
const CERTAIN = { camber: 0, caster: 0, toe: 0 };

/**
 * The left wheel with one adjuster, all angles having been read as 0. Asks what a position costs, with windows of so many
 * degrees about what the angles would be there.
 */
function asking(suspension: Suspension, adjuster: Adjuster, stands: number) {
  const car: Car = {
    ...{ id: 'a', label: 'a', wheel: { rimDiameter: 420 } },
    front: { suspension: { ...suspension, tolerance: 0 }, adjusters: [adjuster], steered: true },
    rear: { suspension: { kind: 'unknown', points: {}, camber: 0, toe: 0 }, adjusters: [], steered: false },
  };
  const any = { low: -1, high: 1 };
  const spec = { front: { left: { camber: any, caster: any, toe: any } } };
  const settings = { LF: { [adjuster.id]: stands } };
  const problem = problemOf({ car, spec, reading: { LF: CERTAIN }, settings, gauge: CERTAIN });
  const [only] = subproblemsOf(problem);
  const [assembly, states] = [only?.assemblies[0], only?.states[0]];
  const uncertainty = assembly && problem.uncertainty.get(assembly);
  if (!only || !assembly || !states || !uncertainty) throw new Error('one wheel was asked about');
  return (position: number, there: Degrees, half: Degrees): number => {
    const placed = only.terms.flatMap((term) => {
      const [aim, own] = [there[term.angle as Angle], half[term.angle as Angle]];
      if (aim === undefined || own === undefined) return [];
      return [indexTerm({ ...term, window: { low: aim - own, aim, high: aim + own, half: own } }, only.states)];
    });
    const cost = new ChanceCost(states, placed, 0, uncertainty, settingsOf(assembly, problem.now));
    const all = Array.from({ length: states.count }, (_, state) => states.settings(state)[0]?.[adjuster.id]);
    return cost.cost(all.indexOf(position));
  };
}

/** −2 ln of the chance to be within as much of the middle, at this standard deviation. */
const miss = (half: number, sigma: number): number => -2 * Math.log(erf(half / sigma / Math.SQRT2));
describe('a rod of many positions', () => {
  const points = LAYOUTS['double-wishbone'] as Record<string, Vec3>;
  const suspension: Suspension = { kind: 'double-wishbone', points, camber: 0, toe: 0 };
  /** Set to ± 0.4 turns at 95 %: two standard deviations. */
  const thread: Adjuster = { ...rod('rod', 'tieInner', 3, 0.25), tolerance: 0.4 };
  const toe = (turns: number) => generalPose(suspension, { longer: { tieInner: 1.5 * turns } }).toe;
  const positions = Array.from({ length: 25 }, (_, i) => i / 4 - 3);

  it.each([1.25, -3, 0])('at %d turns: each other one is missed as far as the thread is, by the library', (stands) => {
    const costOf = asking(suspension, thread, stands);
    for (const turns of positions) {
      const sigma = Math.abs(toe(turns + 0.2) - toe(turns));
      const cost = costOf(turns, { toe: toe(turns) - toe(stands) }, { toe: sigma });
      // Between a few positions that are worked out it goes in a straight line, which is off by a little.
      if (turns === stands) expect(cost).toBe(0);
      else expect(cost).toBeCloseTo(miss(sigma, sigma), 2);
    }
  });
});

describe('a printed chart of many steps, ± 20 % of what each changes', () => {
  const bare: Suspension = { kind: 'unknown', points: {}, camber: 0, toe: 0 };
  const perStep = { camber: 0.1, caster: -0.2, toe: 0.05 };
  const chart: Adjuster = { id: 'chart', kind: 'effect-table', perStep, range: [-12, 12], reference: 0 };
  const angles: readonly Angle[] = ['camber', 'caster', 'toe'];
  const each = (of: (degrees: number) => number): Degrees =>
    Object.fromEntries(angles.map((angle) => [angle, of(perStep[angle])]));
  /** What it costs to be off by what the chart may be off over so many steps, with windows of two steps. */
  const missing = (steps: number) => {
    const sigmas = chartSigmas(each((degrees) => steps * degrees));
    return angles.reduce((total, angle) => total + miss(2 * Math.abs(perStep[angle]), sigmas[angle]), 0);
  };

  it.each([3, 0, -12])(
    'from step %d: no surer than it is, nor less sure than a quarter of the chart further',
    (stands) => {
      const costOf = asking(bare, chart, stands);
      for (let step = -12; step <= 12; step++) {
        const gone = Math.abs(step - stands);
        const end = step > stands ? 12 - stands : stands + 12;
        const there = each((degrees) => (step - stands) * degrees);
        const cost = costOf(
          step,
          there,
          each((degrees) => 2 * Math.abs(degrees)),
        );
        expect(cost, `step ${step}`).toBeGreaterThanOrEqual((gone && missing(gone)) - 1e-5);
        expect(cost, `step ${step}`).toBeLessThanOrEqual((gone && missing(Math.min(gone + 6, end))) + 1e-5);
      }
    },
  );
});
