/**
 * `npm run bench:scale`: what 2,000 cars with 20,000 visits cost beside 20 cars with 200, side by side in one run: in Node
 * what the screens ask of the records, and, once built, the app in a Chromium that is slowed down as a phone is. Not a test.
 */
import { carsInOrder, found } from '../../app/state/car-list.ts';
import { carState } from '../../app/state/car-state.ts';
import { lastSettings } from '../../app/state/visits.ts';
import { store } from '../../app/store/index.ts';
import { byId, withRecords } from '../../app/store/lists.ts';
import type { Everything } from '../../app/store/schema.ts';
import { carId, makeShop, visitId } from '../tools/shop.ts';
import { type Backups, backupsOf } from './scale-backup.ts';
import { RATE, type Start, startOf } from './scale-page.ts';
import { print, type Row } from './topic.ts';

const OF_FIRST = 200;
const small = makeShop({ cars: 20, visits: 10, open: 3, ofFirst: OF_FIRST });
const large = makeShop({ cars: 2000, visits: 10, open: 3, ofFirst: OF_FIRST });

/** Median of some runs, ms. */
function time(work: () => unknown, runs = 30): number {
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[runs >> 1] ?? Number.NaN;
}

/** The same lists under new names, of which nothing is known yet. */
const afresh = (all: Everything): Everything =>
  Object.fromEntries(Object.entries(all).map(([name, list]) => [name, [...list]])) as unknown as Everything;

const QUESTIONS: Record<string, (all: Everything) => number> = {
  'from nothing known: the first twelve rows': (all) =>
    time(() => {
      const fresh = afresh(all);
      for (const car of carsInOrder(fresh).slice(0, 12)) carState(fresh, car);
    }, 5),
  'twelve rows of the list': (all) =>
    time(() => {
      for (const car of carsInOrder(all).slice(0, 12)) carState(all, car);
    }),
  'a key of the search': (all) => time(() => found(carsInOrder(all), 'bench 1')),
  'where a car’s adjusters stand': (all) => time(() => lastSettings(all, carId(7))),
  'a move kept, and its visit asked for': (all) => {
    let moves = all.moves;
    return time(() => {
      const [move] = moves;
      if (move) moves = withRecords(moves, [{ ...move, id: `new-${moves.length}`, visitId: visitId(7, 9) }]);
      byId(moves, move?.id ?? '');
    });
  },
};

const beside = (what: string, a: number, b: number, target?: string): Row => ({
  what,
  value: `${a.toFixed(2).padStart(9)} : ${b.toFixed(2).padStart(9)} ms, ${a > 0 ? (b / a).toFixed(1) : '–'} ×`,
  ...(target ? { target } : {}),
});

print(
  '20 : 2,000 cars, in Node at full speed',
  Object.entries(QUESTIONS).map(([what, ask]) => beside(what, ask(small), ask(large))),
);

const starts: Start[] = [];
for (const shop of [small, large]) starts.push(await startOf(shop, carId(0)));
const [one, other] = starts as [Start, Start];
const row = (what: string, key: keyof Start, target?: string): Row => beside(what, one[key], other[key], target);
print(`20 : 2,000 cars, the built app, slowed ${RATE} ×`, [
  row('from the address to the first rows', 'rows', 'target 1,200 ms, under 1.2 ×'),
  row('from the address until all is there', 'whole'),
  row('longest freeze until then', 'freeze', 'target 200 ms'),
  row('a key of the search, the slowest of seven', 'key', 'target 100 ms'),
  row('history of a car with 200 visits, from its page', 'history', 'target 200 ms'),
]);

const few = await backupsOf(small);
const many = await backupsOf(large);
const moved = (what: string, key: keyof Backups, target?: string): Row => beside(what, few[key], many[key], target);
const SMOOTH = 'target 200 ms';
print(`20 : 2,000 cars to a file and into an empty phone, equal; slowed ${RATE} ×; ${many.megabytes.toFixed(0)} MB`, [
  moved('saved to a file', 'exported'),
  moved('longest freeze of it', 'exportFreeze', SMOOTH),
  moved('counts of the file, before a restore', 'inspected'),
  moved('restored, until all is on the screen', 'restored'),
  moved('longest freeze of both', 'restoreFreeze', SMOOTH),
  moved('undone', 'undone'),
  moved('longest freeze of it', 'undoFreeze'),
]);
// Its channel to other tabs would keep Node waiting.
store.close();
