/** A kind's name comes from a file: under one that any object has there is nothing in any catalogue. */
import { expect, test } from 'vitest';
import { adjustersOfSide } from '../../../core/adjuster/of-corner.ts';
import type { Axle } from '../../../core/contract.ts';
import { adjusterKinds, adjusterPositions, suspensionKinds } from '../../../core/index.ts';
import { tapeLayouts } from '../../../core/suspension/tape/catalogue.ts';

test.each(['constructor', 'hasOwnProperty', 'toString', '__proto__', 'valueOf'])('%s is no kind', (kind) => {
  for (const catalogue of [adjusterKinds, suspensionKinds, tapeLayouts]) expect(catalogue[kind]).toBeUndefined();
  const adjuster = { id: 'a', kind, reference: 0 };
  expect(adjusterPositions(adjuster)).toEqual([]);
  const axle: Axle = { suspension: { kind, points: {}, camber: 0, toe: 0 }, adjusters: [adjuster], steered: false };
  expect(adjustersOfSide(axle, true)).toEqual([adjuster]);
});
