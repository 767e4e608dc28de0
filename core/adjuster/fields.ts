/** Fields that several adjuster kinds share. Messages are completed by core/check, which knows the path. */
import * as v from 'valibot';
import type { Vec3 } from '../contract.ts';

const LONGEST_TEXT = 400;

export const text = (allowed: string) =>
  v.pipe(v.string(allowed), v.minLength(1, allowed), v.maxLength(LONGEST_TEXT, allowed));

/** A finite number within limits; the message is what is allowed. */
export const number = (low: number, high: number, unit: string) => {
  const allowed = `a number from ${low} to ${high} ${unit}`.trim();
  return v.pipe(v.number(allowed), v.finite(allowed), v.minValue(low, allowed), v.maxValue(high, allowed));
};

/** A finite number above zero. */
export const positive = (high: number, unit: string) => {
  const allowed = `a number above 0, up to ${high} ${unit}`.trim();
  return v.pipe(
    v.number(allowed),
    v.finite(allowed),
    v.check((x) => x > 0, allowed),
    v.maxValue(high, allowed),
  );
};

const VECTOR = 'three numbers, [x, y, z], mm';
export const vector = v.pipe(
  v.tuple([number(-10000, 10000, 'mm'), number(-10000, 10000, 'mm'), number(-10000, 10000, 'mm')], VECTOR),
  v.readonly(),
);

const DIRECTION = 'a direction, [x, y, z], not all zero';
export const direction = v.pipe(
  v.tuple([number(-10000, 10000, ''), number(-10000, 10000, ''), number(-10000, 10000, '')], DIRECTION),
  v.check((d) => d.some((x) => Math.abs(x) > 1e-9), DIRECTION),
  v.readonly(),
);

/** [low, high] with low below high; `{ low, high }`, as windows are written, is as good. */
export const range = (limit: number, unit: string) => {
  const allowed = `[low, high] in ${unit}, low below high, within ±${limit}`;
  return v.pipe(
    v.unknown(),
    v.transform((x) => (typeof x === 'object' && x && 'low' in x && 'high' in x ? [x.low, x.high] : x)),
    v.tuple([number(-limit, limit, unit), number(-limit, limit, unit)], allowed),
    v.check(([low, high]) => low < high, allowed),
    v.readonly(),
  );
};

const STAMP = 'the number or letter stamped on it';
/** A label: text or a number. */
export const stamped = v.union([text(STAMP), v.pipe(v.number(STAMP), v.finite(STAMP))], STAMP);

const MARKS = 'a whole number of marks to a full turn, 2 to 720';
export const wholeMarks = v.pipe(v.number(MARKS), v.integer(MARKS), v.minValue(2, MARKS), v.maxValue(720, MARKS));

/** Fields of every adjuster, for a kind's `v.object({ ...base(kind), … })`. */
export const base = <K extends string>(kind: K) => ({
  id: text('a short name, 1 to 400 characters'),
  name: v.optional(text('a short name, 1 to 400 characters')),
  kind: v.literal(kind, kind),
  torque: v.optional(v.pipe(v.string('text'), v.maxLength(LONGEST_TEXT, 'up to 400 characters'))),
  effort: v.optional(number(0, 1000, 'minutes')),
  /** ± at 95 %, in the unit of the kind's tolerance. */
  tolerance: v.optional(number(0, 100, '')),
});

/** `d` made unit. */
export function unitDirection(d: Vec3): Vec3 {
  const length = Math.hypot(d[0], d[1], d[2]);
  return [d[0] / length, d[1] / length, d[2] / length];
}
