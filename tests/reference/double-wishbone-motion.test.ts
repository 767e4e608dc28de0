/** Source: uraeus.smbd's own stored results. See fixtures/published/README.md. */
import { describe, expect, it } from 'vitest';
import type { Suspension } from '../../core/contract.ts';
import { solveCorner } from '../../core/index.ts';
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
