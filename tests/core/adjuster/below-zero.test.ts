/** Which numbers of an adjuster may be below zero: what the kinds' own check of a whole adjuster says. */
import { expect, it } from 'vitest';
import { mayBeBelowZero } from '../../../core/adjuster/below-zero.ts';
import { adjusterKinds } from '../../../core/adjuster/catalogue.ts';

const numbers = (kind: string) =>
  adjusterKinds[kind]?.fields.filter(({ ask }) => ask.as === 'number' || ask.as === 'length').map(({ name }) => name) ??
  [];
const below = (kind: string) => numbers(kind).filter((name) => mayBeBelowZero(kind, name));

it('places on a scale with a middle may, sizes and counts may not', () => {
  expect(below('threaded-rod')).toEqual(['reference']);
  expect(below('slide')).toEqual(['reference']);
  expect(below('eccentric-cam')).toEqual(['reference']);
  expect(below('axle-wedge')).toEqual(['reference']);
  expect(below('clamp-bolt')).toEqual(['reference']);
  expect(below('effect-table')).toEqual(['perStep.caster', 'perStep.camber', 'perStep.toe']);
  expect(below('shim-pack')).toEqual([]);
  expect(below('offset-sleeve')).toEqual([]);
});

it('of a kind that nobody knows, any may', () => {
  expect(mayBeBelowZero('nobody’s', 'reference')).toBe(true);
});
