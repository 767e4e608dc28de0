/** Runs a valibot schema and turns its first issue into an InputError: path, value received, what is allowed. */
import * as v from 'valibot';
import { ruleIn } from '../adjuster/rule-text.ts';
import { InputError } from '../input-error.ts';
import type { Rule } from '../rule.ts';
import { withMore } from './gather.ts';

/**
 * The validated value; unknown fields are refused where the schema is strict. A schema's own messages are the rules
 * that it keeps.
 * @param field where the value stands, for the message
 * @throws InputError such as `front.adjusters[0].at`
 */
export function check<T>(schema: v.GenericSchema<unknown, T>, value: unknown, field: string): T {
  const result = v.safeParse(schema, value, { abortEarly: true });
  if (result.success) return result.output;
  throw withMore(refusal(result.issues[0], schema, field), () => {
    const { issues = [] } = v.safeParse(schema, value);
    return issues.slice(1).map((issue) => refusal(issue, schema, field));
  });
}

function refusal(issue: v.BaseIssue<unknown>, schema: v.GenericSchema, field: string): InputError {
  const keys = (issue.path ?? []).map(({ key }) => key);
  const received = issue.path?.length ? issue.path.at(-1)?.value : issue.input;
  return new InputError(pathOf(field, keys), received, allowed(issue, schema, keys));
}

/** `front` + ['adjusters', 0, 'at'] → `front.adjusters[0].at` */
export function pathOf(field: string, keys: readonly unknown[]): string {
  return keys.reduce<string>((path, key) => {
    if (typeof key === 'number') return `${path}[${key}]`;
    return path ? `${path}.${String(key)}` : String(key);
  }, field);
}

function allowed(issue: v.BaseIssue<unknown>, schema: v.GenericSchema, keys: readonly unknown[]): Rule {
  if (issue.expected === 'never') {
    const known = Object.keys(inside(schema, keys.slice(0, -1))?.entries ?? {});
    return { is: 'no-such', what: 'field', known };
  }
  const missing = issue.path?.length && issue.received === 'undefined';
  const own = missing ? inside(schema, keys)?.message : undefined;
  const rule = (typeof own === 'string' ? ruleIn(own) : undefined) ?? ruleIn(issue.message);
  if (rule) return rule;
  if (missing) return { is: 'given' };
  return issue.expected ? { is: 'type', type: issue.expected } : { is: 'other' };
}

/** As much of a valibot schema as it takes to walk down into it. */
interface Node {
  readonly entries?: Readonly<Record<string, Node>>;
  readonly item?: Node;
  readonly items?: readonly Node[];
  readonly value?: Node;
  readonly wrapped?: Node;
  readonly pipe?: readonly Node[];
  readonly message?: unknown;
}

/** The schema of what stands at a path inside another. */
function inside(schema: v.GenericSchema, keys: readonly unknown[]): Node | undefined {
  return keys.reduce<Node | undefined>(
    (node, key) => {
      return core(node?.entries?.[String(key)] ?? node?.items?.[Number(key)] ?? node?.item ?? node?.value);
    },
    core(schema as Node),
  );
}

/** Without what makes it optional, and of a chain of checks the one that knows the fields. */
function core(node: Node | undefined): Node | undefined {
  if (node?.wrapped) return core(node.wrapped);
  return node?.pipe?.find(({ entries, value }) => entries ?? value) ?? node;
}
