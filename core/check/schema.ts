/** Shapes of a reading, a spec, settings and a visit as they come from a file. Strict: a field nobody knows is refused. */
import * as v from 'valibot';
import { choice, number, text, textUpTo, whole } from '../adjuster/fields.ts';
import { MOST_ADJUSTERS } from '../adjuster/of-corner.ts';
import { ruleText } from '../adjuster/rule-text.ts';
import { CORNERS, MEASURED_BY, WHEEL_ANGLES } from '../contract.ts';
import { byName, object, open, shape } from './object.ts';
import { isTime } from './time.ts';

/** No more than a corner can carry or a long-lived workshop can fill; a file beyond this is not one of ours. */
export const MOST = {
  adjusters: MOST_ADJUSTERS,
  visits: 5000,
  rounds: 200,
  moves: 1000,
  notes: 4000,
  unknowns: 400,
} as const;

const COVARIANCE = ruleText({ is: 'covariance' });
const angle = number(-90, 90, 'degrees');
export const shortText = text();

export const id = v.pipe(
  shortText,
  v.check((key) => !(key in {}), ruleText({ is: 'id' })),
  // Half a character has no place in an address.
  v.check((key) => !/\p{Surrogate}/u.test(key), ruleText({ is: 'whole-characters' })),
);
const TIME = ruleText({ is: 'time' });
const time = v.pipe(v.string(TIME), v.check(isTime, TIME));
const corner = choice(CORNERS);
const POSITION = ruleText({ is: 'position' });
export const position = v.union([v.pipe(v.number(POSITION), v.finite(POSITION)), shortText], POSITION);

/** One optional entry a corner. */
const byCorner = <T extends v.GenericSchema>(schema: T) => ({
  LF: v.optional(schema),
  RF: v.optional(schema),
  LR: v.optional(schema),
  RR: v.optional(schema),
});

const windowOf = (value: typeof angle, unit: 'degrees' | 'mm') =>
  object(
    {
      low: value,
      aim: v.optional(value),
      high: value,
      assumed: v.optional(v.literal(true, ruleText({ is: 'yes-or-no' }))),
    },
    shape('low aim high', { in: unit }),
  );
const sideways = number(-500, 500, 'mm');
const window = windowOf(angle, 'degrees');
const wheelWindows = { camber: v.optional(window), caster: v.optional(window), toe: v.optional(window) };
const axleSpec = object({
  ...wheelWindows,
  totalToe: v.optional(window),
  crossCamber: v.optional(window),
  crossCaster: v.optional(window),
  thrustAngle: v.optional(window),
  pinionChange: v.optional(window),
  lateralChange: v.optional(windowOf(sideways, 'mm')),
  left: v.optional(object(wheelWindows)),
  right: v.optional(object(wheelWindows)),
});
export const spec = object({
  front: v.optional(axleSpec),
  rear: v.optional(axleSpec),
  toeDiameter: v.optional(number(100, 2000, 'mm')),
});

const wheelReading = object({
  camber: v.optional(angle),
  caster: v.optional(angle),
  toe: v.optional(angle),
  sai: v.optional(angle),
});
const axleReading = object({
  pinionAngle: v.optional(angle),
  lateral: v.optional(sideways),
  // What predictReading adds; such a reading may come back in.
  pinionChange: v.optional(angle),
  lateralChange: v.optional(sideways),
});
const measuring = (most: number, unit: 'degrees' | 'mm') =>
  v.optional(object({ by: choice(MEASURED_BY), sd: number(0, most, unit) }, shape('by sd')));
const wheelMeasuring = object({
  camber: measuring(10, 'degrees'),
  caster: measuring(10, 'degrees'),
  toe: measuring(10, 'degrees'),
  sai: measuring(10, 'degrees'),
});
const axleMeasuring = object({ pinionAngle: measuring(10, 'degrees'), lateral: measuring(100, 'mm') });
const methods = object({
  ...byCorner(wheelMeasuring),
  front: v.optional(axleMeasuring),
  rear: v.optional(axleMeasuring),
});
/** From a maker's points, one of which may be below the other, up to the wing of a lorry. */
const height = number(-500, 2000, 'mm');
export const reading = object({
  ...byCorner(wheelReading),
  toeReference: v.optional(choice(['centreline', 'thrust-line'])),
  steeringWheel: v.optional(angle),
  rideHeights: v.optional(object(byCorner(height))),
  // What predictReading adds where no pose exists: such a reading may come back in.
  unreachable: v.optional(v.array(v.object({ corner, message: v.string() }))),
  front: v.optional(axleReading),
  rear: v.optional(axleReading),
  methods: v.optional(methods),
});

export const settings = byName(position, undefined, id);
export const carSettings = object(byCorner(settings));

/** No stack holds more shims of a size than lie on a bolt. */
export const pack = list(
  object({ size: number(0.01, 50, 'mm'), count: whole(0, 100, 'shims') }, shape('size count', { in: 'shims' })),
  64,
);
export const carPacks = object(byCorner(byName(pack, undefined, id)));

export const adjusterRef = { corner, adjuster: id };
export const outcome = choice(['done', 'wont-move', 'set-to']);
/** How a move was set by the rack; see core/contract.ts. */
export const setBy = object(
  {
    angle: choice(WHEEL_ANGLES),
    value: angle,
    shown: v.optional(object({ camber: v.optional(angle), caster: v.optional(angle), toe: v.optional(angle) })),
    within: v.optional(number(0, 1e4, '')),
  },
  shape('angle value shown? within?', { as: 'object' }),
);
const moved = open({
  id: v.optional(id),
  at: v.optional(time),
  replaces: v.optional(id),
  ...adjusterRef,
  from: position,
  to: position,
  outcome: v.optional(outcome),
  shims: v.optional(pack),
  setBy: v.optional(setBy),
});
/** Records of one visit. */
export const ids = list(id, 1000);
export const round = open({
  id: v.optional(id),
  at: v.optional(time),
  replaces: v.optional(id),
  over: v.optional(ids),
  reading,
  settings: carSettings,
  unknown: v.optional(list(object(adjusterRef), 256)),
  packs: v.optional(carPacks),
  moved: v.optional(list(moved, MOST.moves)),
});
/** Marks that a car or a visit was deleted or brought back; see core/records/deletion.ts. */
export const deleted = list(object({ at: time, knew: v.optional(whole(0, 10_000_000)) }, shape('at knew?')), 10_000);
const value = textUpTo(1_000_000);
/** What of a visit changes, and the marks that it was made of; see core/records/visit-facts.ts. */
export const visitFacts = {
  closed: v.optional(time),
  deleted: v.optional(deleted),
  checks: v.optional(byName(value)),
  marks: v.optional(
    v.pipe(
      byName(list(object({ value, at: v.optional(time) }), 10_000)),
      // What was marked last becomes the field.
      v.check(({ closed = [] }) => closed.every((mark) => mark.value === '' || v.is(time, mark.value)), TIME),
    ),
  ),
};
const visit = open({ id, carId: id, opened: time, ...visitFacts, rounds: list(round, MOST.rounds) });
export const visits = list(visit, MOST.visits);

export const gauge = object(
  {
    ...{ camber: number(0, 5, 'degrees'), caster: number(0, 5, 'degrees'), toe: number(0, 5, 'degrees') },
    pinionAngle: v.optional(number(0, 5, 'degrees')),
    lateral: v.optional(number(0, 50, 'mm')),
  },
  shape('camber caster toe', { in: 'deviations' }),
);

/** Of one car: as many as it may have visits. */
export const rounds = list(round, MOST.visits);

/** What readings have taught; see core/contract.ts. Whether it is of this car its check says (learned.ts). */
export const learned = object({
  parts: list(
    object({
      corners: list(corner, 2),
      unknowns: list(shortText, MOST.unknowns),
      covariance: list(v.pipe(v.number(COVARIANCE), v.finite(COVARIANCE)), (MOST.unknowns * (MOST.unknowns + 1)) / 2),
      by: v.optional(list(number(-1e4, 1e4, ''), MOST.unknowns)),
    }),
    4,
  ),
  leftOut: list(object({ corner, round: v.optional(id) }), 10_000),
  places: v.optional(list(object({ ...adjusterRef, at: number(-1e4, 1e4, ''), deviation: number(0, 1e4, '') }), 64)),
  last: v.optional(object({ id: v.optional(id), at: v.optional(time), reading, settings: carSettings })),
});

/** What an axle starts from; whether that is of this axle its check says (learned.ts). */
export const start = object({
  of: shortText,
  readings: whole(0, 1e6),
  parts: list(
    object({
      corners: list(corner, 2),
      unknowns: list(shortText, MOST.unknowns),
      covariance: list(v.pipe(v.number(COVARIANCE), v.finite(COVARIANCE)), (MOST.unknowns * (MOST.unknowns + 1)) / 2),
      at: list(number(-1e5, 1e5, ''), MOST.unknowns),
    }),
    2,
  ),
});

/** What lies ready of each shim size. */
export const drawer = list(
  object({ size: number(0.01, 50, 'mm'), count: whole(0, 10000, 'shims') }, shape('size count', { in: 'shims' })),
  64,
);

/** Every record of the database has these fields in common; see stored-schema.ts. */
export const fields = { id, time, corner };

export function list<T extends v.GenericSchema>(item: T, most: number) {
  return v.pipe(v.array(item, ruleText({ is: 'list' })), v.maxLength(most, ruleText({ is: 'list', most })));
}
