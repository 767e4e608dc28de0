/** Cars on packs of shims that are counted. */
import type { Car, Corner, PlanRequest } from '../../core/contract.ts';
import { complete } from '../../core/plan/problem.ts';
import { Drawer } from '../../core/plan/shims/drawer.ts';
import { movableAt } from '../../core/plan/subproblem.ts';
import { mixedPack, randomDrawer } from './drawer.ts';
import { LAYOUTS, rod, stream } from './random-cars.ts';

export const SEEDS = Array.from({ length: 10 }, (_, i) => i + 1);
const suspension = { kind: 'double-wishbone', points: LAYOUTS['double-wishbone'] ?? {}, camber: 0, toe: 0 };

/** Two packs a side in front, one in the rear; a rod that has no shims. */
export function request(seed: number, below = 4): PlanRequest {
  const random = stream(seed * 47);
  const pack = (id: string, at: string) => mixedPack(random, id, at);
  const car: Car = {
    id: 'a',
    label: 'a',
    wheel: { rimDiameter: 420 },
    front: {
      suspension,
      adjusters: [pack('first', 'upperFront'), rod('rod', 'tieInner', 1, 1), pack('second', 'upperRear')],
      steered: true,
    },
    rear: {
      suspension: { ...suspension, points: { ...suspension.points } },
      adjusters: [pack('only', 'upperFront')],
      steered: false,
    },
  };
  const wheel = { camber: 0.2, toe: 0.1 };
  const drawer = randomDrawer(random, below);
  const reading = { LF: wheel, RF: wheel, LR: wheel, RR: wheel };
  return { car, spec: { front: { camber: { low: -0.6, high: 0 } } }, reading, settings: {}, drawer };
}
export const drawerOf = (asked: PlanRequest) =>
  new Drawer(asked.drawer ?? [], (corner) => movableAt(asked, corner), complete(asked));

export const adjustersAt = ({ car }: PlanRequest, corner: Corner) =>
  car[corner.endsWith('F') ? 'front' : 'rear'].adjusters;
export const sizesOf = ({ drawer = [] }: PlanRequest) => drawer.map(({ size }) => size);
