import { describe, expect, it } from 'vitest';
import {
  type Car,
  CORNERS,
  type Corner,
  type Move,
  type Plan,
  type Settings,
  type Vec3,
} from '../../../core/contract.ts';
import { whatElse } from '../../../core/index.ts';
import { generalEffects } from '../../tools/general-effects.ts';
import { LAYOUTS, randomSuspension, rod, stream } from '../../tools/random-cars.ts';

type Positions = Readonly<Partial<Record<Corner, Settings>>>;

/** What a plan says that goes from some positions to others. */
function planned(from: Positions, to: Positions): Pick<Plan, 'moves' | 'positions'> {
  const moves = Object.entries(to).flatMap(([corner, settings]) =>
    Object.entries(settings).flatMap(([adjuster, position]): Move[] => {
      const stood = from[corner as Corner]?.[adjuster];
      if (stood === undefined || stood === position) return [];
      const move = { corner: corner as Corner, adjuster, from: stood, to: position };
      const act = { act: 'turn-to-number', from: stood, to: position } as const;
      return [{ ...move, act, instruction: 'turn it', expectAfter: {} }];
    }),
  );
  return {
    moves,
    positions: { ...Object.fromEntries(CORNERS.map((corner) => [corner, {}])), ...to } as Plan['positions'],
  };
}

const layout = LAYOUTS['double-wishbone'] as Record<string, Vec3>;
const bracket = { kind: 'slide', at: 'tieInner', direction: [0, 0, 1], step: 1, range: [-12, 12], reference: 0 };
const car: Car = {
  ...{ id: 'a', label: 'a', wheel: { rimDiameter: 420 } },
  front: {
    suspension: { kind: 'double-wishbone', points: layout, camber: -0.5, toe: 0.1 },
    adjusters: [rod('tie-rod', 'tieInner', 4), { id: 'bracket', ...bracket }],
    steered: true,
  },
  rear: {
    suspension: randomSuspension(stream(3), 'beam-linked'),
    adjusters: [rod('lower', 'lowerBody', 4), rod('upper', 'upperBody', 4)],
    steered: false,
  },
};
const FROM: Positions = {
  LF: { 'tie-rod': 2, bracket: -3 },
  RF: { 'tie-rod': -1, bracket: 0 },
  LR: { lower: 3, upper: 0 },
  RR: { lower: -2, upper: 1 },
};
const TO: Positions = {
  LF: { 'tie-rod': -1.5, bracket: 5 },
  RF: { 'tie-rod': -1, bracket: 0 },
  LR: { lower: -1, upper: 0 },
  RR: { lower: 2, upper: -1 },
};

describe('what else a plan changes', () => {
  it('is told of the corners that it moves, and of no others', () => {
    expect(whatElse(car, planned(FROM, TO)).map(({ corner }) => corner)).toEqual(['LF', 'LR', 'RR']);
  });

  it('is the other way round of a plan that goes back', () => {
    const there = whatElse(car, planned(FROM, TO));
    const back = whatElse(car, planned(TO, FROM));
    there.forEach(({ corner, before, after }, i) => {
      expect(back[i]).toEqual({ corner, before: after, after: before });
      expect(before.bumpSteer).not.toEqual(after.bumpSteer);
    });
  });

  it('is what a general-purpose library makes of where it stood and of where it goes', () => {
    const [front] = whatElse(car, planned(FROM, TO));
    for (const [told, at] of [
      [front?.before, FROM.LF],
      [front?.after, TO.LF],
    ] as const) {
      const [x, y, z] = layout.tieInner as Vec3;
      const moved = { tieInner: [x, y, z + (at?.bracket as number)] as const };
      const longer = { tieInner: 1.5 * (at?.['tie-rod'] as number) };
      const wanted = generalEffects(car.front.suspension, { moved, longer });
      for (const name of ['bumpSteer', 'camberGain'] as const) {
        for (const i of [0, 1]) expect(told?.[name]?.[i]).toBeCloseTo(wanted[name][i] ?? Number.NaN, 3);
      }
      for (const name of ['sai', 'scrubRadius', 'casterTrail', 'toeOutOnTurns'] as const) {
        expect(told?.[name]).toBeCloseTo(wanted[name] ?? Number.NaN, 2);
      }
    }
  });
});
