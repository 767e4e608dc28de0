/** What the customer is handed says what was read and done, and never what a technician should look at. */
import { h } from 'preact';
import { expect, test, vi } from 'vitest';
import type { VisitView } from '../../app/state/visits.ts';
import type { Reading } from '../../core/contract.ts';
import { assess } from '../../core/index.ts';
import { carFile } from '../core/records/fixture.ts';
import { markup } from '../parts/markup.ts';

// The app's preferences set the look of the page when they load.
const page = { documentElement: { dataset: {} }, addEventListener: () => undefined };
vi.stubGlobal('document', page);
vi.stubGlobal('addEventListener', page.addEventListener);
vi.stubGlobal('location', { hash: '' });
const { Paper } = await import('../../app/screens/visit/left.tsx');

const { car, spec = {}, visits = [] } = carFile('tarn-gt.json');
const BENT: Reading = {
  LF: { camber: -2.5, caster: 2, toe: 0.1, sai: 10 },
  RF: { camber: 0.5, caster: 4, toe: 0.1, sai: 10 },
};

function sheetOf(reading: Reading, more: Partial<typeof car> = {}): string {
  const record = { ...visits[0]!.rounds[0]!, id: 'r', visitId: 'v', at: '2026-01-01T10:00:00Z', typed: {}, reading };
  const round = { record, moves: [], base: [], done: [] };
  const view: VisitView = {
    visit: { id: 'v', carId: car.id, opened: '2026-01-01T09:00:00Z', closed: '2026-01-01T11:00:00Z' },
    car: { id: car.id, car: { ...car, ...more }, spec, changed: '2026-01-01T09:00:00Z' },
    rounds: [round],
  };
  return markup(h(Paper, { view }));
}

test('the sheet shows the angles of a wheel that looks bent, and no hint', () => {
  const { hints } = assess(BENT, spec, { kinds: { front: car.front.suspension.kind } });
  expect(hints.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['pattern', 'setback']));
  const sheet = sheetOf(BENT);
  expect(sheet).toContain('−2.5');
  for (const { text } of hints) expect(sheet).not.toContain(text);
  expect(sheet).not.toMatch(/bent|knuckle|spindle|pivot|setback|look (?:at|for)/i);
});

test('the sheet names the customer, the VIN and the tyres where they are on file, and asks for none', () => {
  const of = { customer: 'M. Ostler', vin: 'PRACTICE 0001', tyres: '205/55 R16, 2.3 and 2.1' };
  const sheet = sheetOf(BENT, of);
  for (const text of Object.values(of)) expect(sheet).toContain(text);
  expect(sheetOf(BENT)).not.toMatch(/Customer|VIN|Tyres/);
});
