import { safeParse } from 'valibot';
import type { Adjuster } from '../contract.ts';
import { adjusterKinds } from './catalogue.ts';

/** What is typed as an adjuster where it has all that its kind needs, at a place where it can stand; else nothing. */
export function wholeAdjuster(typed: Readonly<Record<string, unknown>>): Adjuster | undefined {
  const kind = adjusterKinds[String(typed.kind)];
  const parsed = kind && safeParse(kind.schema, typed);
  if (!parsed?.success) return undefined;
  return kind?.accepts(parsed.output, parsed.output.reference) ? parsed.output : undefined;
}
