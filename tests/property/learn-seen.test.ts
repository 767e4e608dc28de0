/** What was seen as the rack led a move teaches as the same reading between two moves does. */
import { describe, expect, it } from 'vitest';
import type { Car, CarSettings, Round, WheelReading } from '../../core/contract.ts';
import { learn, predictReading } from '../../core/index.ts';
import practice from '../../fixtures/cars/practice.json' with { type: 'json' };

const { car } = practice as unknown as { car: Car };
const at = (minute: number): string => `2026-01-01T08:${10 + minute}:00Z`;
const FOUND = { LR: { 'lower-bolt': 0, 'toe-rod': 0 } } as const;
const start: Round = { id: 'a', at: at(0), reading: { LR: { camber: -1.7, toe: 0.38 } }, settings: FOUND };
const [TURNED, DONE] = [
  { LR: { 'lower-bolt': 20, 'toe-rod': 0 } },
  { LR: { 'lower-bolt': 20, 'toe-rod': -0.9 } },
] as const;
/** As predicted and a little off, as a car is that differs from its card. */
function reads(to: CarSettings, camber: number, toe: number): WheelReading & { camber: number; toe: number } {
  const { LR } = predictReading(car, start.reading, {}, to);
  return { camber: LR!.camber! + camber, toe: LR!.toe! + toe };
}
const THEN = reads(TURNED, 0.04, -0.05);
const end: Round = { id: 'c', at: at(2), reading: { LR: reads(DONE, 0.05, -0.03) }, settings: DONE };
const SET_BY = { angle: 'camber', value: THEN.camber, shown: { toe: THEN.toe } } as const;
const bolt = { corner: 'LR', adjuster: 'lower-bolt', from: 0, to: 20 } as const;
const rod = { corner: 'LR', adjuster: 'toe-rod', from: 0, to: -0.9 } as const;
const close = (a: readonly number[], b: readonly number[]) =>
  a.every((x, i) => Math.abs(x - b[i]!) < 1e-6 * (1 + Math.abs(b[i]!)));

/** The sum of what stands on the diagonal of a triangle that is given row by row. */
function spreadOf(lower: readonly number[]): number {
  let sum = 0;
  for (let i = 0, at = 0; at < lower.length; at += ++i + 1) sum += lower[at]!;
  return sum;
}

describe('a move that the rack led', () => {
  it('teaches what a reading of that wheel between the moves would', () => {
    const led = learn(car, [{ ...start, moved: [{ ...bolt, setBy: SET_BY }, rod] }, end]);
    const between: Round = { id: 'b', at: at(1), reading: { LR: THEN }, settings: TURNED };
    const read = learn(car, [start, between, end]);
    expect(close(led.learned!.parts[0]!.covariance, read.learned!.parts[0]!.covariance)).toBe(true);
    for (const [name, point] of Object.entries(read.rear.suspension.points)) {
      for (const [i, x] of point.entries()) expect(led.rear.suspension.points[name]![i]).toBeCloseTo(x, 6);
    }
    // The newest whole reading is what the next one is held against.
    expect(led.learned?.last?.id).toBe('c');
  });

  it('says less where the place was left at a guess, and never less than without it', () => {
    const spread = (rounds: readonly Round[]): number => spreadOf(learn(car, rounds).learned!.parts[0]!.covariance);
    const sure = spread([{ ...start, moved: [{ ...bolt, setBy: SET_BY }, rod] }, end]);
    const guessed = spread([{ ...start, moved: [{ ...bolt, setBy: { ...SET_BY, within: 4 } }, rod] }, end]);
    expect(guessed).toBeGreaterThan(sure);
    const before = learn(car, [start, { ...start, id: 'd', at: at(3) }]).learned!.parts;
    expect(before.length === 0 || guessed < spreadOf(before[0]!.covariance)).toBe(true);
  });
});
