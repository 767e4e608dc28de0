import * as v from 'valibot';
import type { ShimCount } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { shimStack, shimTotals } from '../units/shim-stack.ts';
import { AT, DIRECTION, lengthField, numberField, optional } from './ask.ts';
import { base, direction, number, positive, several, text, unitDirection, whole } from './fields.ts';
import type { AdjusterKind } from './kind.ts';
import { ruleText } from './rule-text.ts';
import { MOST_FURTHER, onwards, stepFrom, within } from './steps.ts';

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

/** Every thickness that its sizes make. */
function thicknesses({ sizes, max, maxCount }: ShimPack): number[] {
  const all = shimTotals(sizes, max, maxCount);
  if (all.length > MOST_POSITIONS) {
    throw new InputError('sizes', sizes, { is: 'thicknesses', most: MOST_POSITIONS });
  }
  return all;
}

/** The thickness of each shim in a pack, thickest first; none where its sizes do not make it. */
function stackOf(pack: ShimPack, thickness: number, counted?: readonly ShimCount[]): readonly number[] {
  const { exact, shims } = shimStack(thickness, pack.sizes, { max: pack.max });
  if (!exact) return [];
  return (counted ?? shims).flatMap(({ size, count }) => Array<number>(count).fill(size));
}

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
  stack: ({ sizes, max, maxCount }) => ({ sizes, max, maxCount }),
  even: () => true,
  act: (pack, from, to, { shims }) => {
    const [a, b] = [from as number, to as number];
    return { act: 'change-shims', by: b - a, from: a, to: b, stack: stackOf(pack as ShimPack, b, shims) };
  },
  place: (_, position) => ({ as: 'thickness', mm: position as number }),
  step: ({ reference, sizes, max }) => {
    // As much as the pack has room for, or holds, where that is less than any shim.
    const mm = Math.min(...sizes, Math.max(reference as number, max - (reference as number)));
    return { ...stepFrom(reference as number, mm, max), said: { step: 'more-shim', mm } };
  },
  fields: [
    AT,
    DIRECTION,
    { name: 'sizes', label: 'Shim sizes', hint: 'with spaces between: 1 1.5 3', ask: { as: 'lengths' } },
    lengthField('max', 'Thickest pack allowed'),
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
