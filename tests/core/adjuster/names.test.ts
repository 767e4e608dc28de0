import { expect, it, test } from 'vitest';
import { adjusterName, namesIn } from '../../../core/adjuster/names.ts';

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

it('knows the right side by its own list, and each side by no other', () => {
  const rightAdjusters = [{ id: 'a', name: 'Right rod', kind: 'threaded-rod' }];
  const { given, asked } = namesIn({ car: { front: { adjusters, rightAdjusters } } });
  expect(given?.(['settings', 'RF', 'a'])).toBe('Right rod');
  expect(given?.(['settings', 'LF', 'a'])).toBe('Left rod');
  expect(given?.(['settings', 'RF', 'b'])).toBeUndefined();
  expect(given?.(['car', 'front', 'rightAdjusters', 0])).toBe('Right rod');
  expect(asked?.(['car', 'front', 'rightAdjusters', 0, 'lead'])).toBe('Longer by, each turn');
});

it('knows adjusters that are given alone', () => {
  expect(namesIn({ adjusters }).given?.(['adjusters', 0])).toBe('Left rod');
});

test('an adjuster is called by its own name, else as its kind is, else by its id', () => {
  const [rod, pack, unknown] = adjusters as [(typeof adjusters)[0], (typeof adjusters)[0], (typeof adjusters)[0]];
  expect([rod, pack, unknown].map(adjusterName)).toEqual(['Left rod', 'Shim pack', 'c']);
  expect(adjusterName({ ...pack, name: '' })).toBe('Shim pack');
});
