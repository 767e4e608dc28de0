/** What a car's history has a line for: what was read, and what both wheels of an axle make of theirs. */
import { expect, it } from 'vitest';
import { pastOf } from '../../app/screens/history/past.ts';
import type { Car, Reading, Spec } from '../../core/contract.ts';
import practice from '../../fixtures/cars/practice.json' with { type: 'json' };

const car = practice.car as unknown as Car;
const at = '2026-01-01T08:00:00Z';
const spec: Spec = {
  front: { toe: { low: 0, aim: 0.1, high: 0.2 }, crossCaster: { low: -0.5, aim: 0, high: 0.5 } },
  rear: { thrustAngle: { low: -0.1, aim: 0, high: 0.1 } },
};
const reading: Reading = {
  LF: { caster: 4.5, camber: -0.7, toe: 0.2 },
  RF: { caster: 4.75, camber: -0.4, toe: 0.05 },
  LR: { camber: -1.2, toe: 0.3 },
  RR: { camber: -1, toe: 0.1 },
};

function linesOf(read: Reading, typed: Readonly<Record<string, string>> = {}) {
  const record = { id: 'c', car, spec, changed: at };
  const readings = [{ id: 'r', visitId: 'v', at, reading: read, settings: {}, typed }];
  const all = { cars: [record], visits: [{ id: 'v', carId: 'c', opened: at }], readings, moves: [] };
  const { past, lines } = pastOf({ ...all, drafts: [], preferences: [] } as never, record);
  return lines.map((line) => ({ ...line, found: past[0]?.found(line), left: past[0]?.left(line) }));
}

it('has cross camber, cross caster, total toe and where each axle points, with their windows', () => {
  const lines = linesOf(reading);
  const told = Object.fromEntries(lines.map(({ name, found }) => [name, found]));
  expect(told).toMatchObject({
    'front cross camber': expect.closeTo(-0.7 + 0.4, 12),
    'front cross caster': expect.closeTo(4.5 - 4.75, 12),
    'front total toe': expect.closeTo(0.2 + 0.05, 12),
    'steer-ahead': expect.closeTo((0.2 - 0.05) / 2, 12),
    'rear cross camber': expect.closeTo(-1.2 + 1, 12),
    'rear total toe': expect.closeTo(0.3 + 0.1, 12),
    'thrust angle': expect.closeTo((0.3 - 0.1) / 2, 12),
  });
  expect(lines.every(({ found, left }) => found === left)).toBe(true);
  // Each once, wheels before what both make; no caster is asked for at the rear.
  expect(new Set(lines.map(({ id }) => id)).size).toBe(lines.length);
  expect(lines.map(({ name }) => name).indexOf('RF toe')).toBeLessThan(
    lines.map(({ name }) => name).indexOf('front total toe'),
  );
  expect(told).not.toHaveProperty('rear cross caster');
  const windows = Object.fromEntries(lines.map(({ name, window }) => [name, window]));
  expect(windows['front total toe']).toEqual({ low: 0, aim: 0.2, high: 0.4 });
  expect(windows['front cross caster']).toEqual(spec.front?.crossCaster);
  expect(windows['thrust angle']).toEqual(spec.rear?.thrustAngle);
  expect(windows['rear cross camber']).toBeUndefined();
});

it('has no line of what a total was halved into', () => {
  const names = linesOf(reading, { 'form:toe': 'total' }).map(({ name }) => name);
  expect(names).toContain('front total toe');
  for (const name of ['LF toe', 'RR toe', 'thrust angle', 'steer-ahead']) expect(names).not.toContain(name);
});

it('has none of both wheels where one was not read', () => {
  const names = linesOf({ ...reading, RF: { camber: -0.4 } }).map(({ name }) => name);
  expect(names).toContain('front cross camber');
  for (const name of ['front total toe', 'front cross caster', 'steer-ahead']) expect(names).not.toContain(name);
});
