/** A car file that comes in beside records that are here: nothing lost, nothing doubled, and it is said what came. */
import { describe, expect, it } from 'vitest';
import { type Incoming, incoming } from '../../app/screens/build/import-file.ts';
import { isGone, workOn } from '../../app/state/gone.ts';
import type { CarFile, Round } from '../../core/contract.ts';
import { deletedNow } from '../../core/records/deletion-marks.ts';
import { toCarFile } from '../../core/records/exchange.ts';
import type { Stores } from '../../core/records/stored.ts';
import { keptVersions } from '../../core/records/versions.ts';
import { marked } from '../../core/records/visit-facts.ts';
import { carFile } from '../core/records/fixture.ts';

const EMPTY: Stores = { cars: [], visits: [], readings: [], moves: [], drafts: [], preferences: [] };
const FILE = carFile('ribble-six.json');
let made = 0;
const clock = { now: '2025-02-01T08:00:00Z', makeId: () => `made-${++made}` };

/** The records after what came in was written. */
function after(all: Stores, { entries }: Incoming): Stores {
  const next: Record<string, { readonly id: string }[]> = {};
  for (const [store, list] of Object.entries(all)) next[store] = [...list];
  for (const [store, record] of entries) {
    next[store] = [...(next[store] ?? []).filter(({ id }) => id !== record.id), record];
  }
  return next as unknown as Stores;
}
const bring = (all: Stores, file: CarFile): { all: Stores; what: Incoming } => {
  const what = incoming(file, all, clock);
  return { all: after(all, what), what };
};
const fileFrom = ({ cars, visits, readings, moves }: Stores): CarFile => toCarFile(cars[0]!, visits, readings, moves);
const at = (hour: number): string => `2025-01-05T${hour}:00:00Z`;
const NONE = { visits: 0, readings: 0, moves: 0 };
const round = (id: string | undefined, camber: number): Round => ({
  ...(id ? { id } : {}),
  reading: { LF: { camber } },
  settings: {},
});
const withRounds = (...rounds: Round[]): CarFile => ({
  ...FILE,
  visits: [{ id: 'v', carId: FILE.car.id, opened: '2025-01-05T08:00:00Z', rounds }],
});

describe('a car file', () => {
  it('comes in whole where the car is new, and a second time brings nothing', () => {
    const first = bring(EMPTY, FILE);
    expect(first.what.known).toBe(false);
    expect(first.what.added.visits).toBe(FILE.visits?.length);
    const again = bring(first.all, FILE);
    expect(again.what).toMatchObject({ known: true, entries: [], added: NONE, changed: 0 });
    expect(again.what.other).toBeUndefined();
  });

  it('written by hand without ids comes in once', () => {
    const file = withRounds(round(undefined, 0.5), round(undefined, 0.5), {
      ...round(undefined, 0.7),
      moved: [{ corner: 'LF', adjuster: FILE.car.front.adjusters[0]!.id, from: '3', to: '4' }],
    });
    const { all, what } = bring(EMPTY, file);
    expect(what.added).toEqual({ visits: 1, readings: 3, moves: 1 });
    expect(bring(all, file).what).toMatchObject({ entries: [], added: NONE, changed: 0 });
  });

  it('adds its visits to those here and says how many', () => {
    const { all } = bring(EMPTY, FILE);
    const { all: both, what } = bring(all, withRounds(round('r1', 0.2), round('r2', 0.1)));
    expect(what.added).toEqual({ visits: 1, readings: 2, moves: 0 });
    expect(both.visits).toHaveLength((FILE.visits?.length ?? 0) + 1);
    expect(both.readings).toHaveLength(all.readings.length + 2);
  });

  it('closes a visit that is open here, and the pre-checks and typed digits of this phone stay', () => {
    const { all } = bring(EMPTY, withRounds(round('r1', 0.2)));
    const here: Stores = {
      ...all,
      visits: all.visits.map((visit) => ({ ...visit, checks: { tyres: 'ok' } })),
      readings: all.readings.map((reading) => ({ ...reading, typed: { 'LF.camber': '0,2' } })),
    };
    const file = withRounds(round('r1', 0.2));
    const closed = { ...file, visits: file.visits!.map((visit) => ({ ...visit, closed: '2025-01-05T10:00:00Z' })) };
    const { all: now, what } = bring(here, closed);
    expect(what).toMatchObject({ added: NONE, changed: 1 });
    expect(now.visits[0]).toMatchObject({ closed: '2025-01-05T10:00:00Z', checks: { tyres: 'ok' } });
    expect(now.readings[0]?.typed).toEqual({ 'LF.camber': '0,2' });
  });

  it('does not close a visit that was opened again here, nor one there', () => {
    const [visit] = withRounds(round('r1', 0.2)).visits!;
    const file: CarFile = { ...FILE, visits: [{ ...visit!, closed: at(10) }] };
    const { all } = bring(EMPTY, file);
    const reopened: Stores = { ...all, visits: all.visits.map((visit) => marked(visit, { closed: '' }, at(11))) };
    const again = bring(reopened, file).all;
    expect(again.visits.map((visit) => visit.closed)).toEqual([undefined]);
    expect(bring(all, fileFrom(reopened)).all.visits).toEqual(again.visits);
  });

  it.each([
    [0.2, 0.9],
    [0.9, 0.2],
  ])(
    'with the id of a reading that is here and another content keeps both (%d here, %d in the file)',
    (mine, theirs) => {
      const { all } = bring(EMPTY, withRounds(round('r1', mine)));
      const here: Stores = {
        ...all,
        readings: all.readings.map((one) => ({ ...one, typed: { 'LF.camber': 'mine' } })),
      };
      const { all: now, what } = bring(here, withRounds(round('r1', theirs)));
      expect(now.readings.map(({ reading }) => reading.LF?.camber).sort()).toEqual([0.2, 0.9]);
      expect(now.readings.find(({ reading }) => reading.LF?.camber === mine)?.typed).toEqual({ 'LF.camber': 'mine' });
      expect(what.added.readings + what.changed).toBeGreaterThan(0);
      expect(bring(now, withRounds(round('r1', theirs))).what.entries).toEqual([]);
    },
  );

  it('with another build leaves this one, keeps the other with it and hands it over', () => {
    const { all } = bring(EMPTY, FILE);
    const other = { ...FILE, car: { ...FILE.car, label: 'Renamed' } };
    const { all: now, what } = bring(all, other);
    expect(what.entries.map(([store]) => store)).toEqual(['cars']);
    expect(now.cars[0]?.car.label).toBe(FILE.car.label);
    expect(keptVersions(now.cars[0]!).map(({ car }) => car.label)).toEqual(['Renamed']);
    expect(bring(now, other).what).toMatchObject({ entries: [], other: { car: { label: 'Renamed' } } });
    expect(what.other?.car.label).toBe('Renamed');
    expect(what.other?.spec).toEqual(FILE.spec);
    expect(fileFrom(now)).toEqual(fileFrom(all));
  });

  it('of a car that was deleted here brings it back', () => {
    const here = bring(EMPTY, FILE).all;
    const [car] = here.cars as [Stores['cars'][number]];
    const gone = { ...here, cars: [deletedNow(car, workOn(here, car), '2025-02-02T08:00:00Z')] };
    expect(isGone(gone, gone.cars[0]!)).toBe(true);
    const { all, what } = bring(gone, FILE);
    expect(what).toMatchObject({ known: true, isBack: true, added: NONE });
    expect(isGone(all, all.cars[0]!)).toBe(false);
    expect(bring(all, FILE).what).toMatchObject({ entries: [], added: NONE });
  });
});
