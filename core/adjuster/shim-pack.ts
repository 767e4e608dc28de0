import * as v from 'valibot';
import type { ShimCount } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { tidy } from '../units/plain.ts';
import { shimStack } from '../units/shim-stack.ts';
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

/** Every thickness that the sizes make, 0 to max, ascending; counted in millionths so that sums are exact. */
function sums({ sizes, max, maxCount = Number.POSITIVE_INFINITY }: ShimPack): number[] {
  const limit = Math.round(max * 1e6);
  const steps = sizes.map((size) => Math.round(size * 1e6));
  // Round by round, one shim more in each: the first round that makes a thickness makes it of the fewest shims.
  const seen = new Set<number>([0]);
  let last = [0];
  for (let count = 1; count <= maxCount && last.length > 0; count++) {
    const next = new Set<number>();
    for (const sum of last) {
      for (const step of steps) if (sum + step <= limit && !seen.has(sum + step)) next.add(sum + step);
    }
    for (const sum of next) seen.add(sum);
    last = [...next];
    if (seen.size > MOST_POSITIONS) {
      throw new InputError('sizes', sizes, { is: 'thicknesses', most: MOST_POSITIONS });
    }
  }
  return [...seen].sort((a, b) => a - b).map((sum) => tidy(sum / 1e6));
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
  positions: (pack) => sums(pack as ShimPack),
  pair: (pack) => pack.pair,
  allowed: (pack) => ({ is: 'place', on: 'thickness', low: 0, high: pack.max }),
  accepts: (pack, position) => within(position, 0, pack.max),
  effect: (pack, position) => {
    const [x, y, z] = unitDirection(pack.direction);
    const t = position as number;
    return { shift: { [pack.at]: [x * t, y * t, z * t] } };
  },
  stack: ({ sizes, max, maxCount }) => ({ sizes, max, maxCount }),
  act: (pack, from, to, _, shims) => {
    const [a, b] = [from as number, to as number];
    return { act: 'change-shims', by: b - a, from: a, to: b, stack: stackOf(pack as ShimPack, b, shims) };
  },
  place: (_, position) => ({ as: 'thickness', mm: position as number }),
  step: (pack) => {
    const step = Math.min(...pack.sizes);
    const from = pack.reference as number;
    const to = from + step <= pack.max ? from + step : from - step;
    return { from: Math.min(from, to), to: Math.max(from, to), said: { step: 'more-shim', mm: step } };
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
    beyond: (pack, end) => onwards(sums(pack as ShimPack), end, Math.min(...pack.sizes, COARSEST), MOST_FURTHER),
  },
  tolerance: { usual: 0.1, unit: 'mm' },
  effort: 8,
};
