/** A kind's name comes from a file: under one that any object has there is nothing in any catalogue. */
import { expect, test } from 'vitest';
import { adjusterPictures } from '../../../app/parts/drawings/catalogue.ts';
import { suspensionPictures } from '../../../app/parts/drawings/suspension-catalogue.ts';
import { adjustersOfSide } from '../../../core/adjuster/of-corner.ts';
import type { Axle } from '../../../core/contract.ts';
import { adjusterKinds, adjusterPositions, suspensionKinds } from '../../../core/index.ts';
import { tapeLayouts } from '../../../core/suspension/tape/catalogue.ts';
import { en } from '../../../core/words/en/index.ts';

const CATALOGUES: readonly Readonly<Record<string, unknown>>[] = [
  ...[adjusterKinds, suspensionKinds, tapeLayouts],
  ...[adjusterPictures, suspensionPictures],
];
const NAMES = ['constructor', 'hasOwnProperty', 'toString', '__proto__', 'valueOf'];

test.each(NAMES)('%s is no field that has words of its own, and is told as it is', (name) => {
  const said = en.refusal({ field: `car.front.${name}`, value: 1, rule: { is: 'no-such', what: 'field', known: [] } });
  expect(said).toContain('has no place there');
  expect(said).not.toMatch(/function|native|object/i);
});

test.each(NAMES)('%s is no kind', (kind) => {
  for (const catalogue of CATALOGUES) expect(catalogue[kind]).toBeUndefined();
  const adjuster = { id: 'a', kind, reference: 0 };
  expect(adjusterPositions(adjuster)).toEqual([]);
  const axle: Axle = { suspension: { kind, points: {}, camber: 0, toe: 0 }, adjusters: [adjuster], steered: false };
  expect(adjustersOfSide(axle, true)).toEqual([adjuster]);
});
