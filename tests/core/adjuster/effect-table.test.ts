import { describe, expect, it } from 'vitest';
import { effectTable } from '../../../core/adjuster/effect-table.ts';
import { adjusterPositions, InputError, solveCorner } from '../../../core/index.ts';
import { instruction } from '../../tools/instruction.ts';
import { poseOf } from '../../tools/pose.ts';

const suspension = { kind: 'unknown', points: {}, camber: 0, toe: 0 };
const table = {
  id: 'kit',
  kind: 'effect-table',
  reference: 'B',
  positions: [
    { label: 'A', camber: -0.5, caster: 0.25, toe: 0 },
    { label: 'B', camber: 0.1, caster: 0, toe: 0.05 },
    { label: 7, camber: 0.75 },
  ],
};
const steps = { id: 'cam', kind: 'effect-table', perStep: { camber: 0.2, toe: -0.05 }, range: [-2, 3], reference: 1 };

describe('a printed chart', () => {
  it('has its labels, or its steps, for positions', () => {
    expect(adjusterPositions(table)).toEqual(['A', 'B', 7]);
    expect(adjusterPositions(steps)).toEqual([-2, -1, 0, 1, 2, 3]);
  });

  it('adds what is printed, less what is printed beside the reference', () => {
    const pose = poseOf(suspension, [table], { kit: 'A' });
    expect(pose.camber).toBeCloseTo(-0.6, 12);
    expect(pose.caster).toBeCloseTo(0.25, 12);
    expect(pose.toe).toBeCloseTo(-0.05, 12);
    expect(poseOf(suspension, [table], { kit: '7' }).camber).toBeCloseTo(0.65, 12);
  });

  it('by so many degrees a step, on and between the steps', () => {
    expect(poseOf(suspension, [steps], { cam: 3 }).camber).toBeCloseTo(0.4, 12);
    expect(poseOf(suspension, [steps], { cam: -0.5 }).toe).toBeCloseTo(0.075, 12);
  });

  it('says which position, or how many steps', () => {
    expect(instruction(effectTable, table, 'B', 7, 'LF')).toBe(
      'Change from position B to position 7 of the chart; where it holds a rubber bush, final torque at ride height.',
    );
    expect(instruction(effectTable, steps, 0, -1, 'LF')).toContain('Move 1 step down (0 → −1);');
    expect(instruction(effectTable, steps, -2, 1, 'LF')).toBe(
      'Move 3 steps up (−2 → 1); where it holds a rubber bush, final torque at ride height.',
    );
  });

  it.each([
    [{ ...table, perStep: {} }, 'adjusters[0]'],
    [{ id: 'a', kind: 'effect-table', reference: 0 }, 'perStep and range; one of the two'],
    [{ ...steps, range: undefined }, 'adjusters[0].range: nothing is not allowed; allowed: [low, high] in steps'],
    [{ ...steps, reference: 4 }, 'adjusters[0].reference: 4 is not allowed; allowed: steps from −2 to 3'],
    [{ ...table, reference: 'C' }, 'adjusters[0].reference: "C" is not allowed; allowed: one of A, B, 7'],
    [{ ...table, positions: [...table.positions, { label: '7' }] }, 'labels that differ from one another'],
    [{ ...table, positions: [{ label: 'B', camber: 99 }] }, 'adjusters[0].positions[0].camber: 99 is not allowed'],
  ])('%j is refused', (given, message) => {
    const work = () => solveCorner(suspension, [given as never], {});
    expect(work).toThrow(InputError);
    expect(work).toThrow(message);
  });
});
