/** What was not read off the rack is as sure as what it was read with: that is in the plan's chance, in learning and in causes. */
import { describe, expect, it } from 'vitest';
import type { Methods, Reading, Round } from '../../../core/contract.ts';
import { explain, learn, planMoves, planRequest, validateCarFile } from '../../../core/index.ts';
import { carFile } from '../records/fixture.ts';

const file = carFile('tarn-gt.json');
const request = planRequest(file);
const RACK = { camber: 0.03, caster: 0.08, toe: 0.015 };
const ROUGH = { camber: 0.09, caster: 0.25, toe: 0.07 };
const { reading } = request;

const by = (sds: Partial<typeof ROUGH>): NonNullable<Methods['LF']> =>
  Object.fromEntries(Object.entries(sds).map(([angle, sd]) => [angle, { by: 'string', sd }]));
const all = (sds: Partial<typeof ROUGH>): Methods => ({ LF: by(sds), RF: by(sds), LR: by(sds), RR: by(sds) });
const measured = (methods: Methods, style = 'closest' as const) =>
  planMoves({ ...request, style, gauge: RACK, reading: { ...reading, methods } });

describe('a plan on what was measured otherwise', () => {
  it('is as sure as with such a gauge', () => {
    const { chance } = measured(all(ROUGH));
    expect(chance).toBe(planMoves({ ...request, style: 'closest', gauge: ROUGH }).chance);
    expect(chance).toBeLessThan(planMoves({ ...request, style: 'closest', gauge: RACK }).chance);
  });

  it('counts it wheel by wheel and angle by angle', () => {
    const chances = [{}, { LF: by({ toe: 0.07 }) }, { LF: by({ toe: 0.07 }), RF: by({ toe: 0.07 }) }].map(
      (methods) => measured(methods).chance,
    );
    expect(chances[1]).toBeLessThan(chances[0]!);
    expect(chances[2]).toBeLessThan(chances[1]!);
    const { deviation } = measured({ LF: by({ toe: 0.07 }) });
    const plain = measured({}).deviation;
    expect(deviation.RF).toEqual(plain.RF);
    expect(deviation.LF!.toe).toBeGreaterThan(plain.LF!.toe!);
    expect(deviation.LF!.camber).toBeCloseTo(plain.LF!.camber!, 12);
  });

  it('keeps it through moves that were made after the reading', () => {
    const [visit] = file.visits!;
    const [round] = visit!.rounds;
    const [move] = planMoves(request).moves;
    const { corner, adjuster, from, to } = move!;
    const moved = [{ corner, adjuster, from, to, outcome: 'done' as const }];
    const marked: Round = { ...round!, reading: { ...round!.reading, methods: all(ROUGH) }, moved };
    const after = planRequest({ ...file, visits: [{ ...visit!, rounds: [marked] }] });
    expect(after.reading.methods).toEqual(all(ROUGH));
  });
});

describe('learning', () => {
  const rounds = (methods?: Methods): Round[] => {
    const plan = planMoves({ ...request, gauge: RACK });
    const off: Reading = { ...plan.predicted, LF: { ...plan.predicted.LF, camber: plan.predicted.LF!.camber! + 0.2 } };
    return [
      { reading: { ...reading, ...(methods && { methods }) }, settings: request.settings },
      { reading: off, settings: plan.positions },
    ];
  };
  it('does not trust a string as it trusts a rack', () => {
    const [rough, plain] = [learn(request.car, rounds(all(ROUGH)), RACK), learn(request.car, rounds(), RACK)];
    expect(rough.learned?.parts).toEqual(learn(request.car, rounds(), ROUGH).learned?.parts);
    expect(rough.learned?.parts).not.toEqual(plain.learned?.parts);
  });
  it('nor does it look for a cause where a string may be off', () => {
    const noise = (methods?: Methods) => {
      const [first, second] = rounds(methods) as [Round, Round];
      return (
        explain(request.car, second, { before: first, gauge: RACK }).find(({ cause }) => cause === 'noise')
          ?.probability ?? 0
      );
    };
    expect(noise(all(ROUGH))).toBeGreaterThan(noise());
  });
});

describe('a file', () => {
  const withMethods = (methods: unknown) => {
    const [visit] = file.visits!;
    const [round] = visit!.rounds;
    const rounds = [{ ...round!, reading: { ...round!.reading, methods } }];
    return () => validateCarFile({ ...file, visits: [{ ...visit!, rounds }] });
  };
  it('brings it along, and nothing that it does not know', () => {
    expect(withMethods(all(ROUGH))()).toMatchObject({ visits: [{ rounds: [{ reading: { methods: all(ROUGH) } }] }] });
    expect(withMethods({ rear: { pinionAngle: { by: 'level', sd: 0.1 } } })).not.toThrow();
    expect(withMethods({ LF: { toe: { by: 'guess', sd: 0.1 } } })).toThrow('methods.LF.toe.by');
    expect(withMethods({ LF: { toe: { by: 'string', sd: -1 } } })).toThrow('methods.LF.toe.sd');
    expect(withMethods({ LF: { lateral: { by: 'string', sd: 1 } } })).toThrow('methods.LF');
  });
});
