/** Which adjuster goes on which suspension, and what left and right must agree in. */
import { describe, expect, it } from 'vitest';
import { adjusterKinds } from '../../../core/adjuster/catalogue.ts';
import { misfit } from '../../../core/adjuster/fits.ts';
import type { Adjuster } from '../../../core/contract.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import { jointsOf, rodsOf } from '../../../core/suspension/joints.ts';
import { rod, shims, stream } from '../../tools/random-cars.ts';

/** What each kind works on, as its own file says it in words. */
const NEEDS: Readonly<Record<string, 'points' | 'rods' | 'strut' | 'seats' | 'nothing'>> = {
  'shim-pack': 'points',
  'indexed-cam': 'points',
  'eccentric-cam': 'points',
  slide: 'points',
  'threaded-rod': 'rods',
  'clamp-bolt': 'strut',
  'offset-sleeve': 'seats',
  'axle-wedge': 'seats',
  'wedge-shim': 'nothing',
  'effect-table': 'nothing',
};

describe.each(Object.values(suspensionKinds))('a $kind', (held) => {
  const has = {
    points: jointsOf(held).length > 0,
    rods: rodsOf(held).length > 0,
    strut: held.kind === 'strut',
    // Ball joints of its own, in an axle that is steered.
    seats: held.kind === 'beam-front' || held.kind === 'beam-cross-rod',
    nothing: true,
  };
  it.each(Object.values(adjusterKinds))('takes a $kind where it has what that works on', (kind) => {
    const needs = NEEDS[kind.kind];
    if (!needs) throw new Error(`say what ${kind.kind} works on`);
    expect(misfit(kind, held) === undefined).toBe(has[needs]);
  });
});

it('an axle without links has neither points that move nor rods', () => {
  const { points, rods } = {
    points: jointsOf(suspensionKinds['beam-rear']!),
    rods: rodsOf(suspensionKinds['beam-rear']!),
  };
  expect([points, rods]).toEqual([[], []]);
});

describe('left and right', () => {
  const agree = (one: Adjuster, position: number) => adjusterKinds[one.kind]?.bothSides?.(one, position);

  it('of a rod agree in its length as far as it says, and are free where it says nothing', () => {
    const held = { ...rod('tie', 'tieInner'), lead: 1.5 };
    expect(agree({ ...held, maxSideDifference: 2 }, 3)).toEqual({ value: 4.5, most: 2 });
    expect(agree({ ...held, maxSideDifference: 0 }, -2)).toEqual({ value: -3, most: 0 });
    // Without a limit of its own the other side's holds.
    expect(agree(held, 3)).toEqual({ value: 4.5, most: Number.POSITIVE_INFINITY });
    expect(agree(shims(stream(1), 'pack', 'upperFront'), 3)).toBeUndefined();
  });
});
