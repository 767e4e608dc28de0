/**
 * Shapes of the database's records as a backup brings them: as strict as those of files in what the screens lean on, loose
 * where the app may add a field. A car is not checked further: a plan checks it whole.
 */
import * as v from 'valibot';
import { adjusterKinds } from '../adjuster/catalogue.ts';
import { textUpTo } from '../adjuster/fields.ts';
import { ruleText } from '../adjuster/rule-text.ts';
import { byName, open } from '../check/object.ts';
import { check } from '../check/refuse.ts';
import {
  carPacks,
  carSettings,
  fields,
  list,
  MOST,
  outcome,
  pack,
  position,
  reading,
  shortText,
  spec,
  visitFacts,
} from '../check/schema.ts';
import { validateSpec } from '../check/spec.ts';
import { oneKindOf } from '../check/suspension.ts';
import { InputError } from '../input-error.ts';
import type { Rule } from '../rule.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { preferenceValue } from './preference-schema.ts';
import { type PreferenceRecord, STORE_NAMES, type StoreName, type Stores } from './stored.ts';

const { id, time, corner } = fields;
/** A draft holds the whole of what a form has: a car that was copied, its chart row by row. */
const texts = byName(textUpTo(1_000_000));
/** Ids that the app makes of others', such as `reading:VISIT`: longer than any id. */
const derivedId = (rule: Rule) => v.pipe(textUpTo(1000), v.minLength(1, ruleText(rule)));
const count = v.pipe(v.number(ruleText({ is: 'any-number' })), v.finite(ruleText({ is: 'finite' })));

/** The name of a kind that there is. */
const kindOf = (kinds: Parameters<typeof oneKindOf>[0]) =>
  v.pipe(
    shortText,
    // One may be added while the app runs.
    v.check(
      (name) => Object.hasOwn(kinds, name),
      () => ruleText(oneKindOf(kinds)),
    ),
  );
/** As strict as a file's: each window's ends in order, its aim between them. */
const windows = v.pipe(
  spec,
  v.rawCheck(({ dataset, addIssue }) => {
    try {
      if (dataset.typed) validateSpec(dataset.value);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      addIssue({ message: ruleText(error.rule) });
    }
  }),
);

const suspension = open({
  kind: kindOf(suspensionKinds),
  points: v.optional(byName(v.array(count))),
  camber: v.optional(count),
  toe: v.optional(count),
  tolerance: v.optional(count),
});
const adjusters = list(
  open({ id, kind: kindOf(adjusterKinds), name: v.optional(shortText), effort: v.optional(count) }),
  64,
);
const axle = open({
  suspension,
  rightSuspension: v.optional(suspension),
  adjusters,
  rightAdjusters: v.optional(adjusters),
  steered: v.boolean(ruleText({ is: 'yes-or-no' })),
});
const car = open({
  id,
  label: textUpTo(400),
  plate: v.optional(textUpTo(40)),
  notes: v.optional(textUpTo(MOST.notes)),
  wheel: open({ rimDiameter: count }),
  wheelbase: v.optional(count),
  steeringRatio: v.optional(count),
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
  cars: versioned(id, { car, spec: windows, changed: time, practice: v.optional(v.boolean()) }),
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

function checked(store: StoreName, value: unknown, field: string): unknown {
  const record = check(SCHEMAS[store], value, field);
  if (store !== 'preferences') return record;
  // What it may be hangs on its id.
  const { id, value: own, versions = [] } = record as PreferenceRecord;
  check(preferenceValue(id), own, `${field}.value`);
  for (const [i, version] of versions.entries())
    check(preferenceValue(id), (version as { readonly value?: unknown }).value, `${field}.versions[${i}].value`);
  return record;
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
        return [checked(name, record, `${field}.${name}[${i}]`)];
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
