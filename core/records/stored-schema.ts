/**
 * Shapes of the database's records as a backup brings them: as strict as those of files in what the screens lean on, loose
 * where the app may add a field. What of a car has to go together is not checked here: a plan checks it whole.
 */
import * as v from 'valibot';
import { adjusterKinds } from '../adjuster/catalogue.ts';
import { number, textUpTo, vector } from '../adjuster/fields.ts';
import { ruleText } from '../adjuster/rule-text.ts';
import { byName, open } from '../check/object.ts';
import { check } from '../check/refuse.ts';
import {
  carPacks,
  carSettings,
  deleted,
  fields,
  ids,
  list,
  MOST,
  outcome,
  pack,
  position,
  reading,
  setBy,
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
import { type CarRecord, type PreferenceRecord, STORE_NAMES, type StoreName, type Stores } from './stored.ts';
import type { Versioned } from './versions.ts';

const { id, time, corner } = fields;
/** A draft holds the whole of what a form has: a car that was copied, its chart row by row. */
const texts = byName(textUpTo(1_000_000));
/** Ids that the app makes of others', such as `reading:VISIT`: longer than any id. */
const derivedId = (rule: Rule) => v.pipe(textUpTo(1000), v.minLength(1, ruleText(rule)));

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

const wheelAngle = number(-45, 45, 'degrees');
const suspension = open({
  kind: kindOf(suspensionKinds),
  points: byName(vector, { is: 'points' }),
  camber: wheelAngle,
  toe: wheelAngle,
  tolerance: v.optional(number(0, 200, 'mm')),
  tape: v.optional(byName(v.unknown(), { is: 'dimensions' })),
});
const adjusters = list(
  open({
    id,
    kind: kindOf(adjusterKinds),
    name: v.optional(shortText),
    effort: v.optional(number(0, 1000, 'minutes')),
  }),
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
  customer: v.optional(textUpTo(120)),
  vin: v.optional(textUpTo(40)),
  tyres: v.optional(textUpTo(200)),
  notes: v.optional(textUpTo(MOST.notes)),
  wheel: open({ rimDiameter: v.optional(number(100, 2000, 'mm')) }),
  wheelbase: v.optional(number(500, 10000, 'mm')),
  steeringRatio: v.optional(number(4, 40, 'to 1')),
  front: axle,
  rear: axle,
});

const MOST_VERSIONS = 10_000;
/** What is edited, with the versions that are kept of it. Each is as strict as the record itself. */
const versioned = <T extends v.ObjectEntries>(key: v.GenericSchema, content: T, beside: v.ObjectEntries = {}) =>
  open({
    id: key,
    ...content,
    ...beside,
    versions: v.optional(list(open(content), MOST_VERSIONS)),
    past: v.optional(byName(v.union([time, v.literal('')], ruleText({ is: 'time' })))),
  });

/** What a record of each store has to be. */
export const SCHEMAS: Readonly<Record<StoreName, v.GenericSchema>> = {
  cars: versioned(
    id,
    { car, spec: windows, changed: time, practice: v.optional(v.boolean()) },
    { deleted: v.optional(deleted) },
  ),
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
    over: v.optional(ids),
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
    setBy: v.optional(setBy),
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
  const beyond = BEYOND[store];
  if (!beyond) return record;
  const { versions = [] } = record as Versioned;
  beyond(record, record, field);
  for (const [i, version] of versions.entries()) beyond(version, record, `${field}.versions[${i}]`);
  return record;
}

/** What a content may be that hangs on what else is in it, or on the record's id. @throws InputError */
const BEYOND: Partial<Record<StoreName, (content: unknown, record: unknown, field: string) => void>> = {
  cars: (content, _, field) => {
    const { car } = content as Pick<CarRecord, 'car'>;
    for (const [name, { adjusters, rightAdjusters = [] }] of [
      ['front', car.front] as const,
      ['rear', car.rear] as const,
    ]) {
      for (const [list, all] of Object.entries({ adjusters, rightAdjusters })) {
        for (const [i, one] of all.entries()) {
          check(adjusterKinds[one.kind]?.schema ?? open({}), one, `${field}.car.${name}.${list}[${i}]`);
        }
      }
    }
  },
  preferences: (content, record, field) =>
    void check(
      preferenceValue((record as PreferenceRecord).id),
      (content as { readonly value?: unknown }).value,
      `${field}.value`,
    ),
};

/**
 * Every record of every store; one that is wrong is set aside, and the rest comes in.
 * @param before of a piece of a file: how many records of each store came before it, so that a place is that in the file
 * @throws InputError where a store is missing or is no list
 */
export function readStores(
  value: unknown,
  field = 'stores',
  before?: Readonly<Record<StoreName, number>>,
): { stores: Stores; aside: readonly SetAside[] } {
  const given = check(open({}), value, field);
  const aside: SetAside[] = [];
  const entries = STORE_NAMES.map((name) => {
    const records = check(list(v.unknown(), MOST_RECORDS), given[name], `${field}.${name}`);
    const good = records.flatMap((record, i) => {
      try {
        return [checked(name, record, `${field}.${name}[${i + (before?.[name] ?? 0)}]`)];
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
