import { describe, expect, it } from 'vitest';
import { eccentricCam } from '../../../core/adjuster/eccentric-cam.ts';
import type { Gains } from '../../../core/adjuster/kind.ts';
import { adjusterPositions, solveCorner } from '../../../core/index.ts';
import { wordsOf } from '../../../core/words/catalogue.ts';
import { instruction } from '../../tools/instruction.ts';
import { randomSuspension, stream } from '../../tools/random-cars.ts';

const suspension = randomSuspension(stream(23), 'double-wishbone');
const cam = {
  id: 'cam',
  kind: 'eccentric-cam',
  at: 'lowerFront',
  direction: [0, 1, 0] as const,
  eccentricity: 4,
  marks: 12,
  reference: 0,
};
const shift = (angle: number, fields = {}) =>
  eccentricCam.effect({ ...cam, ...fields }, angle, suspension).shift?.lowerFront?.[1] ?? NaN;

describe('an eccentric bolt', () => {
  it('stays within 90° of its middle unless told otherwise', () => {
    expect(adjusterPositions(cam)).toEqual([-90, -60, -30, 0, 30, 60, 90]);
    expect(adjusterPositions({ ...cam, range: [-45, 60] })).toEqual([-30, 0, 30, 60]);
    expect(() => solveCorner(suspension, [cam], { cam: 120 })).toThrow(
      'settings.cam: 120 is not allowed; allowed: an angle from −90 to 90°',
    );
  });

  it('counted from the end of its travel goes to 180°', () => {
    expect(adjusterPositions({ ...cam, zero: 'end' })).toEqual([0, 30, 60, 90, 120, 150, 180]);
  });

  it('moves its point by e·sin θ from the middle, by e·(1 − cos θ) from the end', () => {
    expect(shift(30)).toBeCloseTo(2, 12);
    expect(shift(-90)).toBeCloseTo(-4, 12);
    expect(shift(60, { zero: 'end' })).toBeCloseTo(2, 12);
    expect(shift(180, { zero: 'end' })).toBeCloseTo(8, 12);
  });

  it('says how many marks, which way on each side of the car, and to hold the head', () => {
    const clockwise = { ...cam, turns: 'clockwise' };
    expect(instruction(eccentricCam, clockwise, 0, 60, 'LF')).toMatch(
      /2 marks clockwise, seen from the bolt head .*so that its end of the arm goes .*; hold the head/,
    );
    expect(instruction(eccentricCam, clockwise, 0, 60, 'RF')).toContain('2 marks anticlockwise');
    expect(instruction(eccentricCam, clockwise, 60, 30, 'LF')).toContain('1 mark anticlockwise');
  });

  it('whose sense is not on file says what the point does and what the rack shows, and names no side', () => {
    const say = (from: number, to: number, gains?: Gains) =>
      wordsOf().act(eccentricCam.act(cam, from, to, { corner: 'LF', ...(gains && { gains }) }));
    expect(say(30, 0, { camber: -0.4, toe: 0.1 })).toContain(
      '1 mark, so that its end of the arm goes inboard. Which way to turn it is not on file: on the rack camber falls by 0.4°, and where it rises turn the other way',
    );
    expect(say(0, 30, { camber: 0.1, toe: 0.3 })).toContain(
      'outboard. Which way to turn it is not on file: on the rack toe rises',
    );
    expect(say(0, 30)).toContain('watch the disc');
    const ofLink = eccentricCam.act({ ...cam, at: 'inner4' }, 0, -30, { corner: 'LR' });
    expect(wordsOf().act(ofLink)).toContain('1 mark, so that the link’s inner end goes inboard. Which way');
    for (const from of [-60, 0, 60]) {
      for (const to of [-90, 30]) expect(say(from, to, { camber: 0.2 })).not.toMatch(/clockwise|[+−]\d|mark [0-9]/);
      const place = wordsOf().place(eccentricCam.place(cam, from));
      expect(place).toBe(
        { '-60': '2 marks inboard from the middle', 0: 'the middle', 60: '2 marks outboard from the middle' }[from],
      );
    }
    expect(wordsOf().step(eccentricCam.step(cam).said)).toBe('1 mark outboard');
    expect(wordsOf().place(eccentricCam.place({ ...cam, zero: 'end' }, 60))).toBe('2 marks from the end of its travel');
  });
});
