/** `npm run plan` and `npm run chart` of a car whose right side has adjusters of its own. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import type { Adjuster, Axle } from '../../core/contract.ts';
import { chartOf, planRequest, validateCarFile } from '../../core/index.ts';
import tarn from '../../fixtures/cars/tarn-gt.json' with { type: 'json' };
import { call } from './call.ts';

const front = tarn.car.front as unknown as Axle;
const [first, second, tie] = front.adjusters as readonly [Adjuster, Adjuster, Adjuster];
const rightAdjusters = [{ ...second, name: 'Other pack' }, first, { ...tie, id: 'own-rod', name: 'Rod of its own' }];
const { visits: _, ...rest } = tarn;
const reading = { LF: { camber: 0.4, caster: 2.9, toe: 0.3 }, RF: { camber: 0.6, caster: 2.2, toe: 0.5 } };
const round = { id: 'r', at: '2026-01-01T10:00:00Z', reading, settings: {} };
const visits = [{ id: 'v', carId: tarn.car.id, opened: '2026-01-01T10:00:00Z', rounds: [round] }];
const file = { ...rest, car: { ...tarn.car, front: { ...front, rightAdjusters } }, visits };
const folder = mkdtempSync(join(tmpdir(), 'cornerwright-right-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const path = join(folder, 'car.json');
writeFileSync(path, JSON.stringify(file));

it('plans with the right side’s own adjusters, by their names', () => {
  const { stdout, status } = call('plan', [path]);
  expect(status).toBe(0);
  expect(stdout).toContain('RF Rod of its own: ');
  expect(stdout).not.toContain('LF Rod of its own');
  expect(planRequest(validateCarFile(file)).car.front.rightAdjusters).toHaveLength(3);
});

it('prints a chart a side, each of its own two adjusters', () => {
  const { stdout } = call('chart', [path]);
  const [, left, right, rear] = /FRONT, LEFT([\s\S]*)FRONT, RIGHT([\s\S]*)REAR([\s\S]*)/i.exec(stdout) ?? [];
  expect(left).toContain(`across ${first.id}, down ${second.id}`);
  expect(right).toContain(`across ${second.id}, down ${first.id}`);
  expect(left).not.toContain('  own-rod, ');
  expect(right).toContain('  own-rod, ');
  expect(rear).toContain('across ');
  const charts = JSON.parse(call('chart', [path, '--json']).stdout);
  expect(charts.map(({ axle, side }: { axle: string; side?: string }) => [axle, side])).toEqual([
    ['front', 'left'],
    ['front', 'right'],
    ['rear', undefined],
  ]);
  expect(charts[1].chart).toEqual(chartOf(front.suspension, rightAdjusters, {}, second.id, first.id));
});
