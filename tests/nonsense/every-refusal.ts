/** Every refusal that core can give, of every field that there is. */
import { planRequest } from '../../core/ask/plan-request.ts';
import { validatePlanRequest, validateRequestOptions } from '../../core/check/request.ts';
import { validateSpec } from '../../core/check/spec.ts';
import type { CarFile } from '../../core/contract.ts';
import { InputError } from '../../core/input-error.ts';
import { parseCarFile, validateCarFile } from '../../core/records/car-file.ts';
import { checkBackup, makeBackup } from '../../core/records/envelope.ts';
import { fromCarFile } from '../../core/records/exchange.ts';
import { mergeCarFiles } from '../../core/records/merge.ts';
import type { Stores } from '../../core/records/stored.ts';
import { readStores } from '../../core/records/stored-schema.ts';
import { carFile } from '../core/records/fixture.ts';
import { refusalOf, refusalsOf, spoilt } from '../tools/spoil.ts';
import { refusalsOfParts } from './refusals-of-parts.ts';
import { refusalsOfSchemas } from './refusals-of-schemas.ts';

/** All of them. Backups are checked in their own time. */
export async function everyRefusal(): Promise<InputError[]> {
  return [...ofFiles(), ...ofRequests(), ...refusalsOfParts(), ...(await ofBackups()), ...refusalsOfSchemas()];
}

const good = carFile('tarn-gt.json');

function ofFiles(): InputError[] {
  const visits = good.visits?.slice(0, 1).map((visit) => ({ ...visit, closed: visit.opened, rounds: [FULL_ROUND] }));
  const window = { low: -1, aim: 0, high: 1 };
  const wheel = { camber: window, caster: window, toe: window };
  const axle = { ...wheel, totalToe: window, crossCamber: window, crossCaster: window, thrustAngle: window };
  const spec = { front: { ...axle, left: wheel, right: wheel }, rear: axle };
  const { front, rear, ...car } = {
    ...good.car,
    plate: 'AB 12',
    customer: 'O',
    vin: 'V',
    tyres: 'T',
    notes: 'none',
    steeringRatio: 16,
  };
  const bare = { suspension: { kind: 'unknown' }, adjusters: [], steered: false };
  return [
    ...refusalsOf(car, (bad: object) => validateCarFile({ ...good, car: { ...bad, front, rear } })),
    ...refusalsOf({ front, rear }, (bad: object) => validateCarFile({ ...good, visits: [], car: { ...car, ...bad } })),
    ...refusalsOf({ ...good, car: 0, spec, visits }, (bad: object) =>
      validateCarFile(isObject(bad) ? { ...bad, car: { ...car, front: bare, rear: bare } } : bad),
    ),
    ...refusalsOf(undefined, (bad) => validateCarFile({ ...good, car: bad })),
    ...refusalsOf(LEARNED, (learned: object) =>
      validateCarFile({ ...good, visits: [], car: { ...good.car, learned } }),
    ),
    ...[{ corners: ['LF', 'LR'] }, { unknowns: ['LF.nowhere.x'] }, { covariance: [-1] }].flatMap((wrong) => {
      const learned = { ...LEARNED, parts: [{ ...LEARNED.parts[0], ...wrong }] };
      return refusalOf(() => validateCarFile({ ...good, visits: [], car: { ...good.car, learned } }));
    }),
    ...refusalsOf(START, (start: object) =>
      validateCarFile({ ...good, visits: [], car: { ...good.car, front: { ...good.car.front, start } } }),
    ),
    ...[{ corners: ['LR'] }, { unknowns: ['LF.nowhere.x'] }, { at: [] }].flatMap((wrong) => {
      const start = { ...START, parts: [{ ...START.parts[0], ...wrong }] };
      return refusalOf(() =>
        validateCarFile({ ...good, visits: [], car: { ...good.car, front: { ...good.car.front, start } } }),
      );
    }),
    ...refusalOf(() => validateSpec({ rear: { crossCamber: { low: 0, aim: 2, high: 1 } } })),
    ...['', '[]', '['.repeat(200) + ']'.repeat(200), `[${'{},'.repeat(3e5)}{}]`].flatMap((text) =>
      refusalOf(() => parseCarFile(text)),
    ),
    ...refusalOf(() => parseCarFile(1 as never)),
    ...refusalOf(() => mergeCarFiles(good, { ...good, car: { ...good.car, id: 'other' } })),
    ...refusalOf(() => planRequest({ format: good.format, version: 1, car: good.car, visits: good.visits ?? [] })),
    ...refusalOf(() => planRequest({ ...good, visits: [] })),
    ...refusalOf(() => planRequest(withSettings({ 'upper-frnt': 3 }))),
    ...refusalOf(() => planRequest(withSettings({ 'upper-front': 60 }))),
    ...[{ 'upper-front': [{ size: 1, count: 5 }] }, { 'tie-rod': [] }].flatMap((packs) =>
      refusalOf(() => planRequest(withSettings({ 'upper-front': 3 }, packs))),
    ),
  ];
}

const isObject = (one: unknown): one is object => typeof one === 'object' && one !== null && !Array.isArray(one);

const WHEEL = { camber: 0, caster: 3, toe: 0, sai: 12 };
const ON_LINKS = { pinionAngle: 3, lateral: 2, pinionChange: 1, lateralChange: 1 };
const BY = { by: 'string', sd: 0.05 };
const METHODS = {
  ...Object.fromEntries(
    ['LF', 'RF', 'LR', 'RR'].map((corner) => [corner, { camber: BY, caster: BY, toe: BY, sai: BY }]),
  ),
  ...Object.fromEntries(['front', 'rear'].map((axle) => [axle, { pinionAngle: BY, lateral: BY }])),
};
const FULL_READING = {
  ...{ LF: WHEEL, RF: WHEEL, LR: WHEEL, RR: WHEEL, front: ON_LINKS, rear: ON_LINKS },
  toeReference: 'centreline',
  steeringWheel: 3,
  methods: METHODS,
  rideHeights: { LF: 380, RF: 385, LR: 400, RR: 400 },
  unreachable: [{ corner: 'RF', message: 'x' }],
};

const LEARNED = {
  parts: [
    {
      corners: ['LF'],
      unknowns: [`LF.${Object.keys(good.car.front.suspension.points)[0]}.x`],
      covariance: [2],
      by: [1],
    },
  ],
  leftOut: [{ corner: 'LF', round: 'r' }],
  places: [{ corner: 'LF', adjuster: 'x', at: 1, deviation: 2 }],
  last: { id: 'r', at: '2026-01-01', reading: FULL_READING, settings: {} },
};
const { by: _, ...PART } = LEARNED.parts[0]!;
const START = { of: 'Other', readings: 4, parts: [{ ...PART, at: [1] }] };

const FULL_ROUND = {
  id: 'r',
  at: '2026-01-01',
  replaces: 'q',
  reading: {
    LF: { camber: 0, caster: 3, toe: 0, sai: 12 },
    toeReference: 'centreline',
    steeringWheel: 3,
    rideHeights: { LF: 380, RF: 385, LR: 400, RR: 400 },
    unreachable: [{ corner: 'RF', message: 'x' }],
  },
  settings: { LF: { pack: 3 } },
  unknown: [{ corner: 'LF', adjuster: 'x' }],
  packs: { LF: { pack: [{ size: 1.5, count: 2 }] } },
  moved: [
    {
      ...{ id: 'm', at: '2026-01-01', replaces: 'l', corner: 'LF', adjuster: 'x', from: 1, to: 'B', outcome: 'done' },
      shims: [{ size: 1.5, count: 2 }],
      setBy: { angle: 'toe', value: 0.1, shown: { camber: -0.5, caster: 4, toe: 0.12 }, within: 0.1 },
    },
  ],
};

function withSettings(own: Readonly<Record<string, number>>, packs: object = {}): CarFile {
  const [visit] = good.visits ?? [];
  const [round] = visit?.rounds ?? [];
  return {
    ...good,
    visits: [{ ...visit!, rounds: [{ ...round!, settings: { LF: own }, packs: { LF: { ...packs } } }] }],
  };
}

const OPTIONS = {
  locked: [{ corner: 'LF', adjuster: 'tie-rod' }],
  style: 'surest',
  maxEffort: 60,
  gauge: { camber: 0.02, caster: 0.05, toe: 0.02 },
  live: ['camber', 'toe'],
  drawer: [{ size: 1.5, count: 2 }],
  language: 'en',
};

function ofRequests(): InputError[] {
  const { car, ...request } = planRequest(good);
  const unsure = [{ corner: 'LF', adjuster: 'tie-rod', deviation: 0.1 }];
  const from = { ...request, ...OPTIONS, unsure };
  return [
    ...refusalsOf(from, (bad: object) => validatePlanRequest({ car, ...bad })),
    ...refusalOf(() => validatePlanRequest(undefined)),
    ...refusalsOf(OPTIONS, (bad) => validateRequestOptions(bad, car)),
  ];
}

const SHIMS = { LF: { pack: [{ size: 1.5, count: 2 }] } };

async function ofBackups(): Promise<InputError[]> {
  const made = '2024-12-01T08:00:00Z';
  const digest = async () => 'sum';
  const { car, visits, readings, moves } = fromCarFile(carFile('ribble-six.json'), { now: made, makeId: () => 'x' });
  const stores: Stores = {
    cars: [{ ...car, practice: true }],
    visits: visits.slice(0, 1).map((visit) => ({ ...visit, checks: { tyres: 'ok' } })),
    readings: readings.slice(0, 1).map((reading) => ({ ...reading, typed: { 'LF.camber': '−0,12' }, packs: SHIMS })),
    moves: moves.slice(0, 1).map((move) => ({ ...move, shims: SHIMS.LF.pack })),
    drafts: [{ id: 'reading:v', texts: { 'LF.camber': '-0.' }, cursor: 'LF.camber', changed: made }],
    preferences: [{ id: 'units', value: { angle: 'degrees' } }],
  };
  const { stores: _, ...head } = await makeBackup(stores, made, digest);
  const found = refusalsOf(stores, (bad) => {
    const [first] = readStores(bad).aside;
    if (first) throw first.error;
  });
  const empty = { ...head, stores: [] };
  for (const bad of [...spoilt(head), empty]) {
    const backup = isObject(bad) ? { stores, ...bad } : bad;
    await checkBackup(backup, digest).catch((error: unknown) => {
      if (!(error instanceof InputError)) throw error;
      found.push(error);
    });
  }
  return found;
}
