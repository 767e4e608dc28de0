/**
 * Shapes of the database's records as a backup brings them. Loose where the app may add a field, and a car is checked
 * only as far as the screens lean on it: one that is half built belongs in the backup too. A plan checks it whole.
 */
import * as v from 'valibot';
import { text, textUpTo } from '../adjuster/fields.ts';
import { ruleText } from '../adjuster/rule-text.ts';
import { byName, open } from '../check/object.ts';
import { check } from '../check/refuse.ts';
import { carPacks, carSettings, fields, list, outcome, pack, position, reading, shortText } from '../check/schema.ts';
import { STORE_NAMES, type StoreName, type Stores } from './stored.ts';

const { id, time, corner } = fields;
const texts = byName(textUpTo(4000));
const count = v.pipe(v.number(ruleText({ is: 'any-number' })), v.finite(ruleText({ is: 'finite' })));

const suspension = open({ kind: shortText, points: v.optional(byName(v.array(count))) });
const adjusters = list(open({ id, kind: shortText }), 64);
const axle = open({
  suspension,
  adjusters,
  rightAdjusters: v.optional(adjusters),
  steered: v.boolean(ruleText({ is: 'yes-or-no' })),
});
const car = open({
  id,
  label: v.string(ruleText({ is: 'any-text' })),
  wheel: open({ rimDiameter: count }),
  front: axle,
  rear: axle,
});

const SCHEMAS: Readonly<Record<StoreName, v.GenericSchema>> = {
  cars: open({ id, car, spec: open({}), changed: time, practice: v.optional(v.boolean()) }),
  visits: open({ id, carId: id, opened: time, closed: v.optional(time), checks: v.optional(texts) }),
  readings: open({
    id,
    visitId: id,
    at: time,
    reading,
    settings: carSettings,
    packs: v.optional(carPacks),
    typed: texts,
    replaces: v.optional(id),
  }),
  moves: open({
    id,
    visitId: id,
    readingId: id,
    at: time,
    corner,
    adjuster: id,
    from: position,
    to: position,
    outcome,
    shims: v.optional(pack),
    replaces: v.optional(id),
  }),
  drafts: open({ id, texts, cursor: v.optional(v.string()), changed: time }),
  preferences: open({ id: text({ is: 'preference' }), value: v.unknown() }),
};

const MOST_RECORDS = 1_000_000;

/** Every record of every store. @throws InputError such as `stores.readings[3].at` */
export function validateStores(value: unknown, field = 'stores'): Stores {
  const given = check(open({}), value, field);
  const entries = STORE_NAMES.map((name) => [
    name,
    check(list(SCHEMAS[name], MOST_RECORDS), given[name], `${field}.${name}`),
  ]);
  return Object.fromEntries(entries);
}
