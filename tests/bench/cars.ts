/** An invented car for the benchmark: two shim packs of 17 positions and a tie rod on each front corner. */
import type { Axle, Car, PlanRequest } from '../../core/contract.ts';

const STEP = 0.75; // mm; 17 positions with nothing in the pack

const pack = (id: string, at: string) => ({
  id,
  name: `Upper arm, ${id} bracket`,
  kind: 'shim-pack',
  at,
  direction: [0, 1, 0] as const,
  sizes: [STEP],
  max: 16 * STEP,
  reference: 4 * STEP,
});

const rod = (lead: number) => ({
  id: 'rod',
  name: 'Tie rod',
  kind: 'threaded-rod',
  links: ['tieInner'],
  lead,
  stepTurns: 1 / 12,
  range: [-3, 3] as const,
  reference: 0,
});

export const front: Axle = {
  steered: true,
  suspension: {
    kind: 'double-wishbone',
    camber: -0.2,
    toe: 0.05,
    points: {
      upperFront: [118, 420, 432],
      upperRear: [-132, 428, 421],
      upperBall: [-12, 652, 436],
      lowerFront: [172, 332, 206],
      lowerRear: [-168, 336, 201],
      lowerBall: [9, 706, 188],
      tieInner: [-138, 352, 238],
      tieOuter: [-146, 694, 231],
      wheelCentre: [0, 760, 312],
    },
  },
  adjusters: [pack('front', 'upperFront'), pack('rear', 'upperRear'), rod(1.5)],
};

const rear: Axle = {
  steered: false,
  suspension: { ...front.suspension, camber: -0.6, toe: 0.1 },
  adjusters: [],
};

export const car: Car = { id: 'bench', label: 'Bench car', wheel: { rimDiameter: 420 }, front, rear };

/** Every front window given, cross limits too, so that both sides must be chosen together. */
export const request: PlanRequest = {
  car,
  spec: {
    front: {
      camber: { low: -0.5, aim: -0.25, high: 0 },
      caster: { low: 2.5, aim: 3.1, high: 3.7 },
      totalToe: { low: 0.05, aim: 0.15, high: 0.25 },
      crossCamber: { low: -0.3, high: 0.3 },
      crossCaster: { low: -0.3, high: 0.3 },
      thrustAngle: { low: -0.05, high: 0.05 },
    },
  },
  reading: {
    LF: { camber: 0.35, caster: 2.7, toe: 0.31 },
    RF: { camber: -0.75, caster: 3.5, toe: -0.12 },
  },
  settings: {},
};
