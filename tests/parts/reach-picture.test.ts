import { h } from 'preact';
import { describe, expect, it } from 'vitest';
import { ReachPicture } from '../../app/parts/reach-picture.tsx';
import { planRequest } from '../../core/ask/plan-request.ts';
import { CORNERS, type PlanRequest, type Reading } from '../../core/contract.ts';
import { planMoves, type Reach, reachOf } from '../../core/index.ts';
import { validateCarFile } from '../../core/records/car-file.ts';
import { carFile } from '../core/records/fixture.ts';
import { markup, titleOf } from './markup.ts';

const format = (degrees: number, digits = 2) => `${degrees.toFixed(digits)}°`;
const draw = (reach: Reach) => markup(h(ReachPicture, { reach, format }));
const requestOf = (name: string): PlanRequest => planRequest(validateCarFile(carFile(name)));
const LF = reachOf(requestOf('tarn-gt.json'), 'LF', planMoves(requestOf('tarn-gt.json')).positions);

const placed: Reach = {
  corner: 'RF',
  across: 'caster',
  adjusters: 2,
  found: [3, 0.5],
  planned: [4, -0.5],
  windows: [
    { low: 3.5, high: 4.5 },
    { low: -1, high: 0 },
  ],
  view: [
    [2, 5],
    [-2, 1.5],
  ],
  extent: [
    [1, 5],
    [-2, 1.52],
  ],
  all: { places: [[3, 0.5]], within: [0.1, 0.2], inWindow: true },
  withToe: { places: [[4, -0.5]], within: [0.05, 0.1], inWindow: false },
};
const numbers = (drawn: string, pattern: RegExp): number[] => (pattern.exec(drawn) ?? []).slice(1).map(Number);

describe('the reach picture', () => {
  it('of every corner of every car has all its figures', () => {
    for (const name of ['tarn-gt.json', 'ostler-250.json', 'ribble-six.json']) {
      const request = requestOf(name);
      const { positions } = planMoves(request);
      for (const corner of CORNERS) {
        const reach = reachOf(request, corner, positions);
        const drawn = draw(reach);
        expect(drawn, `${name} ${corner}`).not.toMatch(/NaN|undefined|Infinity/);
        if (reach.adjusters > 0)
          expect(titleOf(drawn)).toMatch(/^What the .. adjusters can reach\. Found: .+°, camber .+°\. /);
      }
    }
  });

  it('says in words what it shows, with units', () => {
    expect(titleOf(draw(placed))).toBe(
      'What the RF adjusters can reach. Found: caster 3.00°, camber 0.50°. Planned: caster 4.00°, camber -0.50°. ' +
        'Window: caster 3.50° to 4.50°, camber -1.00° to 0.00°. The window can be reached, but not with toe in its ' +
        'window as well. The reach goes on past the edge: caster from 1.00° to 5.00°.',
    );
    const not = { ...placed, all: { ...placed.all, inWindow: false } };
    expect(titleOf(draw(not))).toContain('The window cannot be reached.');
    const { withToe: _, planned: __, ...plain } = placed;
    expect(titleOf(draw(plain))).toContain('The window can be reached. ');
    expect(titleOf(draw(plain))).not.toContain('Planned');
  });

  it('puts dots, marks and window on one scale: more caster to the right, more camber up', () => {
    const drawn = draw(placed);
    const [left, top, wide, high] = numbers(
      drawn,
      /class="reach-window" x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)"/,
    ) as [number, number, number, number];
    const found = numbers(drawn, /class="reach-found" cx="([\d.]+)" cy="([\d.]+)"/);
    const planned = numbers(drawn, /class="reach-planned" cx="([\d.]+)" cy="([\d.]+)"/);
    expect(planned[0]).toBeCloseTo(left + wide / 2, 1);
    expect(planned[1]).toBeCloseTo(top + high / 2, 1);
    expect(found[0]).toBeCloseTo(left - wide / 2, 1);
    expect(found[1]).toBeCloseTo(top - high / 2, 1);
    for (const [name, mark] of [
      ['reach-all', found],
      ['reach-dots', planned],
    ] as const) {
      const path = new RegExp(`class="${name}" d="M(\\S+) (\\S+)h0" stroke-width="2" transform="matrix\\(([^)]+)\\)"`);
      const [, u, v, matrix = ''] = path.exec(drawn) ?? [];
      const [a, b, c, d, e, f] = matrix.split(' ').map(Number) as [number, number, number, number, number, number];
      expect([b, c]).toEqual([0, 0]);
      expect(a * Number(u) + e).toBeCloseTo(mark[0] ?? NaN, 0);
      expect(d * Number(v) + f).toBeCloseTo(mark[1] ?? NaN, 0);
    }
  });

  it('draws the window from edge to edge where one angle has none, and no window where neither has', () => {
    const band = draw({ ...placed, windows: [placed.windows[0], undefined] });
    expect(numbers(band, /class="reach-window" x="[\d.]+" y="([\d.]+)" width="[\d.]+" height="([\d.]+)"/)).toEqual([
      0, 250,
    ]);
    const none = draw({ ...placed, windows: [undefined, undefined] });
    expect(none).not.toContain('reach-window');
    expect(titleOf(none)).not.toMatch(/window/i);
  });

  it('explains just the marks that are there', () => {
    const legend = (reach: Reach) => draw(reach).split('<figcaption>')[1] ?? '';
    expect(legend(LF)).toMatch(/found.+planned.+window.+can be reached.+with toe in its window/);
    const { withToe: _, planned: __, ...plain } = placed;
    expect(legend({ ...plain, windows: [undefined, undefined] })).not.toMatch(/planned|window/);
  });

  it('says so where nothing may be moved', () => {
    const request = requestOf('tarn-gt.json');
    const reading: Reading = { LR: { camber: -1, toe: 0.1 } };
    const locked = request.car.rear.adjusters.map(({ id }) => ({ corner: 'LR' as const, adjuster: id }));
    const drawn = draw(reachOf({ ...request, reading, locked }, 'LR'));
    expect(drawn).toContain('Nothing at this corner may be moved.');
    expect(drawn).not.toContain('<svg');
  });
});
