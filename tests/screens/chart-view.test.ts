/** A chart in words: heads as the cards say a position, toe where a rod is in it. */
import { expect, it } from 'vitest';
import { chartView } from '../../app/screens/chart/chart-view.ts';
import type { Adjuster, Axle } from '../../core/contract.ts';
import { axleCharts } from '../../core/index.ts';
import { randomSuspension, rod, stream } from '../tools/random-cars.ts';

const suspension = randomSuspension(stream(4), 'double-wishbone');
const cam: Adjuster = {
  ...{ id: 'cam', name: 'Cam', kind: 'eccentric-cam', at: 'upperFront', direction: [0, 1, 0], eccentricity: 4 },
  ...{ marks: 24, range: [-90, 90], zero: 'middle', reference: 0, turns: 'clockwise' },
} as Adjuster;
const tie: Adjuster = { ...rod('tie', 'tieInner', 3), name: 'Tie rod' };
const plate = { ...cam, id: 'plate', name: 'Plate', kind: 'slide', step: 1, range: [-3, 3] } as Adjuster;

function viewOf(adjusters: readonly Adjuster[], left: Readonly<Record<string, number>>) {
  const front: Axle = { suspension, adjusters, steered: true };
  const [first] = axleCharts(front, { left, right: left });
  return chartView({ axle: 'front', side: 'both', corner: 'LF', adjusters, chart: first?.chart, rim: 400 });
}

it('heads a cam by its marks and a rod by turns and flats from where it stands', () => {
  const { table, title } = viewOf([cam, tie], { cam: 30, tie: 0.5 });
  expect(table?.across.map(({ text }) => text)).toEqual([
    '−6',
    '−5',
    '−4',
    '−3',
    '−2',
    '−1',
    '0',
    '+1',
    '+2',
    '+3',
    '+4',
    '+5',
    '+6',
  ]);
  expect(table?.across.filter(({ now }) => now)).toEqual([{ text: '+2', now: true }]);
  const down = table?.down.map(({ text }) => text) ?? [];
  const now = down.indexOf('now');
  expect(down[now - 1]).toBe('1 flat shorter');
  expect(down[now + 1]).toBe('1 flat longer');
  expect(down[now + 8]).toBe('1 turn 2 flats longer');
  expect(table?.cells[now]?.[8]).toEqual(['0.00', '0.00', '0.00']);
  // Toe is what a rod is for.
  expect(title).toBe('Caster over camber over toe, degrees gained');
});

it('calls an adjuster without a name by its kind', () => {
  const [a, b] = [cam, tie].map(({ name: _, ...nameless }) => nameless as Adjuster) as [Adjuster, Adjuster];
  expect(viewOf([a, b], { cam: 30, tie: 0.5 }).table?.note).toContain(
    'Across: Eccentric bolt, at mark +2 (30°). Down: Threaded rod, from where it stands.',
  );
});

it('heads a cam whose sense is not on file by the way its end of the arm goes', () => {
  const { turns: _, ...unsided } = cam;
  const { table } = viewOf([unsided as Adjuster, tie], { cam: 30, tie: 0.5 });
  const heads = table?.across.map(({ text }) => text) ?? [];
  expect(heads.slice(6, 11)).toEqual([
    '2 marks inboard',
    '1 mark inboard',
    'now',
    '1 mark outboard',
    '2 marks outboard',
  ]);
  expect(new Set(heads).size).toBe(heads.length);
});

it('has no toe where two that lean the wheel are charted', () => {
  const { table, title } = viewOf([cam, plate, tie], {});
  expect(title).toBe('Caster over camber, degrees gained');
  expect(table?.cells[0]?.[0]).toHaveLength(2);
});

it('says which side has no two adjusters', () => {
  const of = (side: 'both' | 'right') =>
    chartView({ axle: 'rear', side, corner: 'LR', adjusters: [], chart: undefined, rim: 400 });
  expect(of('both')).toEqual({ name: 'rear', title: 'No chart' });
  expect(of('right')).toEqual({ name: 'rear, right', title: 'Right: no chart' });
});
