/** What front toe is read against: asked once in the life of a shop, kept in each reading, told in each comparison. */
import { beforeEach, describe, expect, it } from 'vitest';
import { pastOf } from '../../app/screens/history/past.ts';
import { againstText } from '../../app/state/against.ts';
import { compare } from '../../app/state/comparing.ts';
import { correctReading } from '../../app/state/correct-reading.ts';
import { fieldsOf } from '../../app/state/fields.ts';
import { formOfRecord } from '../../app/state/form.ts';
import { setToeReference, toeReference } from '../../app/state/preferences.ts';
import { draft, keepDraft, records } from '../../app/state/records.ts';
import { entryDraft } from '../../app/state/stage.ts';
import { asksReference, beginEntry, changeForm, entryForm, takeDown } from '../../app/state/visit-actions.ts';
import { type VisitView, visitView } from '../../app/state/visits.ts';
import type { Car, Reading } from '../../core/contract.ts';
import type { ReadingRecord } from '../../core/records/stored.ts';
import practice from '../../fixtures/cars/practice.json' with { type: 'json' };

const car = practice.car as unknown as Car;
const at = '2026-01-01T08:00:00Z';
const TYPED = { 'LF.toe': '0.30', 'RF.toe': '0.10', 'LR.toe': '0.25', 'RR.toe': '0.05' };
const THRUST = 0.1;

function start(...visits: string[]): void {
  records.value = {
    cars: [{ id: car.id, car, spec: {}, changed: at }],
    visits: visits.map((id, i) => ({ id, carId: car.id, opened: `2026-01-0${i + 1}` })),
    ...{ readings: [], moves: [], drafts: [], preferences: [] },
  };
}
function viewOf(id = 'v'): VisitView {
  const view = visitView(records.value, id);
  if (!view) throw new Error('no visit');
  return view;
}
function type(texts: Readonly<Record<string, string>>, id = 'v'): void {
  const key = entryDraft(id);
  keepDraft(key, { ...draft(key)?.texts, ...texts }, undefined);
}
/** Takes down what is typed. */
function taken(texts: Readonly<Record<string, string>>, id = 'v'): ReadingRecord {
  type(texts, id);
  takeDown(viewOf(id), {});
  return viewOf(id).rounds.at(-1)!.record;
}
const put = (id: string, visitId: string, reading: Reading, when = at, typed: ReadingRecord['typed'] = {}): void => {
  const record = { id, visitId, at: when, reading, settings: {}, typed };
  records.value = { ...records.value, readings: [...records.value.readings, record] };
};

beforeEach(() => start('v', 'w'));

describe('what front toe is read against', () => {
  it('is asked on the first reading; who goes on has taken the thrust line, and is not asked again', () => {
    expect(asksReference(viewOf())).toBe(true);
    expect(entryForm(viewOf()).reference).toBe('thrust-line');
    expect(taken(TYPED).reading).toMatchObject({ toeReference: 'thrust-line', LF: { toe: 0.3 } });
    expect(toeReference.value).toBe('thrust-line');
    expect(asksReference(viewOf('w'))).toBe(false);
  });

  it('is what was answered, for this reading and the next car', () => {
    setToeReference('centreline');
    changeForm(viewOf(), { reference: 'centreline' });
    expect(asksReference(viewOf())).toBe(false);
    expect(taken(TYPED).reading.toeReference).toBe('centreline');
    expect(taken(TYPED, 'w').reading.toeReference).toBe('centreline');
  });

  it('is changed for one reading, and stays the shop’s', () => {
    setToeReference('thrust-line');
    changeForm(viewOf(), { reference: 'centreline' });
    expect(taken(TYPED).reading.toeReference).toBe('centreline');
    expect(entryForm(viewOf('w')).reference).toBe('thrust-line');
  });

  it('stays what it was when the first digit was typed, whatever the settings say later', () => {
    setToeReference('thrust-line');
    changeForm(viewOf(), {});
    setToeReference('centreline');
    expect(taken(TYPED).reading.toeReference).toBe('thrust-line');
  });

  it('is the centre line of a gauge that gave no rear toe: there is no thrust line', () => {
    const { 'LR.toe': _, ...without } = TYPED;
    expect(taken(without).reading).toEqual({ LF: { toe: 0.3 }, RF: { toe: 0.1 }, RR: { toe: 0.05 } });
  });

  it('is not asked where the rack gives totals, which are the same against either', () => {
    changeForm(viewOf(), { total: true });
    expect(asksReference(viewOf())).toBe(false);
    taken({ 'front.totalToe': '0.40', 'rear.totalToe': '0.30' });
    expect(toeReference.value).toBeUndefined();
    expect(asksReference(viewOf('w'))).toBe(false);
    changeForm(viewOf('w'), { total: false });
    expect(asksReference(viewOf('w'))).toBe(true);
  });

  it('was asked car by car once: what was said then is what is shown first', () => {
    const old = { id: `toe-reference:${car.id}`, value: 'centreline' };
    records.value = { ...records.value, preferences: [old] };
    expect(entryForm(viewOf()).reference).toBe('centreline');
    expect(asksReference(viewOf())).toBe(true);
    setToeReference('thrust-line');
    expect(entryForm(viewOf()).reference).toBe('thrust-line');
  });
});

describe('a reading of before it was asked', () => {
  const old: Reading = { LF: { toe: 0.3 }, RF: { toe: 0.1 }, LR: { toe: 0.25 }, RR: { toe: 0.05 } };

  it('is against the centre line as ever, and so is the re-measure after it', () => {
    put('r', 'v', old);
    expect(formOfRecord(viewOf().rounds[0]!.record).reference).toBe('centreline');
    beginEntry(viewOf());
    expect(asksReference(viewOf())).toBe(false);
    expect(taken(TYPED).reading.toeReference).toBe('centreline');
  });

  it.each([[{}], [TYPED]])('stays so when it is corrected, typed or from a file: %j', (typed) => {
    setToeReference('thrust-line');
    put('r', 'v', old, at, typed);
    correctReading(viewOf(), viewOf().rounds[0]!);
    expect(taken({ 'LF.toe': '0.20' }).reading).toMatchObject({ toeReference: 'centreline', LF: { toe: 0.2 } });
  });
});

describe('two readings against different lines', () => {
  const centre: Reading = { LF: { toe: 0.3 }, RF: { toe: 0.1 }, LR: { toe: 0.25 }, RR: { toe: 0.05 } };
  const thrust: Reading = {
    ...{ LF: { toe: 0.3 - THRUST }, RF: { toe: 0.1 + THRUST }, LR: { toe: 0.25 }, RR: { toe: 0.05 } },
    toeReference: 'thrust-line',
  };
  const fields = fieldsOf(car, { sai: false, total: false });
  const sigma = { toe: 0.03 };
  const deviation = { LF: sigma, RF: sigma, LR: sigma, RR: sigma };

  it('are compared as seen from the measured one’s, and no further apart than they are', () => {
    const rows = compare(fields, {}, thrust, centre, centre, deviation);
    const toe = rows.filter(({ angle }) => angle === 'toe');
    expect(toe).toHaveLength(4);
    for (const row of toe) {
      expect(row.predicted).toBeCloseTo(row.measured, 12);
      expect(row.found).toBeCloseTo(row.measured, 12);
      expect(row.parted).toBeUndefined();
    }
    // Both rear wheels have a share in where a front one is expected.
    const spreads = Object.fromEntries(toe.map(({ where, deviation }) => [where, deviation]));
    expect(spreads.LF).toBeCloseTo(Math.sqrt(0.03 ** 2 * (1 + 1 / 4 + 1 / 4)), 12);
    expect(spreads.LR).toBe(0.03);
  });

  it('are not where the thrust angle is not known: the measured figure stands alone', () => {
    const { LR: _, ...without } = centre;
    const rows = compare(fields, {}, thrust, without, without, deviation);
    const [LF, RR] = (['LF', 'RR'] as const).map((corner) => rows.find(({ id }) => id === `${corner}.toe`));
    expect(LF).not.toHaveProperty('predicted');
    expect(LF).not.toHaveProperty('found');
    expect(RR?.predicted).toBe(0.05);
  });

  it('are drawn in the history from the newest one’s line, what cannot be told left out and counted', () => {
    put('r1', 'v', centre);
    put('r2', 'w', thrust, '2026-01-02T08:00:00Z');
    const lines = () => {
      const { past, lines: all, ...rest } = pastOf(records.value, records.value.cars[0]!);
      const field = all.find(({ id }) => id === 'LF.toe')!;
      return { found: past.map(({ found }) => found(field)), ...rest };
    };
    expect(lines()).toEqual({
      found: [expect.closeTo(0.2, 12), expect.closeTo(0.2, 12)],
      reference: 'thrust-line',
      leftOut: 0,
    });
    start('u', 'v', 'w');
    put('r0', 'u', { LF: { toe: 0.7 }, RF: { toe: 0 } });
    put('r2', 'w', thrust, '2026-01-02T08:00:00Z');
    expect(lines()).toEqual({ found: [undefined, expect.closeTo(0.2, 12)], reference: 'thrust-line', leftOut: 1 });
  });
});

describe('a steering wheel that stood off', () => {
  it('is asked for where that was said, kept in the reading, and asked for in the re-measure', () => {
    expect(fieldsOf(car, entryForm(viewOf())).some(({ angle }) => angle === 'steeringWheel')).toBe(false);
    changeForm(viewOf(), { wheel: true });
    const record = taken({ ...TYPED, 'front.steeringWheel': '−5' });
    expect(record.reading.steeringWheel).toBe(-5);
    beginEntry(viewOf());
    expect(entryForm(viewOf()).wheel).toBe(true);
    // Nobody typed it: it was level.
    expect(taken(TYPED).reading.steeringWheel).toBeUndefined();
  });

  it('comes back as it was when the reading is corrected, from a file too', () => {
    put('r', 'v', { LF: { toe: 0.3 }, RF: { toe: 0.1 }, steeringWheel: 4.5 });
    correctReading(viewOf(), viewOf().rounds[0]!);
    expect(taken({}).reading.steeringWheel).toBe(4.5);
  });
});

describe('the line under a reading', () => {
  const rear: Reading = { LR: { toe: 0.2 }, RR: { toe: 0.1 } };
  const total = { 'form:toe': 'total' };
  it.each<[string, Reading, ReadingRecord['typed'], RegExp]>([
    [
      'says the thrust line',
      { LF: { toe: 0 }, ...rear, toeReference: 'thrust-line' },
      {},
      /^Front toe against the thrust line\.$/,
    ],
    ['says the centre line of an old one', { RF: { toe: 0 }, ...rear }, {}, /^Front toe against the centre line\.$/],
    ['says why without rear toe', { LF: { toe: 0 }, LR: { toe: 0 } }, {}, /the centre line: rear toe was not read/],
    ['says nothing without front toe', { LF: { camber: 0 }, ...rear, toeReference: 'thrust-line' }, {}, /^$/],
    ['says nothing of a total', { LF: { toe: 0 }, RF: { toe: 0 }, ...rear, toeReference: 'thrust-line' }, total, /^$/],
  ])('%s', (_, reading, typed, says) => {
    expect(againstText({ reading, typed })).toMatch(says);
  });
});
