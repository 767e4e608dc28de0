/** What is in a pack is asked once and remembered as the app had it built. */
import { expect, it } from 'vitest';
import { builtOf, lastPacks, packKey, packsOf, packText, shimsOfText } from '../../app/state/packs.ts';
import { standingKey, standings, UNKNOWN } from '../../app/state/standing.ts';
import type { CarPacks, Move, ShimCount } from '../../core/contract.ts';
import { carFile } from '../core/records/fixture.ts';

const { car, spec = {} } = carFile('tarn-gt.json');
const at = '2026-01-01T08:00:00Z';
const record = { id: car.id, car, spec, changed: at };
const ref = { corner: 'LF', adjuster: 'upper-front' } as const;
const THREE: readonly ShimCount[] = [
  { size: 2, count: 1 },
  { size: 1, count: 1 },
];

const shimsAt = (texts: Record<string, string>, packs: CarPacks = {}) =>
  packsOf(standings(record, texts, {}, packs)).LF?.['upper-front'];
const stands = (text: string) => ({ [standingKey('LF', 'upper-front')]: text });

it('what was counted is known while the pack stands there, and forgotten where it does not', () => {
  const said = { [packKey(ref)]: packText(THREE) };
  expect(shimsOfText(packText(THREE))).toEqual(THREE);
  expect(shimsAt({ ...said, ...stands('3') })).toEqual(THREE);
  expect(shimsAt({ ...said, ...stands('3.5') })).toBeUndefined();
  expect(shimsAt({ ...said, ...stands(UNKNOWN) })).toBeUndefined();
  expect(shimsAt({})).toBeUndefined();
  expect(shimsAt({ ...stands('0'), [packKey(ref)]: '' })).toEqual([]);
});

it('what a visit left in it is known in the next', () => {
  expect(shimsAt({}, { LF: { 'upper-front': THREE } })).toEqual(THREE);
  const visit = { id: 'v', carId: car.id, opened: at };
  const reading = { id: 'r', visitId: 'v', at, reading: {}, settings: {}, typed: {} };
  const move = { ...ref, id: 'm', visitId: 'v', readingId: 'r', at, from: 1, to: 3, outcome: 'done' as const };
  const after = (moves: object[]) =>
    lastPacks(
      { cars: [record], visits: [visit], readings: [reading], moves, drafts: [], preferences: [] } as never,
      car.id,
    );
  expect(after([{ ...move, shims: THREE }])).toEqual({ LF: { 'upper-front': THREE } });
  const later = { ...move, id: 'n', at: '2026-01-01T09:00:00Z', from: 3, to: 2, outcome: 'set-to' };
  expect(after([{ ...move, shims: THREE }, later]).LF?.['upper-front']).toBeUndefined();
});

it('a move that is done as its card says leaves the pack that the card had built', () => {
  const move = { ...ref, from: 1, to: 3, expectAfter: {}, instruction: '' };
  const act = { act: 'change-shims', by: 2, from: 1, to: 3, stack: [2, 1] } as const;
  expect(builtOf({ ...move, act })).toEqual(THREE);
  expect(builtOf({ ...move, act, shims: [{ size: 1, count: 3 }] })).toEqual([{ size: 1, count: 3 }]);
  expect(builtOf({ ...move, act: { ...act, to: 0, stack: [] } })).toEqual([]);
  // None of its sizes makes that.
  expect(builtOf({ ...move, act: { ...act, to: 3.3, stack: [] } })).toBeUndefined();
  expect(builtOf({ ...move, act: { act: 'go-steps', by: 1, from: 0, to: 1 } } as Move)).toBeUndefined();
});
