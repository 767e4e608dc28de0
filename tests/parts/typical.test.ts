/** The made-up corners of the drawings show what a kind looks like: each has to be a suspension that works. */
import { describe, expect, it } from 'vitest';
import { suspensionPictures } from '../../app/parts/drawings/suspension-catalogue.ts';
import { solveCorner, suspensionKinds } from '../../core/index.ts';

describe('the typical corner of each kind', () => {
  it.each(Object.keys(suspensionKinds))('%s solves, and moves as such a wheel does', (kind) => {
    const suspension = { kind, points: suspensionPictures[kind]?.points ?? {}, camber: -0.5, toe: 0.1 };
    const still = solveCorner(suspension, [], {});
    const bump = solveCorner(suspension, [], {}, { travel: 25 });
    if (!still.reachable || !bump.reachable) throw new Error('no pose');
    // Trade practice without source: what nearly every road car has.
    expect(Math.abs(bump.toe - still.toe)).toBeLessThan(0.25);
    expect(Math.abs(bump.camber - still.camber)).toBeLessThan(1.5);
    if (still.sai === undefined || still.caster === undefined) return;
    expect(still.caster).toBeGreaterThan(2);
    expect(still.caster).toBeLessThan(9);
    expect(still.sai).toBeGreaterThan(4);
    expect(still.sai).toBeLessThan(16);
  });
});
