/**
 * Shapes of the database's records as a backup brings them. Loose where the app may add a field, and a car is checked
 * only as far as the screens lean on it: one that is half built belongs in the backup too. A plan checks it whole.
 */
import * as v from 'valibot';
import { textUpTo } from '../adjuster/fields.ts';
import { ruleText } from '../adjuster/rule-text.ts';
import { byName, open } from '../check/object.ts';
import { check } from '../check/refuse.ts';
import {
  carPacks,
  carSettings,
  fields,
  list,
  outcome,
  pack,
  position,
  reading,
  shortText,
  visitFacts,
} from '../check/schema.ts';
import { InputError } from '../input-error.ts';
import type { Rule } from '../rule.ts';
import { STORE_NAMES, type StoreName, type Stores } from './stored.ts';

const { id, time, corner } = fields;
/** A draft holds the whole of what a form has: a car that was copied, its chart row by row. */
const texts = byName(textUpTo(1_000_000));
/** Ids that the app makes of others', such as `reading:VISIT`: longer than any id. */
const derivedId = (rule: Rule) => v.pipe(textUpTo(1000), v.minLength(1, ruleText(rule)));
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
  wheelbase: v.optional(count),
  front: axle,
  rear: axle,
});

const MOST_VERSIONS = 10_000;
/** What is edited, with the versions that are kept of it. Each is as strict as the record itself. */
const versioned = <T extends v.ObjectEntries>(key: v.GenericSchema, content: T) =>
  open({
    id: key,
    ...content,
    versions: v.optional(list(open(content), MOST_VERSIONS)),
    past: v.optional(byName(v.union([time, v.literal('')], ruleText({ is: 'time' })))),
  });

const SCHEMAS: Readonly<Record<StoreName, v.GenericSchema>> = {
  cars: versioned(id, { car, spec: open({}), changed: time, practice: v.optional(v.boolean()) }),
  visits: open({ id, carId: id, opened: time, ...visitFacts }),
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
  drafts: versioned(derivedId({ is: 'some-text' }), { texts, cursor: v.optional(v.string()), changed: time }),
  preferences: versioned(derivedId({ is: 'preference' }), { value: v.unknown(), changed: v.optional(time) }),
};

const MOST_RECORDS = 1_000_000;

/** A record that is not as it should be, and what is wrong with it. */
export interface SetAside {
  readonly store: StoreName;
  /** Where it has one. */
  readonly id?: string;
  readonly error: InputError;
}

/**
 * Every record of every store; one that is wrong is set aside, and the rest comes in.
 * @throws InputError where a store is missing or is no list
 */
export function readStores(value: unknown, field = 'stores'): { stores: Stores; aside: readonly SetAside[] } {
  const given = check(open({}), value, field);
  const aside: SetAside[] = [];
  const entries = STORE_NAMES.map((name) => {
    const records = check(list(v.unknown(), MOST_RECORDS), given[name], `${field}.${name}`);
    const good = records.flatMap((record, i) => {
      try {
        return [check(SCHEMAS[name], record, `${field}.${name}[${i}]`)];
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        const own = typeof record === 'object' && record && 'id' in record ? record.id : undefined;
        aside.push({ store: name, ...(typeof own === 'string' && { id: own }), error });
        return [];
      }
    });
    return [name, good] as const;
  });
  // Each list stands under the name of its store.
  return { stores: Object.fromEntries(entries) as unknown as Stores, aside };
}
