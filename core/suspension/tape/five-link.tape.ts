/**
 * Five links from a tape measure, all of it from where a hand reaches: from the face of this wheel's own hub and from the
 * ground. Points that reproduce every given dimension and the measured camber and toe exactly.
 *
 * Construction, in the corner frame (x forward, y outboard, z up), link by link:
 * 1. wheelCentre = (−axleBehindFront, track/2, wheelCentreHeight); the hub's face stands `wheelOffset` outboard of it.
 * 2. The joint on the hub carrier: `outerNAhead` ahead of the hub's middle, `outerNInset` inboard of its face, at its
 *    height.
 * 3. The pivot on the body: `innerNAhead` ahead of the hub's middle, at its height, and `linkNLength` from the joint, on
 *    the inboard side.
 *
 * What is left out stands to the hub as in a typical layout (`core/starters/five-link.ts`, of which a test holds this to
 * be a copy): at the same height above it, as far ahead and inboard of it, the link as long.
 */
import type { Vec3 } from '../../contract.ts';
import { sub } from '../../geometry/vector.ts';
import { InputError } from '../../input-error.ts';
import * as shared from './dimensions.ts';
import { USUAL_OFFSET } from './offset.ts';
import { type Dimensions, mm, type TapeDimension, type TapeLayout } from './tape.ts';

interface Link {
  readonly n: number;
  /** As a technician calls it. */
  readonly name: string;
  /** From the wheel centre, mm: forward, outboard, up. */
  readonly outer: Vec3;
  readonly inner: Vec3;
}
const LINKS: readonly Link[] = [
  { n: 1, name: 'Upper front link', outer: [31, -92, 167], inner: [118, -321, 152] },
  { n: 2, name: 'Upper rear link', outer: [-46, -87, 158], inner: [-131, -330, 138] },
  { n: 3, name: 'Lower front link', outer: [44, -71, -100], inner: [226, -351, -78] },
  { n: 4, name: 'Lower rear link', outer: [-28, -60, -108], inner: [-72, -427, -93] },
  { n: 5, name: 'Toe link', outer: [-164, -69, -45], inner: [-207, -389, -38] },
];

const usualHeight = (end: string): string => `usual${end}Height`;
const AS_USUAL = 'as a usual layout has it, from the hub';

/** In the order in which they help: how long the links are, then where they are held on the body, then at the hub. */
const dimensions: readonly TapeDimension[] = [
  ...shared.measuredAngles('').filter(({ name }) => name !== 'caster'),
  ...LINKS.map(({ n, name, outer, inner }) =>
    mm(`link${n}Length`, {
      label: `${name}, joint to joint`,
      between: [`inner${n}`, `outer${n}`],
      low: 60,
      high: 1500,
      otherwise: Math.hypot(...sub(outer, inner)),
      tolerance: 40,
      why: AS_USUAL,
    }),
  ),
  ...LINKS.map(({ n, name, inner }) =>
    mm(`inner${n}Ahead`, {
      label: `${name}, body pivot, ahead of the hub’s middle`,
      between: [`inner${n}`, 'wheelCentre'],
      measure: 'ahead',
      low: -1500,
      high: 1500,
      otherwise: inner[0],
      tolerance: 30,
      why: `${AS_USUAL}; behind it is below 0`,
    }),
  ),
  ...LINKS.map(({ n, name }) =>
    mm(`inner${n}Height`, {
      label: `${name}, body pivot, height`,
      between: [`inner${n}`],
      low: 50,
      high: 1500,
      otherwise: usualHeight(`inner${n}`),
      tolerance: 30,
      why: AS_USUAL,
    }),
  ),
  ...LINKS.flatMap(({ n, name, outer }) => [
    mm(`outer${n}Inset`, {
      label: `${name}, joint at the hub, inboard of the hub’s face`,
      between: [`outer${n}`, 'wheelCentre'],
      measure: 'inboard-of-face',
      low: -100,
      high: 600,
      otherwise: USUAL_OFFSET - outer[1],
      tolerance: 30,
      why: AS_USUAL,
    }),
    mm(`outer${n}Ahead`, {
      label: `${name}, joint at the hub, ahead of the hub’s middle`,
      between: [`outer${n}`, 'wheelCentre'],
      measure: 'ahead',
      low: -600,
      high: 600,
      otherwise: outer[0],
      tolerance: 30,
      why: `${AS_USUAL}; behind it is below 0`,
    }),
    mm(`outer${n}Height`, {
      label: `${name}, joint at the hub, height`,
      between: [`outer${n}`],
      low: 50,
      high: 1200,
      otherwise: usualHeight(`outer${n}`),
      tolerance: 30,
      why: AS_USUAL,
    }),
  ]),
  mm('wheelCentreHeight', {
    label: 'Wheel centre, height',
    between: ['wheelCentre'],
    low: 150,
    high: 700,
    otherwise: 314,
    tolerance: 20,
    why: 'a middling tyre',
  }),
  mm('track', {
    label: 'Track',
    between: ['wheelCentre'],
    measure: 'track',
    low: 600,
    high: 3000,
    otherwise: 1536,
    tolerance: 50,
    why: 'a middling car, between the wheel centres',
  }),
  {
    ...mm('wheelOffset', {
      label: 'Wheel’s offset, as stamped on it',
      between: ['wheelCentre'],
      low: -150,
      high: 150,
      otherwise: USUAL_OFFSET,
      tolerance: 10,
      why: 'a usual wheel: its middle stands so far inboard of the hub’s face',
    }),
    measure: undefined,
  },
  ...shared.STANCE.filter(({ name }) => name === 'axleBehindFront'),
];

export const fiveLinkTape: TapeLayout = {
  kind: 'five-link',
  dimensions,
  build: (from) => {
    const { take, follows } = from;
    // 0 − 0, as −0 would not come back from a file.
    const wheelCentre: Vec3 = [0 - take('axleBehindFront'), take('track') / 2, take('wheelCentreHeight')];
    const face = wheelCentre[1] + take('wheelOffset');
    const links = LINKS.flatMap(({ n, outer, inner }): (readonly [string, Vec3])[] => {
      follows(usualHeight(`outer${n}`), wheelCentre[2] + outer[2]);
      follows(usualHeight(`inner${n}`), wheelCentre[2] + inner[2]);
      const joint: Vec3 = [
        wheelCentre[0] + take(`outer${n}Ahead`),
        face - take(`outer${n}Inset`),
        take(`outer${n}Height`),
      ];
      return [
        [`inner${n}`, bodyPivot(n, joint, wheelCentre[0] + take(`inner${n}Ahead`), from)],
        [`outer${n}`, joint],
      ];
    });
    return { ...Object.fromEntries(links), wheelCentre };
  },
};

/** Inboard of the joint by what its length leaves beside the way that it goes along the car and up. */
function bodyPivot(n: number, joint: Vec3, x: number, { take, field }: Dimensions): Vec3 {
  const [length, z] = [take(`link${n}Length`), take(`inner${n}Height`)];
  const square = length ** 2 - (x - joint[0]) ** 2 - (z - joint[2]) ** 2;
  if (!(square > 0)) {
    const least = Math.hypot(x - joint[0], z - joint[2]);
    throw new InputError(`${field}.link${n}Length`, length, { is: 'reaches', least });
  }
  return [x, joint[1] - Math.sqrt(square), z];
}
