/** Drafts of a build card as a backup may bring them: what cannot be read in them costs nothing but itself. */
import { afterEach, expect, it, test } from 'vitest';
import { filled, undoOf } from '../../app/screens/build/form.ts';
import { cardUnits, exactAngle, useCardUnits } from '../../app/screens/build/numbers.ts';
import { units } from '../../app/state/preferences.ts';

afterEach(() => useCardUnits(undefined));

test.each([
  ...['{', 'null', '7', '[]', '{}', '{"says":1,"under":[],"texts":{}}', '{"says":"a","under":{},"texts":{}}'],
  ...['{"says":"a","under":[null],"texts":{}}', '{"says":"a","under":[]}', '{"says":"a","under":[],"texts":{"a":1}}'],
])('the undo %s puts nothing back', (text) => expect(undoOf({ '@undo': text })).toBeUndefined());

it('one that the card wrote is read', () => {
  const texts = filled({ 'car.label': 'Marl' }, { 'car.label': 'Whin' }, ['car'], 'Copied');
  expect(undoOf(texts)).toEqual({ says: 'Copied', under: ['car'], texts: { 'car.label': 'Marl' } });
});

test.each([
  ['constructor', 'mm'],
  ['mm', '__proto__'],
  ['ells', 'ells'],
])('units of %s and %s are those of the settings', (toe, length) => {
  useCardUnits({ '@toe': toe, '@length': length });
  expect(cardUnits()).toBe(units.value);
});

test.each([406.4, -1e9, 90.001])('an angle of %d that came with a file is shown as it is', (degrees) => {
  expect(Number(exactAngle(degrees).replace('−', '-'))).toBe(degrees);
});
