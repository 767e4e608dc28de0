/** What the engine is asked about a visit whose car has lost an adjuster of one side since it was read. */
import { expect, it } from 'vitest';
import { adjusterOf } from '../../app/state/move-words.ts';
import { visitFile } from '../../app/state/visit-file.ts';
import { visitView } from '../../app/state/visits.ts';
import type { Axle, Car, CarSettings } from '../../core/contract.ts';
import { planMoves, planRequest } from '../../core/index.ts';
import { randomSuspension, rod, stream } from '../tools/random-cars.ts';

const suspension = randomSuspension(stream(9), 'strut');
const tie = { ...rod('tie', 'tieInner', 4), name: 'Tie rod' };
const front: Axle = { suspension, adjusters: [tie], steered: true };
const rear: Axle = { suspension: randomSuspension(stream(9), 'beam-rear'), adjusters: [], steered: false };
const at = '2026-01-01T08:00:00Z';
const settings: CarSettings = { LF: { tie: 0.5 }, RF: { tie: -0.5 } };
const angles = { LF: { camber: 0, toe: 0.3 }, RF: { camber: 0, toe: 0.3 } };
const reading = { ...angles, rideHeights: { LF: 380, RF: 385 } };
const moves = (['LF', 'RF'] as const).map((corner) => ({
  ...{ id: corner, visitId: 'v', readingId: 'r', at, corner, adjuster: 'tie', outcome: 'done' as const },
  ...{ from: settings[corner]?.tie ?? 0, to: 1 },
}));

function fileOf(rightAdjusters?: Axle['adjusters']) {
  const car: Car = {
    ...{ id: 'c', label: 'c', wheel: { rimDiameter: 400 }, rear },
    front: { ...front, ...(rightAdjusters && { rightAdjusters }) },
  };
  const cars = [{ id: 'c', car, spec: { front: { toe: { low: -0.1, high: 0.1 } } }, changed: at }];
  const readings = [{ id: 'r', visitId: 'v', at, reading, settings, typed: {} }];
  const all = { cars, visits: [{ id: 'v', carId: 'c', opened: at }], readings, moves, drafts: [], preferences: [] };
  const view = visitView(all as never, 'v');
  if (!view) throw new Error('no visit');
  return visitFile(view, view.rounds[0]!, moves);
}

it('keeps where both sides stand and what was moved while the car has it', () => {
  const [round] = fileOf().visits?.[0]?.rounds ?? [];
  expect(round?.settings).toEqual(settings);
  expect(round?.moved?.map(({ corner }) => corner)).toEqual(['LF', 'RF']);
});

it('leaves out what was taken off the right side since, so that the visit goes on', () => {
  const file = fileOf([]);
  const [round] = file.visits?.[0]?.rounds ?? [];
  expect(round?.settings).toEqual({ LF: { tie: 0.5 }, RF: {} });
  expect(round?.moved?.map(({ corner }) => corner)).toEqual(['LF']);
  expect(planMoves(planRequest(file)).moves.every(({ corner }) => corner === 'LF')).toBe(true);
});

it('finds the adjuster of a move on its own side', () => {
  const other = { ...tie, name: 'Rod of its own' };
  const { car } = fileOf([other]);
  expect(adjusterOf(car, { corner: 'LF', adjuster: 'tie' })?.name).toBe('Tie rod');
  expect(adjusterOf(car, { corner: 'RF', adjuster: 'tie' })?.name).toBe('Rod of its own');
  expect(adjusterOf(fileOf([]).car, { corner: 'RF', adjuster: 'tie' })).toBeUndefined();
});

it('says nothing of how high the body stood: no move hangs on it', () => {
  expect(fileOf().visits?.[0]?.rounds[0]?.reading).toEqual(angles);
});
