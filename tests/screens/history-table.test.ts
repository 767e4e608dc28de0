/** The history for a spreadsheet: what is on file of the car and its visits, and figures as bare numbers in the shop's units. */
import 'fake-indexeddb/auto';
import { afterEach, expect, it } from 'vitest';
import { pastOf } from '../../app/screens/history/past.ts';
import { historyTable } from '../../app/screens/history/table-file.ts';
import { type Records, records } from '../../app/state/records.ts';
import { marked } from '../../core/records/visit-facts.ts';
import { carFile } from '../core/records/fixture.ts';

const { car, spec = {} } = carFile('tarn-gt.json');
const at = (hour: number): string => `2026-03-01T${String(hour).padStart(2, '0')}:00:00.000Z`;
const told = { ...car, label: '=HYPERLINK("x")', plate: '-TARN 1', wheel: { rimDiameter: 400 } };
const record = { id: car.id, car: told, spec, changed: at(7) };
const checks = { odometer: '84,210 mi', technician: 'A. Ostler' };
const first = marked({ id: 'v', carId: car.id, opened: at(8), closed: at(9) }, { checks }, at(8));
const reading = {
  ...{ LF: { camber: -0.5, toe: 0.1 }, RF: { camber: 0.25 }, LR: { toe: 0.2 }, RR: { toe: 0 } },
  rideHeights: { LF: 381, RF: 386.08 },
};
const all = (preferences: Records['preferences'] = []): Records => ({
  cars: [record],
  visits: [first],
  readings: [{ id: 'r', visitId: 'v', at: at(8), reading, settings: {}, typed: {} }],
  moves: [],
  drafts: [],
  preferences,
});

/** By the head of its column, of the row as found. */
function tableOf(records: Records, separator: string): Record<string, string> {
  const [heads = '', row = ''] = historyTable(pastOf(records, record), record).split('\r\n');
  const cells = (line: string) => line.split(new RegExp(`${separator}(?=(?:[^"]*"[^"]*")*[^"]*$)`));
  return Object.fromEntries(cells(heads).map((head, i) => [head.replaceAll('"', ''), cells(row)[i] ?? '']));
}

afterEach(() => {
  records.value = all();
});

it('has what is on file and no more, formulas defused', () => {
  records.value = all();
  const found = tableOf(records.value, ',');
  expect(found).toMatchObject({
    ...{ Visit: '2026-03-01', Reading: 'as found', 'Signed off': 'yes', Technician: 'A. Ostler' },
    ...{ Car: `"'=HYPERLINK(""x"")"`, Plate: `'-TARN 1`, Odometer: '84210', 'Odometer in': 'mi' },
    ...{ 'LF camber, degrees': '-0.5', 'LF toe, degrees': '0.1', 'front cross camber, degrees': '-0.75' },
    ...{ 'LF ride height, mm': '381', 'front ride height, left less right, mm': '-5.08' },
  });
  expect(Object.keys(found)).not.toContain('Customer');
  expect(Object.keys(found)).not.toContain('Shop');
});

it('is in the shop’s units: inches, a comma, toe at the rim, the sign of its thrust line', () => {
  const value = { length: 'inch', toe: 'mm', decimal: ',', thrust: 'right-minus' };
  records.value = all([
    { id: 'units', value },
    { id: 'shop', value: { name: 'Bench; and Marl' } },
  ]);
  const found = tableOf(records.value, ';');
  expect(found).toMatchObject({
    Shop: '"Bench; and Marl"',
    'LF ride height, inch': '15',
    'RF ride height, inch': '15,2',
    'LF camber, degrees': '-0,5',
    // 400 mm · sin 0.1°, by hand: 0.698 mm.
    'LF toe, mm at the rim': '0,6981',
    // (0.2 − 0)/2 to the right, which this shop has as below zero.
    'thrust angle, degrees, - to the right': '-0,1',
  });
});
