/**
 * What adjusters a layout is usually found with, each complete with the figures that most of them have, so that it can be
 * chosen by its picture and nothing typed. Figures are trade practice from memory but where a source is named; which way a
 * cam is fitted or a thread cut shows at its first move.
 */
import type { Adjuster, AxleName, Vec3 } from '../contract.ts';

/** One choice: what is done by hand to one wheel, with one adjuster or with two that go together. */
export interface Fitment {
  readonly id: string;
  /** As a technician calls it. */
  readonly name: string;
  readonly adjusters: readonly Adjuster[];
  /** Of those that say the same a car has one. */
  readonly oneOf?: string;
}

const OUT: Vec3 = [0, 1, 0];
const IN: Vec3 = [0, -1, 0];
const FORWARD: Vec3 = [1, 0, 0];
const REARWARD: Vec3 = [-1, 0, 0];

interface Place {
  readonly id: string;
  readonly name: string;
  readonly at: string;
  readonly direction?: Vec3;
}

/** A scale of 15° a mark, and a throw between those of two makers' service manuals (fixtures/published): 4.5 and 7 mm. */
const cam = ({ id, name, at, direction = OUT }: Place): Adjuster => ({
  ...{ id, name, kind: 'eccentric-cam', at, direction },
  ...{ eccentricity: 5, marks: 24, stepMarks: 0.5, range: [-90, 90], zero: 'middle', reference: 0, usual: true },
});
const pack = ({ id, name, at, direction = OUT }: Place): Adjuster => ({
  ...{ id, name, kind: 'shim-pack', at, direction },
  ...{ sizes: [0.5, 1, 2, 3], max: 15, reference: 0 },
});
const slots = ({ id, name, at, direction = OUT }: Place): Adjuster => ({
  ...{ id, name, kind: 'slide', at, direction, step: 0.5, range: [-10, 10], reference: 0 },
});
/** One pitch of 1.5 mm, the commonest of ISO 261's fine ones for rods; from memory. */
const rod = (id: string, name: string, ...links: readonly string[]): Adjuster => ({
  ...{ id, name, kind: 'threaded-rod', links },
  ...{ lead: 1.5, stepTurns: 1 / 12, range: [-6, 6], reference: 0, usual: true },
});
const one = (adjuster: Adjuster, name = adjuster.name ?? ''): Fitment => ({
  id: adjuster.id,
  name,
  adjusters: [adjuster],
});

/** Front and rear pivot of an arm. */
const ofArm = (
  which: 'upper' | 'lower',
  what: string,
  make: (place: Place) => Adjuster,
  { id, name, oneOf, direction }: Pick<Fitment, 'id' | 'name' | 'oneOf'> & { readonly direction?: Vec3 },
): Fitment => ({
  id,
  name,
  ...(oneOf && { oneOf }),
  adjusters: (['Front', 'Rear'] as const).map((end) =>
    make({
      id: `${id}-${end.toLowerCase()}`,
      name: `${end} ${what}, ${which} arm`,
      at: `${which}${end}`,
      ...(direction && { direction }),
    }),
  ),
});

const LOWER_CAMS = ofArm('lower', 'cam', cam, { id: 'lower-cams', name: 'Cams, lower arm' });
const steering = (axle: AxleName): Fitment =>
  one(axle === 'front' ? rod('tie-rod', 'Tie rod', 'tieInner') : rod('toe-link', 'Toe link', 'tieInner'));

const hubShims: Fitment = one({
  ...{ id: 'hub-shim', name: 'Wedge shim at the hub', kind: 'wedge-shim' },
  ...{ degrees: [0.25, 0.5, 0.75, 1, 1.5], marks: 24, reference: 'none' },
});
const sleeve: Fitment = one({
  ...{ id: 'sleeve', name: 'Offset sleeve, upper ball joint', kind: 'offset-sleeve' },
  ...{ degrees: [0, 0.5, 1, 1.5], marks: 12, reference: 'plain' },
});

const FITMENTS: Readonly<Record<string, (axle: AxleName) => readonly Fitment[]>> = {
  'double-wishbone': (axle) => [
    LOWER_CAMS,
    ofArm('upper', 'cam', cam, { id: 'upper-cams', name: 'Cams, upper arm' }),
    ofArm('upper', 'pack', pack, { id: 'shims-out', name: 'Shims, upper arm: more push it out', oneOf: 'shims' }),
    ofArm('upper', 'pack', pack, {
      id: 'shims-in',
      name: 'Shims, upper arm: more pull it in',
      oneOf: 'shims',
      direction: IN,
    }),
    ofArm('upper', 'slot', slots, { id: 'slots', name: 'Slots, upper arm' }),
    steering(axle),
  ],
  strut: (axle) => [
    one(slots({ id: 'plate-out', name: 'Camber plate', at: 'strutTop', direction: IN })),
    one(slots({ id: 'plate-back', name: 'Caster plate', at: 'strutTop', direction: REARWARD })),
    one({
      ...{ id: 'clamp', name: 'Bolts at the strut’s clamp', kind: 'clamp-bolt' },
      ...{ step: 0.1, range: [-1.5, 1.5], reference: 0 },
    }),
    LOWER_CAMS,
    steering(axle),
  ],
  'five-link': () => [
    one(cam({ id: 'lean-cam', name: 'Cam, lower rear link', at: 'inner4' })),
    one(cam({ id: 'toe-cam', name: 'Cam, toe link', at: 'inner5' })),
    one(rod('toe-rod', 'Threaded toe link', 'inner5')),
    one(rod('lean-rod', 'Threaded upper rear link', 'inner2')),
  ],
  'trailing-arm': () => [
    one(cam({ id: 'toe-cam', name: 'Cam, outer bush', at: 'pivotOuter', direction: FORWARD })),
    one(slots({ id: 'lean-slot', name: 'Slot, outer bush, up and down', at: 'pivotOuter', direction: [0, 0, 1] })),
    hubShims,
  ],
  'beam-front': () => [sleeve, one(rod('tie-rod', 'Tie rod', 'tieInner'))],
  'beam-cross-rod': () => [
    sleeve,
    one(rod('cross-rod', 'Cross rod', 'crossNear')),
    one(rod('drag-link', 'Drag link', 'dragBody')),
  ],
  'beam-rear': () => [hubShims],
  'beam-linked': () => [
    one(rod('lower-link', 'Threaded lower link', 'lowerBody')),
    one(rod('upper-link', 'Threaded upper link', 'upperBody')),
    one(rod('lateral-rod', 'Threaded lateral rod', 'rodBody')),
  ],
};

/** What a layout at one end of a car is usually adjusted by. */
export const fitmentsFor = (kind: string, axle: AxleName): readonly Fitment[] =>
  Object.hasOwn(FITMENTS, kind) ? FITMENTS[kind]!(axle) : [];
