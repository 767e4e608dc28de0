/** Source: uraeus.smbd's own stored results. See fixtures/published/README.md. */
import { describe, expect, it } from 'vitest';
import type { Suspension } from '../../core/contract.ts';
import { heightEffect, solveCorner } from '../../core/index.ts';
import published from '../../fixtures/published/double-wishbone-motion.json' with { type: 'json' };

const WITHIN = 2e-4; // degrees
const suspension = published.suspension as unknown as Suspension;

describe('a double wishbone through its travel', () => {
  for (const row of published.rows) {
    it(`at ${row.travel} mm`, () => {
      const pose = solveCorner(suspension, [], {}, { travel: row.travel });
      if (!pose.reachable) throw new Error(pose.message);
      for (const angle of ['camber', 'toe', 'caster', 'sai'] as const) {
        expect(Math.abs((pose[angle] ?? NaN) - row[angle]), angle).toBeLessThan(WITHIN);
      }
      expect(Math.abs((pose.wheelCentre?.[1] ?? NaN) - row.y)).toBeLessThan(1e-3);
      expect(pose.wheelCentre?.[2]).toBeCloseTo(row.travel, 9);
    });
  }
});

describe('the body raised over the wheel: what the table has for as much droop', () => {
  const still = published.rows.find(({ travel }) => travel === 0);
  for (const row of published.rows) {
    it(`by ${-row.travel} mm`, () => {
      const gained = heightEffect(suspension, [], {}, -row.travel);
      for (const angle of ['camber', 'toe', 'caster'] as const) {
        const wanted = row[angle] - (still?.[angle] ?? Number.NaN);
        expect(Math.abs((gained?.[angle] ?? Number.NaN) - wanted), angle).toBeLessThan(2 * WITHIN);
      }
    });
  }
});
