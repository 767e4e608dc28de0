import { describe, expect, it } from 'vitest';
import { solveCorner } from '../../core/index.ts';
import tarn from '../../fixtures/cars/tarn-gt.json' with { type: 'json' };
import { call, callAsNpm } from './call.ts';

const chart = (...args: string[]) => call('chart', args);

describe('npm run chart', () => {
  it('--json: every cell is the pose there less the pose at the reference', () => {
    const { stdout, status } = callAsNpm('chart', ['fixtures/cars/tarn-gt.json', '--json']);
    expect(status).toBe(0);
    const [front] = JSON.parse(stdout);
    const { suspension, adjusters } = tarn.car.front as never;
    const zero = solveCorner(suspension, adjusters, {});
    const { across, down, cells } = front.chart;
    for (const [i, y] of down.positions.entries()) {
      for (const [j, x] of across.positions.entries()) {
        const pose = solveCorner(suspension, adjusters, { [across.adjuster]: x, [down.adjuster]: y });
        if (!pose.reachable || !zero.reachable) throw new Error('no pose');
        expect(cells[i][j].camber).toBeCloseTo(pose.camber - zero.camber, 9);
        expect(cells[i][j].caster).toBeCloseTo((pose.caster ?? NaN) - (zero.caster ?? NaN), 9);
      }
    }
  });

  it('for people: a table for each axle and what a step of each adjuster does', () => {
    const { stdout } = chart('fixtures/cars/tarn-gt.json');
    expect(stdout).toContain('across upper-front, down upper-rear: caster/camber');
    for (const { id } of [...tarn.car.front.adjusters, ...tarn.car.rear.adjusters])
      expect(stdout).toContain(`  ${id}, `);
  });

  it('a bad file: exit code 2', () => {
    const { status, stderr } = chart('no-such-file.json');
    expect(status).toBe(2);
    expect(stderr).toContain('Usage: npm run chart -- FILE.json');
  });
});
