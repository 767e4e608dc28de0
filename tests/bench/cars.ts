/**
 * Invented cars for the benchmark. In front two shim packs and a tie rod on each corner; in the rear, where the car is
 * whole, a numbered cam, an eccentric bolt and a toe rod.
 */
import type { Adjuster, Axle, Car, PlanRequest } from '../../core/contract.ts';
import { startersFor } from '../../core/starters/catalogue.ts';
import { suspensionFromStarter } from '../../core/starters/starter.ts';

/** mm; 17 positions with nothing in the pack. */
const STEP = 0.75;
const MOST = 16 * STEP;

const pack = (id: string, at: string, size: number): Adjuster => ({
  id,
  name: `Upper arm, ${id} bracket`,
  kind: 'shim-pack',
  at,
  direction: [0, 1, 0],
  sizes: [size],
  max: MOST,
  reference: MOST / 4,
});

const rod = (name: string, link: string): Adjuster => ({
  id: 'rod',
  name,
  kind: 'threaded-rod',
  links: [link],
  lead: 1.5,
  stepTurns: 1 / 12,
  range: [-3, 3],
  reference: 0,
});

/** Two packs of the same travel in steps of `size`, mm, and a tie rod on each side. */
const frontAxle = (size: number): Axle => ({
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
  adjusters: [pack('front', 'upperFront', size), pack('rear', 'upperRear', size), rod('Tie rod', 'tieInner')],
});
export const front: Axle = frontAxle(STEP);

const fixedRear: Axle = {
  steered: false,
  suspension: { ...front.suspension, camber: -0.6, toe: 0.1 },
  adjusters: [],
};

export const car: Car = { id: 'bench', label: 'Bench car', wheel: { rimDiameter: 420 }, front, rear: fixedRear };

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

const fiveLink = startersFor('five-link', 'rear')[0];
if (!fiveLink) throw new Error('there is no five-link layout to start from');

/** 13 numbers: the hole goes half way round an eccentricity of 5 mm. */
const numbered: Adjuster = {
  id: 'upper',
  name: 'Upper arm cam',
  kind: 'indexed-cam',
  at: 'inner1',
  positions: Array.from({ length: 13 }, (_, i) => {
    const angle = (Math.PI * (i - 6)) / 12;
    return { label: String(i + 1), offset: [0, 5 * Math.sin(angle), 5 * (1 - Math.cos(angle))] };
  }),
  reference: '7',
};
/** 13 marks from −90° to 90°. */
const eccentric: Adjuster = {
  id: 'lower',
  name: 'Lower arm bolt',
  kind: 'eccentric-cam',
  at: 'inner4',
  direction: [0, 1, 0],
  eccentricity: 5,
  marks: 24,
  zero: 'middle',
  reference: 0,
};

const wholeRear: Axle = {
  steered: false,
  suspension: suspensionFromStarter(fiveLink, 'rear'),
  adjusters: [numbered, eccentric, rod('Toe rod', 'inner5')],
};

/**
 * The whole car as one problem: front toe is read against the thrust line, so that all four corners are tied together.
 * @param positions of each front pack, over the same travel
 * @param within whether the windows can be reached; else caster in front is asked for more than a degree beyond what the packs do
 */
export function wholeCar(positions: number, within: boolean): PlanRequest {
  const caster = within ? 3.1 : 6.5;
  return {
    car: {
      id: 'whole',
      label: 'Whole bench car',
      wheel: { rimDiameter: 420 },
      front: frontAxle(MOST / (positions - 1)),
      rear: wholeRear,
    },
    spec: {
      front: {
        camber: { low: -0.5, aim: -0.25, high: 0 },
        caster: { low: caster - 0.6, aim: caster, high: caster + 0.6 },
        toe: { low: 0, aim: 0.075, high: 0.15 },
        totalToe: { low: 0.05, aim: 0.15, high: 0.25 },
        crossCamber: { low: -0.2, high: 0.2 },
        crossCaster: { low: -0.25, high: 0.25 },
        left: { camber: { low: -0.5, aim: -0.2, high: 0 } },
        right: { camber: { low: -0.5, aim: -0.3, high: 0 } },
      },
      rear: {
        camber: { low: -1.3, aim: -1, high: -0.7 },
        toe: { low: 0.05, aim: 0.125, high: 0.2 },
        totalToe: { low: 0.15, aim: 0.25, high: 0.35 },
        crossCamber: { low: -0.2, high: 0.2 },
        thrustAngle: { low: -0.04, high: 0.04 },
      },
    },
    reading: {
      LF: { camber: 0.35, caster: 2.7, toe: 0.31 },
      RF: { camber: -0.75, caster: 3.5, toe: -0.12 },
      LR: { camber: -0.35, toe: 0.4 },
      RR: { camber: -1.6, toe: -0.15 },
      toeReference: 'thrust-line',
    },
    settings: {},
  };
}
