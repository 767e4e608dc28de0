/** Where a move is left, what the rack leads on the same wheel is turned to its window all the same. */
import { expect, it } from 'vitest';
import type { Car, CarFile } from '../../core/contract.ts';
import { planMoves, planRequest } from '../../core/index.ts';
import practice from '../../fixtures/cars/practice.json' with { type: 'json' };

const { car, spec } = practice as unknown as { car: Car; spec: NonNullable<CarFile['spec']> };
const reading = { LR: { camber: -1.9, toe: 0.4 }, RR: { camber: -1.2, toe: 0.15 } };
const rounds = [{ reading, settings: {} }];
const file: CarFile = {
  ...{ format: 'cornerwright', version: 1, car, spec },
  visits: [{ id: 'v', carId: car.id, opened: '2026-01-01', rounds }],
};

it('a rod that the rack leads keeps its window where the cam before it is left', () => {
  const request = planRequest(file, { style: 'practical', live: ['camber', 'toe'] });
  const whole = planMoves(request);
  const own = whole.moves.filter(({ corner }) => corner === 'LR');
  const rod = own.find(({ setBy }) => setBy?.angle === 'toe');
  const others = own.filter((move) => move !== rod);
  expect(rod, 'a rod by the rack').toBeDefined();
  expect(others.length).toBeGreaterThan(0);
  const left = planMoves({ ...request, leave: others.map(({ corner, adjuster }) => ({ corner, adjuster })) });
  const again = left.moves.find(({ corner, adjuster }) => corner === 'LR' && adjuster === rod?.adjuster);
  // Without the cam the rod of the plan would put toe far out; nothing else of the plan has changed.
  expect(again?.setBy?.value).toBeCloseTo(rod!.setBy!.value, 1);
  expect(again?.to).not.toBeCloseTo(rod!.to as number, 1);
  expect(left.moves.filter(({ corner }) => corner === 'RR').map(({ to }) => to)).toEqual(
    whole.moves.filter(({ corner }) => corner === 'RR').map(({ to }) => to),
  );
});
