import * as v from 'valibot';
import type { Position } from '../contract.ts';
import { cos, radians, sin } from '../geometry/angle.ts';
import { sub } from '../geometry/vector.ts';
import { casterOf, saiOf } from '../geometry/wheel-angles.ts';
import type { Place, Taper } from '../said.ts';
import { tidy } from '../units/plain.ts';
import { numberField } from './ask.ts';
import { base, number, positive, several, text, wholeMarks } from './fields.ts';
import type { AdjusterKind } from './kind.ts';
import { ruleText } from './rule-text.ts';
import { multiples, within } from './steps.ts';
import { isTaperOf, taperAt, taperPosition, taperPositions } from './taper.ts';

/** Where the bore is in the middle: it has no angle. */
const PLAIN = 'plain';
const ONE = positive(10, 'degrees');
const SEVERAL = v.pipe(
  several(number(0, 10, 'degrees'), 20),
  // The plain one alone tilts nothing.
  v.check((all) => all.some((one) => one > 0), ruleText({ is: 'above-zero', high: 10, unit: 'degrees' })),
  v.readonly(),
);
const ANGLE = number(-360, 360, 'degrees');
const LABEL = text({ is: 'taper', none: PLAIN, such: '1@90' });

const schema = v.object({
  ...base('offset-sleeve'),
  /**
   * Degrees that the sleeve tilts the steering axis: of the one that is fitted, whose positions are its angles; or of each
   * that is to be had, beside the plain one (0, which need not be named), whose positions are `plain` or such as `1@90`.
   */
  degrees: v.pipe(
    v.unknown(),
    v.transform((x) => (Array.isArray(x) && x.length === 1 && x[0] !== 0 ? (x[0] as unknown) : x)),
    v.lazy((x): v.GenericSchema<unknown, number | readonly number[]> => (Array.isArray(x) ? SEVERAL : ONE)),
  ),
  marks: wholeMarks,
  reference: v.lazy((x): v.GenericSchema<unknown, Position> => (typeof x === 'string' ? LABEL : ANGLE)),
});
type Sleeve = v.InferOutput<typeof schema>;

/** The sizes that are to be had beside the plain one; nothing where the one that is fitted is only turned. */
const tapersOf = ({ degrees }: Pick<Sleeve, 'degrees'>): readonly number[] | undefined =>
  typeof degrees === 'number' ? undefined : [...new Set(degrees)].filter((taper) => taper > 0).sort((a, b) => a - b);

/** Which sleeve stands how at a position; nothing for the plain one. */
const discAt = ({ degrees }: Pick<Sleeve, 'degrees'>, position: Position): Taper | undefined =>
  typeof degrees === 'number' ? { taper: degrees, at: position as number } : taperAt(position);

/** Degrees that it leans the axis outboard, and to the rear. */
function leanOf(sleeve: Sleeve, position: Position): { readonly out: number; readonly back: number } {
  const disc = discAt(sleeve, position);
  if (!disc) return { out: 0, back: 0 };
  const at = radians(disc.at);
  return { out: disc.taper * cos(at), back: disc.taper * sin(at) };
}

function placeOf(sleeve: Sleeve, position: Position): Place {
  if (typeof sleeve.degrees === 'number') return { as: 'angle', degrees: tidy(position as number) };
  const disc = taperAt(position);
  return { as: 'taper', part: 'sleeve', ...(disc && { disc }) };
}

/** So many degrees further round; the plain one is the same however it is turned. */
const turnedBy = (position: Position, by: number): Position => {
  const disc = taperAt(position);
  return typeof position === 'number' ? position + by : disc ? taperPosition({ ...disc, at: disc.at + by }) : position;
};

/**
 * A sleeve with an off-centre bore in the axle's seat of the upper ball joint. At the angle φ it tilts the steering axis:
 * SAI falls (and camber rises) by degrees·cos φ, caster rises by degrees·sin φ, both as projected angles.
 */
export const offsetSleeve: AdjusterKind = {
  kind: 'offset-sleeve',
  name: 'Offset sleeve',
  schema,
  touches: () => ({ seats: ['upperBall', 'lowerBall'] }),
  positions: (given) => {
    const { marks, ...sleeve } = given as Sleeve;
    const tapers = tapersOf(sleeve);
    return tapers ? [PLAIN, ...taperPositions(tapers, marks)] : multiples(360 / marks, 0, 360 - 360 / marks);
  },
  allowed: (sleeve) => {
    const of = tapersOf(sleeve as Sleeve);
    if (!of) return { is: 'place', on: 'angle', low: 0, high: 360 };
    return { is: 'taper', none: PLAIN, of, such: `${of[0]}@90` };
  },
  accepts: (sleeve, position) => {
    const tapers = tapersOf(sleeve as Sleeve);
    return tapers ? position === PLAIN || isTaperOf(position, tapers) : within(position, -360, 360);
  },
  size: (sleeve, position) => {
    const tapers = tapersOf(sleeve as Sleeve);
    return tapers && (taperAt(position)?.taper ?? 0) / tapers.at(-1)!;
  },
  byPoints: true,
  effect: (given, position, { points }) => {
    const sleeve = given as Sleeve;
    const axis = sub(points.upperBall!, points.lowerBall!);
    // The points hold with the sleeve at its reference, so that its tilt there is in the axis already.
    const [here, zero] = [leanOf(sleeve, position), leanOf(sleeve, sleeve.reference)];
    const caster = casterOf(axis) + (here.back - zero.back);
    const sai = saiOf(axis) - (here.out - zero.out);
    const height = axis[2];
    return {
      shift: {
        upperBall: [-height * Math.tan(radians(caster)) - axis[0], -height * Math.tan(radians(sai)) - axis[1], 0],
      },
    };
  },
  act: ({ degrees }, from, to) => {
    if (typeof degrees === 'number') {
      return { act: 'turn-sleeve', from: tidy(from as number), to: tidy(to as number) };
    }
    const [out, fit] = [taperAt(from), taperAt(to)];
    return { act: 'change-sleeve', ...(out && { from: out }), ...(fit && { to: fit }) };
  },
  place: (sleeve, position) => placeOf(sleeve as Sleeve, position),
  step: (given) => {
    const sleeve = given as Sleeve;
    const { reference: from, marks } = sleeve;
    if (from !== PLAIN) {
      return { from, to: turnedBy(from, 360 / marks), said: { step: 'turned', degrees: 360 / marks } };
    }
    const to = offsetSleeve.positions(given)[1]!;
    return { from, to, said: { step: 'to', from: placeOf(sleeve, from), to: placeOf(sleeve, to) } };
  },
  fields: [
    {
      name: 'degrees',
      label: 'Tilts the steering axis by',
      hint: 'the one that is fitted, or all that are to be had, such as 0 1 2; 0 is the plain one',
      ask: { as: 'numbers', unit: 'degrees' },
    },
    numberField('marks', 'Positions to a full turn', ''),
    {
      name: 'reference',
      label: 'Turned to, when the dimensions were taken',
      hint: 'degrees; of several sleeves plain, or degrees@angle such as 1@90',
      ask: { as: 'position' },
    },
  ],
  start: { marks: 12, reference: 0 },
  sample: { adjuster: { reference: 0, degrees: 1, marks: 12 }, from: 0, to: 120 },
  tolerance: { usual: 3, unit: 'degrees', off: turnedBy },
  effort: 20,
};
