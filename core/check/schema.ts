/** Shapes of a reading, a spec, settings and a visit as they come from a file. Strict: a field nobody knows is refused. */
import * as v from 'valibot';
import { choice, number, text, textUpTo, whole } from '../adjuster/fields.ts';
import { MOST_ADJUSTERS } from '../adjuster/of-corner.ts';
import { ruleText } from '../adjuster/rule-text.ts';
import { CORNERS } from '../contract.ts';
import { byName, object, open, shape } from './object.ts';

/** No more than a corner can carry or a long-lived workshop can fill; a file beyond this is not one of ours. */
export const MOST = { adjusters: MOST_ADJUSTERS, visits: 5000, rounds: 200, moves: 1000, notes: 4000 } as const;

const angle = number(-90, 90, 'degrees');
export const shortText = text();

export const id = v.pipe(
  shortText,
  v.check((key) => !(key in {}), ruleText({ is: 'id' })),
);
const TIME = ruleText({ is: 'time' });
const time = v.pipe(
  v.string(TIME),
  v.regex(/^\d{4}-\d{2}-\d{2}(T\d{2}:\d{2}(:\d{2}(\.\d{1,9})?)?(Z|[+-]\d{2}:\d{2})?)?$/, TIME),
);
const corner = choice(CORNERS);
export const position = v.union([v.pipe(v.number(), v.finite()), shortText], ruleText({ is: 'position' }));

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
export const spec = object({ front: v.optional(axleSpec), rear: v.optional(axleSpec) });

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
export const reading = object({
  ...byCorner(wheelReading),
  toeReference: v.optional(choice(['centreline', 'thrust-line'])),
  steeringWheel: v.optional(angle),
  // What predictReading adds where no pose exists: such a reading may come back in.
  unreachable: v.optional(v.array(v.object({ corner, message: v.string() }))),
  front: v.optional(axleReading),
  rear: v.optional(axleReading),
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
const moved = open({
  id: v.optional(id),
  at: v.optional(time),
  replaces: v.optional(id),
  ...adjusterRef,
  from: position,
  to: position,
  outcome: v.optional(outcome),
  shims: v.optional(pack),
});
const round = open({
  id: v.optional(id),
  at: v.optional(time),
  replaces: v.optional(id),
  reading,
  settings: carSettings,
  packs: v.optional(carPacks),
  moved: v.optional(list(moved, MOST.moves)),
});
const value = textUpTo(1_000_000);
/** What of a visit changes, and the marks that it was made of; see core/records/visit-facts.ts. */
export const visitFacts = {
  closed: v.optional(time),
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
