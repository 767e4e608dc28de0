import { describe, expect, it } from 'vitest';
import { type CarFile, parseCarFile, planMoves, planRequest } from '../../../core/index.ts';
import tarn from '../../../fixtures/cars/tarn-gt.json' with { type: 'json' };

const total = { low: 0, aim: 0.1, high: 0.2 };
const withFront = (front: object) =>
  planRequest(parseCarFile(JSON.stringify({ ...tarn, spec: { ...tarn.spec, front } })));

/** The file with one round that read this rear toe, degrees. */
function withRearToe(file: CarFile, left: number, right: number): CarFile {
  const reading = { LR: { camber: -1, toe: left }, RR: { camber: -1, toe: right } };
  const rounds = [{ reading, settings: {} }];
  return { ...file, visits: [{ id: 'v', carId: file.car.id, opened: '2026-01-01', rounds }] };
}

describe('a spec with total toe alone', () => {
  it('gets a wish for steer-ahead and no window, so that each wheel takes half', () => {
    const request = withFront({ totalToe: total });
    expect(request.spec.front).toEqual({ totalToe: total });
    expect(request.wish?.front?.thrustAngle).toEqual({ low: -0.05, aim: 0, high: 0.05 });
    const { predicted, inWindow, odds } = planMoves(request);
    expect(inWindow).toBe(true);
    expect(Math.abs((predicted.LF?.toe ?? NaN) - (predicted.RF?.toe ?? NaN))).toBeLessThan(0.1);
    expect(odds.filter(({ where }) => where === 'front').map(({ angle }) => angle)).toEqual(['totalToe']);
  });

  it('is not less sure for a thrust angle that nobody gave a window', () => {
    // Found 0.3° off, and nothing that would turn the rear wheels.
    const rear = { ...tarn.car.rear, adjusters: [] };
    const file = parseCarFile(
      JSON.stringify({ ...tarn, car: { ...tarn.car, rear }, spec: { rear: { totalToe: total } } }),
    );
    for (const style of ['closest', 'least-work', 'surest', 'practical'] as const) {
      const { inWindow, chance, shortfall } = planMoves({ ...planRequest(withRearToe(file, 0.4, -0.3)), style });
      expect({ inWindow, shortfall }).toEqual({ inWindow: true, shortfall: [] });
      expect(chance).toBeGreaterThan(0.99);
    }
  });

  it('keeps rear wheels straight too, as far as the car was found so', () => {
    const file = parseCarFile(JSON.stringify({ ...tarn, spec: { rear: { totalToe: total } } }));
    const straight = planRequest(withRearToe(file, 0.2, 0.2));
    expect(straight.wish?.rear?.thrustAngle).toEqual({ low: -0.05, aim: 0, high: 0.05 });
    const { predicted, inWindow } = planMoves(straight);
    expect(inWindow).toBe(true);
    expect(Math.abs((predicted.LR?.toe ?? NaN) - (predicted.RR?.toe ?? NaN))).toBeLessThanOrEqual(0.1);
    // (0.5 − 0.1)/2
    const thrust = planRequest(withRearToe(file, 0.5, 0.1)).wish?.rear?.thrustAngle;
    expect(thrust?.high).toBeCloseTo(0.2, 12);
  });

  it('is left as it is where the wheels or steer-ahead have windows of their own', () => {
    for (const own of [{ toe: total }, { thrustAngle: total }, { left: { toe: total } }]) {
      const front = { totalToe: total, ...own };
      const request = withFront(front);
      expect(request.spec.front).toEqual(front);
      expect(request.wish).toBeUndefined();
    }
  });
});

describe('fields that this version does not know', () => {
  it('are kept, not refused: a file of a later version or of another hand loses nothing', () => {
    const [first, ...others] = tarn.car.front.adjusters;
    const front = { ...tarn.car.front, note: 'x', adjusters: [{ ...first, colour: 'red' }, ...others] };
    const { car } = parseCarFile(JSON.stringify({ ...tarn, car: { ...tarn.car, front, owner: 'y' } }));
    expect(car).toMatchObject({ owner: 'y', front: { note: 'x' } });
    expect(car.front.adjusters[0]).toMatchObject({ id: first?.id, colour: 'red' });
  });
});

describe('what was moved since the last reading', () => {
  const wheel = { camber: 0, caster: 3, toe: 0.2 };
  const move = (id: string, adjuster: string, to: number, rest: object = {}) => ({
    ...{ id, corner: 'LF', adjuster, from: adjuster === 'tie-rod' ? 0 : 3, to, outcome: 'done' },
    ...rest,
  });
  const fileWith = (...moved: readonly (readonly object[])[]) =>
    parseCarFile(
      JSON.stringify({
        ...tarn,
        visits: [
          {
            ...{ id: 'v', carId: tarn.car.id, opened: '2026-01-01' },
            rounds: moved.map((own, i) => ({
              id: `r${i}`,
              reading: { LF: wheel, RF: wheel },
              settings: {},
              moved: own,
            })),
          },
        ],
      }),
    );
  const doneIn = (...moved: readonly (readonly object[])[]) => planRequest(fileWith(...moved)).done;
  const ref = (adjuster: string) => ({ corner: 'LF', adjuster });

  it('is done; what would not move, or was taken back, is not', () => {
    expect(doneIn([move('a', 'upper-front', 4), move('b', 'tie-rod', 1, { outcome: 'set-to' })])).toEqual([
      ref('upper-front'),
      ref('tie-rod'),
    ]);
    const back = move('c', 'tie-rod', 0, { replaces: 'b' });
    expect(
      doneIn([move('a', 'upper-front', 3, { outcome: 'wont-move' }), move('b', 'tie-rod', 1), back]),
    ).toBeUndefined();
  });

  it('is done once, beside what is asked, and no more after the next reading', () => {
    expect(doneIn([move('a', 'tie-rod', 1), move('b', 'tie-rod', 2, { from: 1 })])).toEqual([ref('tie-rod')]);
    expect(
      planRequest(fileWith([move('a', 'tie-rod', 1)]), { done: [{ corner: 'RF', adjuster: 'tie-rod' }] }).done,
    ).toEqual([{ corner: 'RF', adjuster: 'tie-rod' }, ref('tie-rod')]);
    expect(doneIn([move('a', 'tie-rod', 1)], [])).toBeUndefined();
  });
});
