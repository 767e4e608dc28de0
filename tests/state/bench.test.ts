/** What the bench hands to a visit: figures of its entry, each with how it was measured, for as long as nobody types over it. */
import { beforeEach, describe, expect, it, vi } from 'vitest';

const page = { documentElement: { dataset: {} }, addEventListener: () => undefined };
vi.stubGlobal('document', page);
vi.stubGlobal('addEventListener', page.addEventListener);
vi.stubGlobal('location', { hash: '' });
const bench = await import('../../app/state/bench.ts');
const { measuredWith, methodOf, withMethods } = await import('../../app/state/methods.ts');
const { draft, keep, records } = await import('../../app/state/records.ts');
const { entryDraft, stageOf } = await import('../../app/state/stage.ts');
const actions = await import('../../app/state/visit-actions.ts');
const { visitView } = await import('../../app/state/visits.ts');
const { canRead } = await import('../../app/state/units.ts');
const { carFile } = await import('../core/records/fixture.ts');
const { planOfFile } = await import('../../core/index.ts');
const { deleteCar } = await import('../../app/state/deleting.ts');
const { visitFile } = await import('../../app/state/visit-file.ts');

const { car, spec = {} } = carFile('tarn-gt.json');
const view = () => visitView(records.value, 'v')!;
const texts = () => draft(entryDraft('v'))?.texts ?? {};
const TOES = { LF: 0.31, RF: 0.12, LR: -0.05, RR: 0.2 } as const;
const strung = Object.entries(TOES).map(([where, value]) => ({
  ...{ where: where as keyof typeof TOES, angle: 'toe' as const, value, by: 'string' as const, sd: 0.061 },
}));

beforeEach(() => {
  records.value = { cars: [], visits: [], readings: [], moves: [], drafts: [], preferences: [] };
  void keep(
    ['cars', { id: car.id, car, spec, changed: '2026-01-01' }],
    ['visits', { id: 'v', carId: car.id, opened: '2026-01-01' }],
  );
});

describe('toe by string', () => {
  it('goes into the entry, wheel by wheel, against the centre line', () => {
    expect(bench.handOver(view(), strung)).toEqual([]);
    expect(texts()).toMatchObject({
      'LF.toe': '0.31',
      'LR.toe': '−0.05',
      'form:toe': 'each',
      'form:reference': 'centreline',
    });
    expect(methodOf(texts(), 'LF.toe')).toEqual({ by: 'string', sd: 0.061 });
    const { reading } = actions.typedRecord(view(), {});
    expect(reading).toMatchObject({
      toeReference: 'centreline',
      LF: { toe: 0.31 },
      methods: { LF: { toe: { by: 'string', sd: 0.061 } }, RR: { toe: { by: 'string', sd: 0.061 } } },
    });
    expect(measuredWith(reading)).toEqual(['LF, RF, LR, RR toe: string, ± 0.06°']);
  });

  it('does not make the shop’s rack read against the centre line from then on', () => {
    bench.handOver(view(), strung);
    expect(actions.asksReference(view())).toBe(false);
    actions.takeDown(view(), {});
    expect(records.value.preferences.map(({ id }) => id)).not.toContain('toe-reference');
  });

  it('is the rack’s once it is typed over', () => {
    bench.handOver(view(), strung);
    const typed = { ...texts(), 'LF.toe': '0.3' };
    expect(methodOf(typed, 'LF.toe')).toBeUndefined();
    const fields = actions.entryFields(view());
    expect(withMethods({}, fields, typed).methods).not.toHaveProperty('LF');
  });

  it('stays with the reading through a correction', async () => {
    bench.handOver(view(), strung);
    actions.takeDown(view(), {});
    const { correctReading } = await import('../../app/state/correct-reading.ts');
    correctReading(view(), view().rounds[0]!);
    expect(actions.typedRecord(view(), {}).reading.methods).toEqual(view().rounds[0]!.record.reading.methods);
  });

  it('makes the plan as sure as a string is', () => {
    const chanceOf = (sd: number) => {
      records.value = { ...records.value, readings: [], drafts: [] };
      bench.handOver(view(), [
        ...strung.map((one) => ({ ...one, sd })),
        ...(['LF', 'RF'] as const).flatMap((where) => [
          { where, angle: 'caster' as const, value: 3.2, by: 'sweep' as const, sd: 0.2 },
          { where, angle: 'camber' as const, value: -0.4, by: 'plumb' as const, sd: 0.06 },
        ]),
      ]);
      actions.takeDown(view(), {});
      return planOfFile(visitFile(view(), view().rounds[0]!, []), { style: 'closest' }).chance;
    };
    expect(chanceOf(0.02)).toBeGreaterThan(chanceOf(0.3));
  });
});

describe('a total', () => {
  it('has the form ask for totals, and each wheel has its share of the scatter', () => {
    bench.handOver(view(), [{ where: 'front', angle: 'totalToe', value: 0.3, by: 'tape', sd: 0.1 }]);
    expect(texts()).toMatchObject({ 'front.totalToe': '0.30', 'form:toe': 'total' });
    const { reading } = actions.typedRecord(view(), {});
    expect(reading.LF?.toe).toBeCloseTo(0.15, 9);
    // Two of them make the total's again.
    const { sd } = reading.methods!.LF!.toe!;
    expect(Math.hypot(sd, sd)).toBeCloseTo(0.1, 9);
  });
  it('is written in the unit that the shop reads toe in, and says the same', async () => {
    void keep(['preferences', { id: 'units', value: { toe: 'mm' }, changed: '2026-01-01' }]);
    canRead('mm');
    await vi.waitFor(() => expect(canRead('mm')).toBe(true));
    bench.handOver(view(), [{ where: 'front', angle: 'totalToe', value: 0.3, by: 'tape', sd: 0.1 }]);
    expect(texts()['front.totalToe']).toMatch(/^\d+\.\d$/);
    const { LF, RF } = actions.typedRecord(view(), {}).reading;
    expect(LF!.toe! + RF!.toe!).toBeCloseTo(0.3, 1);
  });
});

describe('what comes beside', () => {
  it('has its place on the form asked for: SAI', () => {
    bench.handOver(view(), [{ where: 'LF', angle: 'sai', value: 12.4, by: 'sweep', sd: 0.2 }]);
    expect(texts()).toMatchObject({ 'LF.sai': '12.40', 'form:sai': 'taken' });
  });
  it('or is told where the car has none', () => {
    const aside = { where: 'rear', angle: 'lateral', value: 3, by: 'tape', sd: 0.5 } as const;
    const onLinks = view().car.car.rear.suspension.kind === 'beam-linked';
    expect(bench.handOver(view(), [aside])).toEqual(onLinks ? [] : [aside]);
  });
  it('begins a re-measure where the moves are on', () => {
    bench.handOver(view(), strung);
    actions.takeDown(view(), {});
    expect(stageOf(view())).toBe('moves');
    bench.handOver(view(), strung.slice(0, 1));
    expect(stageOf(view())).toBe('entry');
    expect(view().rounds).toHaveLength(1);
  });
  it('opens the entry again that waited for the adjusters', () => {
    bench.handOver(view(), strung);
    actions.entryReady(view());
    expect(stageOf(view())).toBe('standing');
    bench.handOver(view(), [{ where: 'LF', angle: 'camber', value: -0.5, by: 'phone', sd: 0.1 }]);
    expect(stageOf(view())).toBe('entry');
    expect(texts()).toMatchObject({ 'LF.toe': '0.31', 'LF.camber': '−0.50' });
  });
});

describe('the bench’s own figures', () => {
  it('are kept as they are typed, and say whom they were typed for', () => {
    bench.typeAtBench('across', { front: '1500' }, 'v');
    bench.typeAtBench('across', { rear: '1503' }, 'v');
    expect(bench.benchTexts('across')).toMatchObject({ front: '1500', rear: '1503' });
    expect(bench.typedForAnother('across', 'v')).toBeUndefined();
    expect(bench.typedForAnother('across', 'w')).toBe(car.label);
    bench.clearBench('across');
    expect(bench.benchTexts('across')).toEqual({});
  });
  it('keep the unit that lengths were typed in', () => {
    bench.typeAtBench('across', { front: '1500' }, '');
    void keep(['preferences', { id: 'units', value: { length: 'inch' }, changed: '2026-01-02' }]);
    expect(bench.benchLength('across')).toBe('mm');
    expect(bench.benchLength('strings')).toBe('inch');
  });
  it('have a usual scatter until one was tried; what no instrument has is not taken', () => {
    expect(bench.scatter.value.tape).toBe(0.7);
    bench.setScatter('tape', 0.45);
    bench.setScatter('level', 0.08);
    expect(bench.scatter.value).toMatchObject({ tape: 0.45, level: 0.08, rule: 0.3 });
    void keep(['preferences', { id: 'bench', value: { tape: 'x', level: -1 }, changed: '2026-01-02' }]);
    expect(bench.scatter.value).toMatchObject({ tape: 0.7, level: 0.1 });
  });
  it('go to open visits, the newest of each car, and to none that is closed or deleted', () => {
    const visit = (id: string, opened: string, more = {}) =>
      ['visits', { id, carId: car.id, opened, ...more }] as const;
    void keep(visit('w', '2026-01-03'), visit('x', '2026-01-02', { closed: '2026-01-02' }));
    const other = { ...car, id: 'other' };
    void keep(
      ['cars', { id: 'other', car: other, spec, changed: '2026-01-01' }],
      ['visits', { id: 'y', carId: 'other', opened: '2026-01-04' }],
    );
    expect(bench.visitsToHandTo('').map((one) => one.visit.id)).toEqual(['y', 'w']);
    expect(bench.visitsToHandTo('v').map((one) => one.visit.id)).toEqual(['v']);
    deleteCar({ id: 'other' });
    expect(bench.visitsToHandTo('').map((one) => one.visit.id)).toEqual(['w']);
    expect(bench.visitsToHandTo('y')).toEqual([]);
    expect(bench.visitsToHandTo('x')).toEqual([]);
  });
});

it.each(['string 0.05', 'string x 0.3', 'string -1 0.3', 'string 99 0.3', 'guess 0.05 0.3', ''])(
  'what a backup may bring in its place, “%s”, says nothing',
  (text) => {
    expect(methodOf({ 'LF.toe': '0.3', 'method:LF.toe': text }, 'LF.toe')).toBeUndefined();
  },
);
