/** A refusal of every field of every schema, read off the schemas themselves: by what each says that the field may be. */
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import { ruleIn } from '../../core/adjuster/rule-text.ts';
import { AXLE, CAR } from '../../core/check/car.ts';
import { ASKED } from '../../core/check/request.ts';
import * as parts from '../../core/check/schema.ts';
import { schema as suspension } from '../../core/check/suspension.ts';
import { InputError } from '../../core/input-error.ts';
import { KNOWN } from '../../core/records/preference-schema.ts';
import { SCHEMAS } from '../../core/records/stored-schema.ts';
import { leavesOf } from '../tools/schema-fields.ts';

/** Where each stands in what a person hands in. */
const STANDING: readonly (readonly [string, unknown])[] = [
  ['car', CAR],
  ['car.front', AXLE],
  ['car.front.suspension', suspension],
  ['spec', parts.spec],
  ['reading', parts.reading],
  ['settings', parts.carSettings],
  ['packs', parts.carPacks],
  ['visits', parts.visits],
  ['gauge', parts.gauge],
  ['drawer', parts.drawer],
  ['', ASKED],
  ...Object.values(adjusterKinds).map(({ schema }) => ['car.front.adjusters[0]', schema] as const),
  ...Object.entries(SCHEMAS).map(([store, schema]) => [`stores.${store}[0]`, schema] as const),
  ...[...KNOWN].map(([, schema]) => ['stores.preferences[0].value', schema] as const),
];

export const refusalsOfSchemas = (): InputError[] =>
  STANDING.flatMap(([base, schema]) =>
    leavesOf(schema).flatMap(({ field, messages }) => {
      const at = [base, field.replaceAll('[]', '[0]')].filter(Boolean).join('.').replace('.[', '[');
      const rules = messages.flatMap((one) => ruleIn(one) ?? []);
      const told = rules.length > 0 ? rules : [{ is: 'given' } as const];
      return told.flatMap((rule) => [undefined, 'x'].map((value) => new InputError(at, value, rule)));
    }),
  );
