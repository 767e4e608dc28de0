/** Good files that mutants are made of: all car files and backups that there are, cars of every kind, backups by the app's own hand. */

import type { CarFile } from '../../../core/contract.ts';
import { validateCarFile } from '../../../core/records/car-file.ts';
import { fromCarFile } from '../../../core/records/exchange.ts';
import { identified } from '../../../core/records/identify.ts';
import type { CarRecord, DraftRecord, Stores } from '../../../core/records/stored.ts';
import { edited, joinVersions } from '../../../core/records/versions.ts';
import { marked } from '../../../core/records/visit-facts.ts';
import { oneOf, randomSuspension, stream } from '../../tools/random-cars.ts';
import { kindCases, sampleAdjuster } from '../../tools/samples.ts';

const FILES = import.meta.glob<object>('../../../fixtures/{cars,visits}/*.json', { eager: true, import: 'default' });
const BACKUPS = import.meta.glob<{ readonly stores: object }>('../../../fixtures/backups/*.json', {
  eager: true,
  import: 'default',
});

const at = (minute: number): string => new Date(Date.UTC(2026, 2, 1, 8, minute)).toISOString();

const REAR = {
  suspension: { kind: 'beam-rear', points: { wheelCentre: [-2600, 770, 320] }, camber: 0, toe: 0 },
  adjusters: [],
  steered: false,
};
const READ = { camber: -0.42, caster: 3.1, toe: 0.13 };
const SPEC = { front: { camber: { low: -1, high: 0 }, toe: { low: 0, aim: 0.05, high: 0.2 } } };

/** Every suspension with its adjusters, each with a visit of two rounds and a move between. */
function kindFiles(): object[] {
  return kindCases(() => 2).map(({ suspension, adjusters }, n) => {
    const random = stream(n + 1);
    const own = randomSuspension(random, suspension);
    const fitted = adjusters.map((name, i) => sampleAdjuster(random, name, own, `${name}-${i}`));
    const axle = { suspension: own, adjusters: fitted, steered: true };
    const id = `kind-${n}`;
    const car = { id, label: suspension, wheel: { rimDiameter: 420 }, front: axle, rear: REAR };
    const moved = oneOf(random, fitted);
    const reading = { LF: READ, RF: READ };
    const move = { corner: 'LF', adjuster: moved?.id, from: moved?.reference, to: moved?.reference };
    const rounds = [
      { id: `${id}-1`, at: at(1), reading, settings: {}, moved: moved ? [move] : [] },
      { id: `${id}-2`, at: at(9), reading, settings: {} },
    ];
    const visits = [{ id: `${id}-v`, carId: id, opened: at(0), rounds }];
    return { format: 'cornerwright', version: 1, car, spec: SPEC, visits };
  });
}

export const carFiles: readonly object[] = [...Object.values(FILES), ...kindFiles()];

/** The card of a car half way: a field typed, and one touch that can be put back. */
const CARD = {
  'car.label': 'half typed',
  'car.front.suspension.kind': 'strut',
  'car.front.adjusters[0].id': 'rod',
  'car.front.adjusters[0].kind': 'threaded-rod',
  'car.front.adjusters[0].lead': '1.5',
  'spec.front.camber.low': '-1',
  '@open': 'front-adjusters',
  '@undo': JSON.stringify({ says: 'A typical car', under: ['car.front'], texts: { 'car.front.steered': 'yes' } }),
};

/** What a phone keeps of a car that came in as a file, was edited on two phones, and is on the rack. */
function kept(file: CarFile): Stores {
  const { car, visits, readings, moves } = fromCarFile(identified(file), { now: at(0), makeId: () => 'none' });
  const relabelled = (label: string): CarRecord => ({ ...car, car: { ...car.car, label } });
  const here = edited(car, relabelled('As this phone has it'), at(20));
  const there = edited(car, relabelled('As the other phone has it'), at(21));
  const drafts: DraftRecord[] = visits.flatMap(({ id }): DraftRecord[] => [
    {
      id: `reading:${id}`,
      texts: { 'LF.camber': '-0.4', 'LF.toe': '0.1' },
      cursor: 'LF.toe',
      changed: at(30),
    },
    { id: `visit:${id}`, texts: { style: 'surest', 'left:torque': 'yes' }, changed: at(31) },
  ]);
  return {
    cars: [joinVersions(here, there)],
    visits: visits.map((visit) => marked(visit, { checks: { joints: 'LF low', pressures: 'ok' } }, at(5))),
    readings: readings.map((one) => ({ ...one, typed: { 'LF.camber': '-0.4', 'unit:toe': 'mm' } })),
    moves,
    drafts: [...drafts, { id: `car:${car.id}`, texts: CARD, changed: at(32) }],
    preferences: [
      { id: 'units', value: { angle: 'degrees-minutes', toe: 'mm', length: 'inch', sai: true } },
      { id: 'gauge', value: { camber: 0.02, caster: 0.05, toe: 0.01 } },
      { id: 'drawer', value: { counted: true, shims: [{ size: 1.5, count: 4 }] } },
      { id: 'theme', value: 'dark' },
      { id: 'toe-reference', value: 'thrust-line' },
      { id: `total-toe:${car.id}`, value: true },
      { id: 'backup', value: { at: at(40) } },
    ],
  };
}

/** Records as a backup has them. */
export const recordSets: readonly object[] = [
  ...Object.values(BACKUPS).map(({ stores }) => stores),
  ...carFiles.map((file) => kept(validateCarFile(file))),
];
