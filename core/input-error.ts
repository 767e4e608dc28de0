import type { Refused, Rule } from './rule.ts';
import { exact, told } from './words/en/exact.ts';

/** Input that is refused: names the field, shows the value, says what is allowed. */
export class InputError extends Error implements Refused {
  override readonly name = 'InputError';
  /** What is allowed, in English, fields by the names that they have in a file. */
  readonly allowed: string;
  constructor(
    readonly field: string,
    readonly value: unknown,
    readonly rule: Rule,
  ) {
    const allowed = exact(rule);
    super(`${field}: ${show(told(value, rule))} is not allowed; allowed: ${allowed}`);
    this.allowed = allowed;
  }
}

/** A value as a person would recognise it, cut to a length that fits a phone. */
function show(value: unknown): string {
  if (value === undefined) return 'nothing';
  const text = typeof value === 'number' ? String(value) : (JSON.stringify(value) ?? String(value));
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}
