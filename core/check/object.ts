/** valibot takes a list for an object with no fields; these do not. `rule` says what is allowed. */
import * as v from 'valibot';
import { ruleText } from '../adjuster/rule-text.ts';
import type { Rule } from '../rule.ts';

type Shape = Extract<Rule, { readonly is: 'object' }>;
const ANY: Rule = { is: 'object', as: 'object', fields: [], open: true };

/** The rule of an object with these fields, and more where it ends so. */
export const shape = (fields: string, rest: Omit<Shape, 'is' | 'fields'> = {}): Rule => ({
  is: 'object',
  fields: fields.split(' '),
  ...rest,
});

const noList = (message: string) => v.check((value: unknown) => !Array.isArray(value), message);

/** An object with these fields and no others. */
export const object = <T extends v.ObjectEntries>(entries: T, rule: Rule = ANY) =>
  v.pipe(v.unknown(), noList(ruleText(rule)), v.strictObject(entries, ruleText(rule)));

/** An object with these fields and perhaps others. */
export const open = <T extends v.ObjectEntries>(entries: T, rule: Rule = ANY) =>
  v.pipe(v.unknown(), noList(ruleText(rule)), v.looseObject(entries, ruleText(rule)));

/** An object of values by name. */
export const byName = <T extends v.GenericSchema>(
  value: T,
  rule: Rule = ANY,
  name: v.GenericSchema<string, string> = v.string(),
) => v.pipe(v.unknown(), noList(ruleText(rule)), v.record(name, value, ruleText(rule)));
