import * as v from 'valibot';
import { isLeft } from '../corners.ts';
import { cos, radians, sin } from '../geometry/angle.ts';
import type { Place } from '../said.ts';
import { numberField } from './ask.ts';
import { base, positive, several, text, wholeMarks } from './fields.ts';
import type { AdjusterKind } from './kind.ts';
import { onwards } from './steps.ts';
import { isTaperOf, taperAt, taperPositions } from './taper.ts';

const NONE = 'none';
const DEGREES = positive(10, 'degrees');
const schema = v.object({
  ...base('wedge-shim'),
  /** The taper of each shim that is to be had, degrees. */
  degrees: v.pipe(
    v.unknown(),
    v.transform((x) => (typeof x === 'number' ? [x] : x)),
    several(DEGREES, 20, 'tapers'),
    v.readonly(),
  ),
  marks: wholeMarks,
  reference: v.optional(text({ is: 'taper', none: NONE, such: '0.5@90' }), NONE),
});
type WedgeShim = v.InferOutput<typeof schema>;

const positions = ({ degrees, marks }: WedgeShim): string[] => [NONE, ...taperPositions(degrees, marks)];

function placeOf(position: unknown): Place {
  const disc = taperAt(position);
  return { as: 'taper', ...(disc && { disc }) };
}

/**
 * A tapered disc between hub and axle: the spin axis turns against what carries it. At the angle φ camber rises by the
 * taper·cos φ and toe by the taper·sin φ.
 */
export const wedgeShim: AdjusterKind = {
  kind: 'wedge-shim',
  name: 'Tapered hub shim',
  schema,
  touches: () => ({}),
  size: (shim, position) => (taperAt(position)?.taper ?? 0) / Math.max(...(shim as WedgeShim).degrees),
  positions: (shim) => positions(shim as WedgeShim),
  allowed: (shim) => {
    const [, such = ''] = positions(shim as WedgeShim);
    return { is: 'taper', none: NONE, of: shim.degrees, such };
  },
  accepts: (shim, position) => position === NONE || isTaperOf(position, shim.degrees),
  effect: (_, position) => {
    const shim = taperAt(position);
    if (!shim) return {};
    const phi = radians(shim.at);
    return { spin: { camber: shim.taper * cos(phi), toe: shim.taper * sin(phi) } };
  },
  act: (_, from, to, { corner }) => {
    const [out, fit] = [taperAt(from), taperAt(to)];
    const side = isLeft(corner) ? 'left' : 'right';
    return { act: 'change-taper', side, ...(out && { from: out }), ...(fit && { to: fit }) };
  },
  place: (_, position) => placeOf(position),
  step: (shim) => {
    const [none = NONE, first = NONE] = positions(shim as WedgeShim);
    return { from: none, to: first, said: { step: 'to', from: placeOf(none), to: placeOf(first) } };
  },
  fields: [
    { name: 'degrees', label: 'Tapers to be had', ask: { as: 'numbers', unit: 'degrees' } },
    numberField('marks', 'Positions to a full turn', ''),
    {
      name: 'reference',
      label: 'Fitted when the dimensions were taken',
      hint: 'none, or taper@angle such as 1@90',
      ask: { as: 'text' },
    },
  ],
  start: { marks: 24, reference: NONE },
  sample: { adjuster: { reference: NONE, degrees: [0.5], marks: 24 }, from: NONE, to: '0.5@45' },
  extension: {
    unit: 'degrees',
    takes: ['more-taper', 'more-taper'],
    // Less than none is a shim turned round, which it has.
    beyond: (shim, end) =>
      end < 0
        ? []
        : onwards([Math.max(...shim.degrees)], end, 0.25, 2).flatMap(({ position, by }) =>
            positions({ ...(shim as WedgeShim), degrees: [position] })
              .filter((one) => one !== NONE)
              .map((one) => ({ position: one, by })),
          ),
  },
  tolerance: {
    usual: 0.05,
    unit: 'degrees',
    error: (_, __, ___, by) => [{ spin: { camber: by, toe: 0 } }, { spin: { camber: 0, toe: by } }],
  },
  effort: 30,
};
