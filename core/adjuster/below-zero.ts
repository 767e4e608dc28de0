/** Which numbers of an adjuster may be below zero, so that a form lets them be typed where a phone has no minus. */
import * as v from 'valibot';
import { adjusterKinds } from './catalogue.ts';

/** What a schema has inside it, by name; of one that may be left out, inside what it holds. */
function entryOf(schema: unknown, name: string): unknown {
  const { entries, wrapped } = schema as { entries?: Readonly<Record<string, unknown>>; wrapped?: unknown };
  return entries?.[name] ?? (wrapped ? entryOf(wrapped, name) : undefined);
}

/** A little below, and a whole one. */
const BELOW = [-0.01, -1];

/**
 * Whether a number field of a kind, by its name such as `reference` or `perStep.camber`, takes a number below zero: its
 * own schema is asked. One that nobody knows may.
 */
export function mayBeBelowZero(kind: string, field: string): boolean {
  const schema = field.split('.').reduce<unknown>(entryOf, adjusterKinds[kind]?.schema ?? {});
  return schema === undefined || BELOW.some((x) => v.safeParse(schema as v.GenericSchema, x).success);
}
