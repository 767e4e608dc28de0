/** Fields that several adjuster kinds share. A message is the rule that is broken; core/check knows the path. */
import * as v from 'valibot';
import type { Vec3 } from '../contract.ts';
import type { Items, Rule } from '../rule.ts';
import { ruleText } from './rule-text.ts';
import { isCoarse, leastStep, MOST_POSITIONS } from './steps.ts';

const LONGEST_TEXT = 400;

/** Text, not empty. */
export const text = (rule: Rule = { is: 'text', least: 1, most: LONGEST_TEXT }) => {
  const allowed = ruleText(rule);
  return v.pipe(v.string(allowed), v.minLength(1, allowed), v.maxLength(LONGEST_TEXT, allowed));
};

/** Text up to a length, which may be empty. */
export const textUpTo = (most: number) =>
  v.pipe(
    v.string(ruleText({ is: 'any-text' })),
    v.maxLength(most, ruleText({ is: 'at-most', most, items: 'characters' })),
  );

/** One of a few. */
export const choice = <const T extends readonly string[]>(of: T) => v.picklist(of, ruleText({ is: 'choice', of }));

/** One to `most` of a schema; `items`: what they are, where there are words for it. */
export const several = <T extends v.GenericSchema>(item: T, most: number, items?: Items) => {
  const of = items && { items };
  return v.pipe(
    v.array(item, ruleText({ is: 'list', ...of })),
    v.minLength(1, ruleText({ is: 'at-least-one', ...of })),
    v.maxLength(most, ruleText({ is: 'at-most', most, ...of })),
  );
};

/** A whole number within limits. */
export const whole = (low: number, high: number, of?: 'marks' | 'shims') => {
  const allowed = ruleText({ is: 'whole', low, high, ...(of && { of }) });
  return v.pipe(v.number(allowed), v.integer(allowed), v.minValue(low, allowed), v.maxValue(high, allowed));
};

/** A finite number within limits. */
export const number = (low: number, high: number, unit: string) => {
  const allowed = ruleText({ is: 'number', low, high, unit });
  return v.pipe(v.number(allowed), v.finite(allowed), v.minValue(low, allowed), v.maxValue(high, allowed));
};

/** A finite number above zero. */
export const positive = (high: number, unit: string) => {
  const allowed = ruleText({ is: 'above-zero', high, unit });
  return v.pipe(
    v.number(allowed),
    v.finite(allowed),
    v.check((x) => x > 0, allowed),
    v.maxValue(high, allowed),
  );
};

const VECTOR = ruleText({ is: 'vector' });
export const vector = v.pipe(
  v.tuple([number(-10000, 10000, 'mm'), number(-10000, 10000, 'mm'), number(-10000, 10000, 'mm')], VECTOR),
  v.readonly(),
);

const DIRECTION = ruleText({ is: 'direction' });
export const direction = v.pipe(
  v.tuple([number(-10000, 10000, ''), number(-10000, 10000, ''), number(-10000, 10000, '')], DIRECTION),
  v.check((d) => d.some((x) => Math.abs(x) > 1e-9), DIRECTION),
  v.readonly(),
);

/** [low, high] with low below high; `{ low, high }`, as windows are written, is as good. */
export const range = (limit: number, unit: string) => {
  const allowed = ruleText({ is: 'range', unit, limit });
  return v.pipe(
    v.unknown(),
    v.transform((x) => (typeof x === 'object' && x && 'low' in x && 'high' in x ? [x.low, x.high] : x)),
    v.tuple([number(-limit, limit, unit), number(-limit, limit, unit)], allowed),
    v.check(([low, high]) => low < high, allowed),
    v.readonly(),
  );
};

/** Over what an adjuster goes by which step, both in `unit`. */
interface Travel {
  readonly step: number;
  readonly range: readonly [low: number, high: number];
}

/**
 * For a kind's `v.pipe(v.object(…), v.forward(coarse(…), [step]))`: no more positions than can be gone through. They are
 * counted, not made.
 */
export const coarse = <T>(travelOf: (adjuster: T) => Travel, unit: string) =>
  v.check<T, (issue: { readonly input: T }) => string>(
    (adjuster) => {
      const { step, range } = travelOf(adjuster);
      return isCoarse(step, range);
    },
    ({ input }) => {
      const least = leastStep(...travelOf(input).range);
      return ruleText({ is: 'step', least, most: MOST_POSITIONS, unit });
    },
  );

/** A label: text or a number. */
export const stamped = (() => {
  const rule = { is: 'stamped' } as const;
  const allowed = ruleText(rule);
  return v.union([text(rule), v.pipe(v.number(allowed), v.finite(allowed))], allowed);
})();

export const wholeMarks = whole(2, 720, 'marks');

const SHORT_NAME: Rule = { is: 'text', least: 1, most: LONGEST_TEXT, short: true };

/** Fields of every adjuster, for a kind's `v.object({ ...base(kind), … })`. */
export const base = <K extends string>(kind: K) => ({
  id: text(SHORT_NAME),
  name: v.optional(text(SHORT_NAME)),
  kind: v.literal(kind, ruleText({ is: 'exactly', value: kind })),
  torque: v.optional(textUpTo(LONGEST_TEXT)),
  effort: v.optional(number(0, 1000, 'minutes')),
  /** ± at 95 %, in the unit of the kind's tolerance. */
  tolerance: v.optional(number(0, 100, '')),
  /** `false`: it cannot be turned while the rack is watched, whatever others of its kind can. */
  live: v.optional(v.boolean(ruleText({ is: 'yes-or-no' }))),
  /** Its figures are those that most of its kind have. */
  usual: v.optional(v.literal(true, ruleText({ is: 'yes-or-no' }))),
});

/** `d` made unit. */
export function unitDirection(d: Vec3): Vec3 {
  const length = Math.hypot(d[0], d[1], d[2]);
  return [d[0] / length, d[1] / length, d[2] / length];
}
