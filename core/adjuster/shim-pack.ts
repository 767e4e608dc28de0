import * as v from 'valibot';
import type { ShimCount } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { shimStack, shimTotals } from '../units/shim-stack.ts';
import { AT, DIRECTION, lengthField, numberField, optional } from './ask.ts';
import { base, direction, number, positive, several, text, unitDirection, whole } from './fields.ts';
import type { AdjusterKind } from './kind.ts';
import { ruleText } from './rule-text.ts';
import { MOST_FURTHER, onwards, within } from './steps.ts';

const SHIM = ruleText({ is: 'shim', above: 0.01, high: 50 });
const schema = v.object({
  ...base('shim-pack'),
  at: text({ is: 'point-name' }),
  direction,
  sizes: v.pipe(
    several(v.pipe(v.number(SHIM), v.finite(SHIM), v.minValue(0.01, SHIM), v.maxValue(50, SHIM)), 20, 'shim-sizes'),
    v.readonly(),
  ),
  max: positive(100, 'mm'),
  /** Least pack, mm: a plan leaves no less. One that was found thinner is taken as it is. */
  min: v.optional(number(0, 100, 'mm')),
  /** Most shims at the bolt. */
  maxCount: v.optional(whole(1, 50, 'shims')),
  /** Another pack of the corner, and the most that the two may differ by, mm. */
  pair: v.optional(v.object({ with: text({ is: 'other-pack' }), most: number(0, 100, 'mm') })),
  reference: number(0, 100, 'mm'),
});
type ShimPack = v.InferOutput<typeof schema>;

const MOST_POSITIONS = 4000;
/** mm by which a pack would be made thicker, at a time, where its own shims are thicker still. */
const COARSEST = 1.5;

/** Every thickness that its sizes make, from the least pack to the thickest. */
function thicknesses({ sizes, min = 0, max, maxCount }: ShimPack): number[] {
  const all = shimTotals(sizes, max, maxCount);
  if (all.length > MOST_POSITIONS) {
    throw new InputError('sizes', sizes, { is: 'thicknesses', most: MOST_POSITIONS });
  }
  const allowed = all.filter((thickness) => within(thickness, min, max));
  if (allowed.length === 0) throw new InputError('min', min, { is: 'number', low: 0, high: all.at(-1)!, unit: 'mm' });
  return allowed;
}

/** One shim more, from the reference if there is room for it; a pack holds no less than nothing and no more than `max`. */
function oneShim({ reference, sizes, max }: ShimPack) {
  const mm = Math.min(...sizes, max);
  const from = [reference, reference - mm].find((t) => t >= 0 && within(t + mm, 0, max)) ?? 0;
  return { from, to: from + mm, said: { step: 'more-shim', mm } } as const;
}

/** The thickness of each shim in a pack, thickest first; none where its sizes do not make it. */
function stackOf(pack: ShimPack, thickness: number, counted?: readonly ShimCount[]): readonly number[] {
  const { exact, shims } = shimStack(thickness, pack.sizes, { max: pack.max });
  if (!exact) return [];
  return oneByOne(counted ?? shims);
}

const oneByOne = (shims: readonly ShimCount[]): number[] =>
  shims.flatMap(({ size, count }) => Array<number>(count).fill(size)).sort((a, b) => b - a);

/** Shims under a bracket: point `at` moves along `direction` by the pack's thickness. */
export const shimPack: AdjusterKind = {
  kind: 'shim-pack',
  name: 'Shim pack',
  schema,
  touches: (pack) => ({ points: [pack.at] }),
  positions: (pack) => thicknesses(pack as ShimPack),
  pair: (pack) => pack.pair,
  allowed: (pack) => ({ is: 'place', on: 'thickness', low: 0, high: pack.max }),
  accepts: (pack, position) => within(position, 0, pack.max),
  effect: (pack, position) => {
    const [x, y, z] = unitDirection(pack.direction);
    const t = position as number;
    return { shift: { [pack.at]: [x * t, y * t, z * t] } };
  },
  stack: ({ sizes, max, maxCount, min }) => ({ sizes, max, maxCount, min }),
  job: 'arm',
  even: () => true,
  act: (pack, from, to, { shims, holds }) => {
    const [a, b] = [from as number, to as number];
    const stack = stackOf(pack as ShimPack, b, shims);
    return { act: 'change-shims', by: b - a, from: a, to: b, stack, ...(holds && { holds: oneByOne(holds) }) };
  },
  place: (_, position) => ({ as: 'thickness', mm: position as number }),
  step: (pack) => oneShim(pack as ShimPack),
  fields: [
    AT,
    DIRECTION,
    { name: 'sizes', label: 'Shim sizes', hint: 'with spaces between', ask: { as: 'lengths' } },
    lengthField('max', 'Thickest pack allowed', 'at which the nut still has its full thread'),
    optional(lengthField('min', 'Least pack', 'that has to stay in')),
    lengthField('reference', 'In the pack when the dimensions were taken'),
    optional(numberField('maxCount', 'Most shims at the bolt', 'shims')),
    optional({ name: 'pair.with', label: 'Other pack of the arm', ask: { as: 'partner' } }),
    optional(lengthField('pair.most', 'Most that the two may differ')),
  ],
  start: { direction: [0, 1, 0], reference: 0 },
  sample: { adjuster: { reference: 3, sizes: [1.5], max: 9 }, from: 3, to: 4.5 },
  extension: {
    unit: 'mm',
    takes: ['offset-bush-or-thinner-bracket', 'more-shims'],
    beyond: (pack, end) => onwards(thicknesses(pack as ShimPack), end, Math.min(...pack.sizes, COARSEST), MOST_FURTHER),
  },
  tolerance: { usual: 0.1, unit: 'mm' },
  effort: 8,
};
