/** What `npm test` says of the slowest tests, and when one of them is a failure. */
import { describe, expect, it } from 'vitest';
import { costs, isTooSlow, tell } from './slowest.ts';

const test = (name: string, cpu?: number) => ({
  fullName: name,
  meta: cpu === undefined ? {} : { cpu, limit: 30_000 },
});
const report = (...assertionResults: ReturnType<typeof test>[]) => ({
  testResults: [{ name: '/anywhere/tests/property/plan.test.ts', assertionResults }],
});

describe('the slowest tests', () => {
  const many = Array.from({ length: 14 }, (_, i) => test(`no ${i}`, 100 * i));

  it('are told by processor time, ten of them, the longest first', () => {
    const [head, ...lines] = tell(costs(report(...many, test('never ran'))));
    expect(head).toBe('14 tests took 9 s of the processor; the slowest:');
    expect(lines).toHaveLength(10);
    expect(lines[0]).toBe('  1.30 s  property/plan.test.ts: no 13');
    expect(lines[9]).toBe('  0.40 s  property/plan.test.ts: no 4');
  });

  it('are all told that are over a tenth of their limit, and fail over a third', () => {
    const all = costs(report(...Array.from({ length: 12 }, () => test('slow', 3_100)), test('far too slow', 10_100)));
    const [, first, ...lines] = tell(all);
    expect(first).toMatch(/far too slow; FAILED: more than a third of its limit/);
    expect(lines).toHaveLength(12);
    for (const line of lines) expect(line).toMatch(/slow; more than a tenth of its limit$/);
    expect(all.filter(isTooSlow)).toHaveLength(1);
  });
});
