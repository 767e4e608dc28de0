/** The drawings of the kinds beyond shims, cams and rods: which way each points, against what the core does. */
import { describe, expect, it } from 'vitest';
import { lean } from '../../app/parts/drawings/clamp-bolt.tsx';
import { rowsShown } from '../../app/parts/drawings/effect-table.tsx';
import { onClock, shortWay } from '../../app/parts/drawings/offset-sleeve.tsx';
import { wayOf } from '../../app/parts/drawings/slide.tsx';
import { onWheel, shimAt } from '../../app/parts/drawings/wedge-shim.tsx';
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import { CORNERS, type Corner, type Suspension, type Vec3 } from '../../core/contract.ts';
import { draw, sampleOf, words } from './markup.ts';

describe('sliding plate', () => {
  it('says which way a direction points on the car, the larger part of it', () => {
    expect(wayOf([0, 1, 0], 1)).toBe('out');
    expect(wayOf([0, 1, 0], -1)).toBe('in');
    expect(wayOf([-5, 0.2, 0], 1)).toBe('rear');
    expect(wayOf([-0.7, 0.7, 0], 1)).toBe('out, rear');
    expect(wayOf([0, 0, -1], 1)).toBe('down');
    expect(wayOf(undefined, 1)).toBe('');
  });
  it('gives signed millimetres and the way', () => {
    const plate = sampleOf('slide', { direction: [0, 1, 0] });
    expect(words(plate, -2, 4)).toEqual({ from: '−2', to: '+4', unit: 'mm', note: '6 mm out' });
    expect(words(sampleOf('slide'), 4, 3.5)?.note).toBe('0.5 mm towards −');
  });
});

describe('strut clamp bolt', () => {
  const camBolt = sampleOf('clamp-bolt', { eccentricity: 2, spacing: 60 });
  it('leans as the core has it, set by hand or by a cam', () => {
    const core = adjusterKinds['clamp-bolt'];
    for (const adjuster of [sampleOf('clamp-bolt'), camBolt])
      for (const position of [-90, -1.5, 0, 0.7, 75])
        expect(lean({ adjuster }, position)).toBeCloseTo(
          core?.effect(adjuster, position, {} as Suspension).tilt ?? Number.NaN,
          9,
        );
  });
  it('gives the position, and the way in its note', () => {
    expect(words(sampleOf('clamp-bolt'), -0.5, 0.7)).toEqual({ from: '−0.5°', to: '+0.7°', note: 'top 1.2° out' });
    expect(words(camBolt, 0, -90)?.note).toBe('top 1.91° in');
  });
  it('leans a wheel out away from its strut, whichever side it is seen from', () => {
    const tilts = (corner: Corner) => {
      const angles = [...draw(sampleOf('clamp-bolt'), 0, 1, corner).matchAll(/rotate\((-?[\d.]+)\)/g)];
      return Math.sign(Number(angles[0]?.[1]));
    };
    expect(CORNERS.map(tilts)).toEqual([1, -1, -1, 1]);
  });
});

describe('offset sleeve', () => {
  it('is a clock from above that agrees with where the core moves the ball joint', () => {
    const points = { upperBall: [0, 600, 500], lowerBall: [0, 700, 200] } as Record<string, Vec3>;
    const sleeve = sampleOf('offset-sleeve', { degrees: 0.2 });
    const at = (angle: number): Vec3 =>
      adjusterKinds['offset-sleeve']?.effect(sleeve, angle, { points } as unknown as Suspension).shift?.upperBall ?? [
        0, 0, 0,
      ];
    for (const angle of [0, 30, 90, 200, 345]) {
      // Away from the middle of the sleeve's circle: forward is up, outboard to the left on a left wheel.
      const [forward, outboard] = [0, 1].map((i) => (at(angle)[i] ?? 0) - (at(angle + 180)[i] ?? 0)) as [
        number,
        number,
      ];
      for (const left of [true, false]) {
        const clock = (Math.atan2(left ? -outboard : outboard, forward) * 180) / Math.PI;
        expect(Math.abs(shortWay(onClock(angle, left), clock)), `${angle}`).toBeLessThan(6);
      }
    }
  });
  it('turns the short way', () => {
    expect(shortWay(330, 75)).toBe(105);
    expect(shortWay(75, 330)).toBe(-105);
    expect(shortWay(90, 90)).toBe(0);
    expect(words(sampleOf('offset-sleeve'), 330, 75)).toEqual({ from: '330°', to: '75°', note: 'turned by 105°' });
  });
  it('of several gives the new one in full, a turned one as its angles, a plain one as plain', () => {
    const several = sampleOf('offset-sleeve', { degrees: [0.5, 1], reference: 'plain' });
    expect(words(several, 'plain', '1@90')).toEqual({
      from: '',
      to: '1° at\u00a090°',
      note: 'in place of the plain one',
    });
    expect(words(several, '0.5@0', '1@90')?.note).toBe('in place of 0.5° at\u00a00°');
    expect(words(several, '1@330', '1@75')).toEqual({
      from: '330°',
      to: '75°',
      note: 'the 1° sleeve turned by 105°',
    });
    expect(words(several, '1@330', 'plain')).toEqual({ from: '1°', to: 'plain', note: 'the plain one in' });
    // The bore of a plain one is in its middle, with no mark; that of a steeper one is further off.
    const off = (to: string) => Number(/class="cam-hole" cy="(-?[\d.]+)"/.exec(draw(several, 'plain', to))?.[1]);
    expect(off('plain')).toBeCloseTo(0, 9);
    expect(off('1@90')).toBeLessThan(off('0.5@90'));
    expect(draw(several, '1@0', 'plain')).not.toContain('eccentric-to');
    expect(draw(several, '0.5@0', '1@90')).not.toContain('picture-arrow');
  });
});

describe('tapered hub shim', () => {
  const shim = sampleOf('wedge-shim', { degrees: [0.25, 0.5] });
  it('reads a position, and none', () => {
    expect(shimAt('0.5@90')).toEqual({ taper: 0.5, angle: 90 });
    expect(shimAt('0.25@-7.5')).toEqual({ taper: 0.25, angle: -7.5 });
    expect(shimAt('none')).toBeUndefined();
  });
  it('has its thick side where the core has it: up for camber, to the rear for toe-in, seen from outside', () => {
    for (const angle of [0, 45, 90, 210]) {
      const { camber = 0, toe = 0 } =
        adjusterKinds['wedge-shim']?.effect(shim, `0.5@${angle}`, {} as Suspension).spin ?? {};
      const clock = (Math.atan2(toe, camber) * 180) / Math.PI;
      expect(shortWay(onWheel(angle, 'LR'), clock)).toBeCloseTo(0, 6);
      expect(shortWay(onWheel(angle, 'RR'), -clock)).toBeCloseTo(0, 6);
    }
  });
  it('gives the new shim in full, a turned one as its angles, none as none', () => {
    expect(words(shim, 'none', '0.5@45')).toEqual({ from: '', to: '0.5° at\u00a045°', note: 'goes in' });
    expect(words(shim, '0.25@15', '0.5@345')?.note).toBe('in place of 0.25° at\u00a015°');
    expect(words(shim, '0.5@300', '0.5@90')).toMatchObject({ from: '300°', to: '90°' });
    expect(words(shim, '0.5@180', 'none')).toMatchObject({ from: '0.5°', to: 'none' });
  });
  it('turns no arrow from one shim to another', () => {
    expect(draw(shim, '0.5@300', '0.5@90')).toContain('picture-arrow');
    expect(draw(shim, '0.25@300', '0.5@90')).not.toContain('picture-arrow');
  });
});

describe('axle wedge', () => {
  const wedge = sampleOf('axle-wedge');
  it('has its thick end where the seat falls away from the spring', () => {
    // A seat on top of the axle that leans to the rear is lower at its rear end; one beneath is higher at its front.
    expect(words(wedge, 0, 1.5)).toMatchObject({
      from: 'none',
      to: '1.5°',
      also: 'thick end to the rear; with the spring under the axle, to the front',
    });
    expect(words(wedge, 0, -1)?.also).toBe('thick end to the front; with the spring under the axle, to the rear');
    expect(words(wedge, 2, 0)).toEqual({ from: '2°', to: 'none', note: 'the old wedge out' });
  });
  it('draws it so on both sides', () => {
    const ends = (corner: Corner) => {
      const path = /picture-head" d="M([-\d.]+) ([-\d.]+)L([-\d.]+) ([-\d.]+)L/.exec(draw(wedge, 0, 2, corner));
      return Number(path?.[4]) > Number(path?.[2]) ? 'right' : 'left';
    };
    // From outside a left wheel the rear is to the right.
    expect([ends('LF'), ends('RF')]).toEqual(['right', 'left']);
  });
});

describe('printed chart', () => {
  const steps = sampleOf('effect-table', { positions: undefined, perStep: { camber: 0.1 }, range: [-9, 9] });
  it('prints the rows about the move, in order, both ends among them', () => {
    expect(rowsShown(4, 1, 3)).toEqual([0, 1, 2, 3]);
    expect(rowsShown(24, 16, 3)).toEqual([2, 3, 4, 15, 16]);
    for (const [from, to] of [
      [0, 39],
      [39, 0],
      [20, 20],
    ] as const)
      expect(rowsShown(40, from, to)).toEqual(expect.arrayContaining([from, to]));
  });
  it('lights the new row alone', () => {
    const lit = [...draw(sampleOf('effect-table'), 'B', 'D').matchAll(/class="shim-size"[^>]*>([^<]+)</g)].map(
      ([, x]) => x,
    );
    expect(lit).toEqual(['D', '+1.50', '−0.75']);
  });
  it('counts steps, hop by hop as long as they can be counted', () => {
    expect(words(steps, -1, 2)).toEqual({ from: '−1', to: '2', note: '3 steps up' });
    const counts = (from: number, to: number) =>
      [...draw(steps, from, to).matchAll(/class="rod-count"[^>]*>([^<]+)</g)].map(([, x]) => x);
    expect(counts(-1, 2)).toEqual(['1', '2', '3']);
    expect(counts(6, -9)).toEqual(['15 steps']);
    expect(counts(2, 2)).toEqual([]);
  });
});
