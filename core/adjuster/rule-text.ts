/** A schema's message is text: a rule goes through it and comes out as it went in. */
import type { Rule } from '../rule.ts';

/** No message that is written for people begins so. */
const MARK = '\u0001';

/** The message of a valibot schema that says what is allowed. */
export const ruleText = (rule: Rule): string => MARK + JSON.stringify(rule);

/** The rule that a message says; nothing where it is a message of the library's own. */
export const ruleIn = (message: string): Rule | undefined =>
  message.startsWith(MARK) ? (JSON.parse(message.slice(MARK.length)) as Rule) : undefined;
