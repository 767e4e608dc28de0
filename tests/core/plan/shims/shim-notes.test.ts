/** What a plan says of shims, counted pack by pack. */

import { describe, expect, it } from 'vitest';
import type { Adjuster, Car, PlanRequest } from '../../../../core/contract.ts';
import { planMoves } from '../../../../core/index.ts';
import { request } from '../../../tools/shim-request.ts';

describe('what a plan says of shims', () => {
  const pack = (id: string, at: string, reference: number): Adjuster => ({
    id,
    name: id,
    kind: 'shim-pack',
    at,
    direction: [0, 1, 0],
    sizes: [1],
    max: 8,
    reference,
    effort: 9,
  });
  const base = request(1);
  const front = { ...base.car.front, adjusters: [pack('first', 'upperFront', 4), pack('second', 'upperRear', 4)] };
  const car: Car = { ...base.car, front, rear: { ...base.car.rear, adjusters: [] } };
  const asked = (drawer: number, left: number, right: number): PlanRequest => {
    const window = (aim: number) => ({ camber: { low: aim - 0.05, aim, high: aim + 0.05 } });
    return {
      car,
      settings: {},
      drawer: [{ size: 1, count: drawer }],
      reading: { LF: { camber: 0 }, RF: { camber: 0 } },
      spec: { front: { left: window(left), right: window(right) } },
    };
  };
  const shimsOf = (request: PlanRequest) =>
    planMoves(request).moves.map(({ corner, adjuster, shims = [] }) => ({
      at: `${corner} ${adjuster}`,
      count: shims.reduce((sum, { count }) => sum + count, 0),
    }));

  it('says how many are missing, and they are enough', () => {
    const wanted = asked(0, 0.5, 0.5).spec;
    const few = planMoves(asked(0, 0.5, 0.5));
    expect(few.inWindow).toBe(false);
    const note = few.notes.find((one) => one.includes('keep the windows out of reach')) ?? '';
    const [, count] = /(\d+)\s×\s1\s?mm/.exec(note.replaceAll('\u202f', ' ').replaceAll('\u00a0', ' ')) ?? [];
    expect(Number(count)).toBeGreaterThan(0);
    const enough = planMoves({ ...asked(Number(count), 0.5, 0.5), spec: wanted });
    expect(enough.inWindow).toBe(true);
    expect(enough.notes.some((one) => one.includes('keep the windows out of reach'))).toBe(false);
  });

  it('says which shims to take out early, where they are needed before their turn', () => {
    const seen = { told: 0, not: 0 };
    for (const drawer of [0, 2, 20])
      for (const [left, right] of [
        [0.4, -0.4],
        [-0.4, 0.4],
        [0.4, 0.4],
      ] as const) {
        const given = asked(drawer, left, right);
        const plan = planMoves(given);
        // One after the other: what goes in beyond what is there has to come out of a later one first.
        let there = drawer;
        const early: string[] = [];
        for (const { at, count } of shimsOf(given)) {
          there -= count - 4;
          if (there >= 0) continue;
          early.push(`${at} ${-there}`);
          there = 0;
          break;
        }
        const notes = plan.notes.filter((note) => note.endsWith('open that first.'));
        expect(notes.length > 0).toBe(early.length > 0);
        seen[early.length > 0 ? 'told' : 'not']++;
        if (early.length === 0) continue;
        const [, taker, count] = /^(\w\w \w+) takes (\d+)/.exec(notes[0] ?? '') ?? [];
        expect(`${taker} ${count}`).toBe(early[0]);
        const giver = /out of (\w\w \w+)/.exec(notes[0] ?? '')?.[1] ?? '';
        const order = shimsOf(given).map(({ at }) => at);
        expect(order.indexOf(giver)).toBeGreaterThan(order.indexOf(taker ?? ''));
      }
    expect(seen.told).toBeGreaterThan(0);
    expect(seen.not).toBeGreaterThan(0);
  });
});
