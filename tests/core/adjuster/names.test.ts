import { expect, it, test } from 'vitest';
import { namesIn } from '../../../core/adjuster/names.ts';

const adjusters = [
  { id: 'a', name: 'Left rod', kind: 'threaded-rod' },
  { id: 'b', kind: 'shim-pack' },
  { id: 'c', kind: 'nobody knows' },
];
const names = namesIn({ car: { front: { adjusters }, rear: undefined } });

test.each([
  [['car', 'front', 'adjusters', 0], 'Left rod'],
  [['car', 'front', 'adjusters', 1], 'Shim pack'],
  [['car', 'front', 'adjusters', 2], undefined],
  [['car', 'front', 'adjusters', 7], undefined],
  [['car', 'rear', 'adjusters', 0], undefined],
  [['settings', 'RF', 'a'], 'Left rod'],
  [['settings', 'RR', 'a'], undefined],
  [['settings', 'RF', 'z'], undefined],
  [['car'], undefined],
])('what stands at %j is called %j', (path, name) => {
  expect(names.given?.(path)).toBe(name);
});

test.each([
  [['car', 'front', 'adjusters', 0, 'lead'], 'Longer by, each turn'],
  [['car', 'front', 'adjusters', 1, 'pair', 'with'], 'Other pack of the arm'],
  [['car', 'front', 'adjusters', 1, 'pair'], undefined],
  [['car', 'front', 'adjusters', 2, 'lead'], undefined],
  [['car', 'front', 'adjusters'], undefined],
])('a form asks for %j as %j', (path, label) => {
  expect(names.asked?.(path)).toBe(label);
});

it('knows adjusters that are given alone', () => {
  expect(namesIn({ adjusters }).given?.(['adjusters', 0])).toBe('Left rod');
});
