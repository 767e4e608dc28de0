import * as v from 'valibot';
import { number, vector } from '../adjuster/fields.ts';
import { ruleText } from '../adjuster/rule-text.ts';
import type { Suspension, Vec3 } from '../contract.ts';
import { InputError } from '../input-error.ts';
import type { Rule } from '../rule.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { jointsOf } from '../suspension/joints.ts';
import type { SuspensionKind } from '../suspension/kind.ts';
import { tapeLayouts } from '../suspension/tape/catalogue.ts';
import { suspensionFromTape, type TapeLayout } from '../suspension/tape/tape.ts';
import { beside, each } from './gather.ts';
import { validateMeasured } from './measured.ts';
import { byName, open, shape } from './object.ts';
import { check } from './refuse.ts';

const wheelAngle = number(-45, 45, 'degrees');
/** A suspension before its points and dimensions are looked at. */
export const schema = open(
  {
    kind: v.string(ruleText({ is: 'suspension-kind' })),
    points: v.optional(byName(v.unknown(), { is: 'points' })),
    camber: v.optional(wheelAngle),
    toe: v.optional(wheelAngle),
    tolerance: v.optional(number(0, 200, 'mm')),
    tape: v.optional(byName(v.unknown(), { is: 'dimensions' })),
    measured: v.optional(byName(v.unknown(), { is: 'dimensions' })),
  },
  shape('kind points camber toe', { as: 'object' }),
);

/** mm within which two joints would be one: a link of no length, or two links that hold as one. */
const COINCIDENT = 1e-3;

/** The catalogue's kind of that name. @throws InputError */
export function suspensionKind(kind: string, field: string): SuspensionKind {
  const found = Object.hasOwn(suspensionKinds, kind) ? suspensionKinds[kind] : undefined;
  if (!found) throw new InputError(field, kind, oneKindOf(suspensionKinds));
  return found;
}

/** The rule that a kind is one of a catalogue's. */
export const oneKindOf = (kinds: Readonly<Record<string, { readonly name: string }>>): Rule => ({
  is: 'one-of',
  of: Object.keys(kinds),
  names: Object.values(kinds).map(({ name }) => name),
});

/**
 * A suspension by points or, where it has none, by its tape dimensions, from which the points are then built.
 * @param right whether it is the right side of an axle, whose left one has what the axle has once
 * @throws InputError such as `front.suspension.points.upperBall`
 */
export function validateSuspension(value: unknown, field = 'suspension', right = false): Suspension {
  const given: v.InferOutput<typeof schema> = beside(
    () => check(schema, value, field),
    () => checkAll((value ?? {}) as Loose, field, right),
  );
  const { points, tape, camber, toe, tolerance, measured: lengths, ...own } = given;
  const kind = suspensionKind(own.kind, `${field}.kind`);
  const measured = lengths && validateMeasured(lengths, kind.kind, `${field}.measured`);
  const rest = { ...own, ...(measured && Object.keys(measured).length > 0 && { measured }) };
  // Where there is no geometry there are no points, and no angles that belong to them.
  const bare = kind.points.length === 0;
  if (!points && tape) return { ...rest, ...fromTape({ camber, toe, tolerance, tape }, kind, field), tape };
  const angle = (name: 'camber' | 'toe') => () =>
    check(wheelAngle, given[name] ?? (bare ? 0 : undefined), `${field}.${name}`);
  const placed = beside(
    () => validatePoints(points ?? (bare ? {} : points), kind, `${field}.points`, right),
    ...[angle('camber'), angle('toe')],
  );
  const [leans, turns] = each([angle('camber'), angle('toe')]) as [number, number];
  return {
    ...rest,
    points: placed,
    camber: leans,
    toe: turns,
    ...(tolerance === undefined ? {} : { tolerance }),
    ...(tape ? { tape } : {}),
  };
}

/** What lies in a suspension of which a field of its own is wrong. */
function checkAll({ kind: name = '', points, tape, ...angles }: Loose, field: string, right: boolean): void {
  const kind = Object.hasOwn(suspensionKinds, String(name)) ? suspensionKinds[String(name)] : undefined;
  if (!kind || kind.points.length === 0) return;
  if (!points && typeof tape === 'object' && tape) {
    fromTape(
      { tape: tape as Readonly<Record<string, unknown>>, camber: undefined, toe: undefined, tolerance: undefined },
      kind,
      field,
    );
    return;
  }
  const lacking = (['camber', 'toe'] as const).filter((one) => angles[one] === undefined);
  each<unknown>([
    () => validatePoints(points, kind, `${field}.points`, right),
    ...lacking.map((one) => () => check(wheelAngle, undefined, `${field}.${one}`)),
  ]);
}

/** A suspension of which nothing is known yet. */
type Loose = Readonly<Record<'kind' | 'points' | 'tape' | 'camber' | 'toe', unknown>>;
type Given = Pick<v.InferOutput<typeof schema>, 'camber' | 'toe' | 'tolerance' | 'tape'>;

function fromTape(
  { camber, toe, tolerance, tape }: Given,
  kind: SuspensionKind,
  field: string,
): Omit<Suspension, 'kind'> {
  const layout = tapeLayouts[kind.kind];
  if (!layout) throw new InputError(`${field}.tape`, tape, { is: 'absent', why: 'by-points', suspension: kind.name });
  const angles = { ...(camber === undefined ? {} : { camber }), ...(toe === undefined ? {} : { toe }) };
  const given = { ...angles, ...tape };
  const built = beside(
    () => suspensionFromTape(layout, given, `${field}.tape`),
    () => checkDimensions(layout, given, `${field}.tape`),
  );
  validatePoints(built.points, kind, `${field}.points`);
  return { points: built.points, camber: built.camber, toe: built.toe, tolerance: tolerance ?? built.tolerance };
}

/** Each dimension for itself. @throws InputError */
function checkDimensions({ dimensions }: TapeLayout, tape: Readonly<Record<string, unknown>>, field: string): void {
  each(
    dimensions.map(({ name, low, high, unit, otherwise }) => () => {
      const entry = tape[name];
      const value = typeof entry === 'object' && entry !== null && 'value' in entry ? entry.value : entry;
      if (value !== undefined || otherwise === undefined) check(number(low, high, unit), value, `${field}.${name}`);
    }),
  );
}

function validatePoints(value: unknown, kind: SuspensionKind, field: string, right = false): Record<string, Vec3> {
  const given = check(byName(v.unknown(), { is: 'points' }), value, field);
  const strange = Object.keys(given).find((name) => !kind.points.includes(name));
  if (strange !== undefined) {
    throw new InputError(`${field}.${strange}`, given[strange], { is: 'no-such', what: 'point', known: kind.points });
  }
  const { optionalPoints = [], rigidAxle } = kind;
  const some = optionalPoints.some((name) => given[name] !== undefined);
  const spare = (name: string): boolean =>
    (!some && optionalPoints.includes(name)) || (right && rigidAxle?.once.includes(name) === true && !given[name]);
  const asked = kind.points.filter((name) => !spare(name));
  const points = Object.fromEntries(
    each(asked.map((name) => () => [name, check(vector, given[name], `${field}.${name}`)] as const)),
  );
  const joints = jointsOf(kind, points);
  for (const [i, name] of joints.entries()) {
    const twin = joints.slice(0, i).find((other) => distance(points[other]!, points[name]!) < COINCIDENT);
    if (twin) throw new InputError(`${field}.${name}`, points[name], { is: 'apart-from', point: twin });
  }
  checkSides(points, kind, field);
  return points;
}

/** Each end of what joins two knuckles lies at its own: the far one across the car's middle from the other two. */
function checkSides(points: Readonly<Record<string, Vec3>>, kind: SuspensionKind, field: string): void {
  if (!kind.rigidAxle?.knuckles) return;
  const [, knuckle, near, far] = (kind.links ?? []).flat() as [string, string, string, string];
  if (!points[knuckle]) return;
  const onLeft = points[knuckle][1] > 0;
  check(outboard(onLeft), points[near]![1], `${field}.${near}[1]`);
  check(outboard(!onLeft), points[far]![1], `${field}.${far}[1]`);
}

/** y of a point of the left or of the right, in the left corner's frame. */
const outboard = (left: boolean) => (left ? number(0, MOST, 'mm') : number(-MOST, 0, 'mm'));
const MOST = 10_000;

const distance = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
