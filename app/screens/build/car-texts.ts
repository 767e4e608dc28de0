/**
 * A car and its windows as texts and back. Over the usual length, as both ways of each field stand together: they have
 * to agree. A text is a number only where it reads as one; else it goes to the core as typed, which refuses it by name.
 */
import type { Adjuster, AxleName, Spec, Suspension, Window } from '../../../core/contract.ts';
import type { CarRecord } from '../../../core/records/stored.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import { angleText, readAngle } from '../../state/units.ts';
import { adjusterFrom, textsOfAdjuster } from './adjuster-fields.ts';
import { lengthOf, lengthText, type Texts, toeWindowOf, toeWindowText, typedValue } from './numbers.ts';

const AXLES = ['front', 'rear'] as const satisfies AxleName[];
export const WINDOWS = {
  front: ['caster', 'camber', 'toe', 'totalToe', 'crossCaster', 'crossCamber', 'thrustAngle'],
  rear: ['camber', 'toe', 'totalToe', 'crossCamber', 'thrustAngle'],
} as const satisfies Record<AxleName, readonly string[]>;
const ENDS = ['low', 'aim', 'high'] as const;

// From the record to texts.

export function textsOf({ car, spec }: CarRecord): Texts {
  const texts: Record<string, string> = {
    'car.label': car.label,
    'car.plate': car.plate ?? '',
    'car.notes': car.notes ?? '',
    'car.wheel.rimDiameter': lengthText(car.wheel.rimDiameter),
  };
  for (const axle of AXLES) {
    Object.assign(texts, suspensionTexts(car[axle].suspension, `car.${axle}.suspension`));
    for (const [i, adjuster] of car[axle].adjusters.entries()) {
      Object.assign(texts, adjusterTexts(adjuster, `car.${axle}.adjusters[${i}]`));
    }
    for (const angle of WINDOWS[axle]) {
      Object.assign(texts, windowTexts(spec[axle]?.[angle], angle, `spec.${axle}.${angle}`, car.wheel.rimDiameter));
    }
  }
  return texts;
}

function suspensionTexts(suspension: Suspension, path: string): Texts {
  const { kind, camber, toe, tolerance, points, tape } = suspension;
  const texts: Record<string, string> = {
    [`${path}.kind`]: kind,
    [`${path}.way`]: tape ? 'tape' : 'points',
    [`${path}.camber`]: angleText(camber),
    [`${path}.toe`]: angleText(toe),
    [`${path}.tolerance`]: tolerance === undefined ? '' : lengthText(tolerance),
  };
  for (const [name, point] of Object.entries(points)) {
    for (const [i, x] of point.entries()) texts[`${path}.points.${name}[${i}]`] = lengthText(x);
  }
  for (const [name, entry] of Object.entries(tape ?? {})) {
    const value = typeof entry === 'object' && entry !== null && 'value' in entry ? entry.value : entry;
    const angle = dimensionsOf(kind).find((one) => one.name === name)?.unit === 'degrees';
    texts[`${path}.tape.${name}`] =
      typeof value === 'number' ? (angle ? angleText(value) : lengthText(value)) : String(value);
  }
  return texts;
}

export function adjusterTexts(adjuster: Adjuster, path: string): Texts {
  const texts: Record<string, string> = { [`${path}.id`]: adjuster.id, [`${path}.kind`]: adjuster.kind };
  return { ...texts, ...textsOfAdjuster(adjuster, path) };
}

function windowTexts(window: Window | undefined, angle: string, path: string, rim: number): Texts {
  if (!window) return {};
  return Object.fromEntries(
    ENDS.map((end) => {
      const value = window[end];
      return [`${path}.${end}`, value === undefined ? '' : isToe(angle) ? toeWindowText(value, rim) : angleText(value)];
    }),
  );
}
const isToe = (angle: string): boolean => angle === 'toe' || angle === 'totalToe';

// From texts to what the core checks.

/**
 * The car file that the texts say, unchecked. What was not touched since `record` keeps its exact value: the text that
 * shows it may be rounded.
 */
export function fileOf(texts: Texts, id: string, record: CarRecord | undefined) {
  const before = record ? textsOf(record) : {};
  const untouched = (path: string): boolean =>
    record !== undefined &&
    keysUnder(texts, path).every((key) => texts[key] === before[key]) &&
    sameKeys(texts, before, path);
  const axle = (name: AxleName) => {
    const path = `car.${name}`;
    const own = record?.car[name];
    return {
      ...(own?.rightSuspension ? { rightSuspension: own.rightSuspension } : {}),
      suspension: own && untouched(`${path}.suspension`) ? own.suspension : suspensionOf(texts, `${path}.suspension`),
      adjusters:
        own && untouched(`${path}.adjusters`)
          ? own.adjusters
          : indices(texts, `${path}.adjusters`).map((i) => adjusterFrom(texts, `${path}.adjusters[${i}]`)),
      steered: own?.steered ?? name === 'front',
    };
  };
  const rim = lengthOf(texts['car.wheel.rimDiameter']);
  const plate = texts['car.plate']?.trim();
  const notes = texts['car.notes']?.trim();
  return {
    format: 'cornerwright',
    version: 1,
    car: {
      id,
      label: texts['car.label']?.trim() ?? '',
      ...(plate ? { plate } : {}),
      ...(notes ? { notes } : {}),
      wheel: { rimDiameter: record && untouched('car.wheel') ? record.car.wheel.rimDiameter : rim },
      front: axle('front'),
      rear: axle('rear'),
    },
    spec: Object.fromEntries(
      AXLES.map((name) => [name, windowsOf(texts, name, typeof rim === 'number' ? rim : 0, record?.spec, untouched)]),
    ),
  };
}

export function suspensionOf(texts: Texts, path: string): unknown {
  const kind = texts[`${path}.kind`] ?? '';
  const tolerance = lengthOf(texts[`${path}.tolerance`]);
  const common = { kind, ...(tolerance === undefined ? {} : { tolerance }) };
  if (texts[`${path}.way`] === 'tape' && dimensionsOf(kind).length > 0) {
    return { ...common, tape: tapeOf(texts, path, kind) };
  }
  const points = (suspensionKinds[kind]?.points ?? []).map((name) => {
    const point = [0, 1, 2].map((i) => lengthOf(texts[`${path}.points.${name}[${i}]`]));
    return [name, point.every((x) => x === undefined) ? undefined : point];
  });
  return {
    ...common,
    points: Object.fromEntries(points),
    camber: typedValue(texts[`${path}.camber`], readAngle),
    toe: typedValue(texts[`${path}.toe`], readAngle),
  };
}

/** What a tape can take of a kind; nothing where it is given by points alone. */
export const dimensionsOf = (kind: string) => suspensionKinds[kind]?.tape?.dimensions ?? [];

function tapeOf(texts: Texts, path: string, kind: string): unknown {
  const tie = texts[`${path}.tape.tie`];
  const given = dimensionsOf(kind)
    .map(({ name, unit }) => {
      const text = texts[`${path}.tape.${name}`];
      return [name, unit === 'degrees' ? typedValue(text, readAngle) : lengthOf(text)] as const;
    })
    .filter(([, value]) => value !== undefined);
  return { ...(tie ? { tie } : {}), ...Object.fromEntries(given) };
}

function windowsOf(
  texts: Texts,
  axle: AxleName,
  rim: number,
  before: Spec | undefined,
  untouched: (path: string) => boolean,
): unknown {
  const sides = { left: before?.[axle]?.left, right: before?.[axle]?.right };
  const windows = WINDOWS[axle].map((angle: keyof Omit<NonNullable<Spec['front']>, 'left' | 'right'>) => {
    const path = `spec.${axle}.${angle}`;
    if (untouched(path)) return [angle, before?.[axle]?.[angle]];
    const read = (text: string) => (isToe(angle) ? toeWindowOf(text, rim) : readAngle(text));
    const ends = ENDS.map((end) => [end, typedValue(texts[`${path}.${end}`], read)] as const);
    const given = ends.filter(([, value]) => value !== undefined);
    return [angle, given.length > 0 ? Object.fromEntries(given) : undefined];
  });
  return Object.fromEntries([...windows, ...Object.entries(sides)].filter(([, value]) => value !== undefined));
}

/** Numbers in use as `path[n]`, ascending. */
export function indices(texts: Texts, path: string): readonly number[] {
  const found = keysUnder(texts, `${path}[`).map((key) => Number.parseInt(key.slice(path.length + 1), 10));
  return [...new Set(found)].sort((a, b) => a - b);
}

const keysUnder = (texts: Texts, path: string): string[] => Object.keys(texts).filter((key) => key.startsWith(path));
const sameKeys = (a: Texts, b: Texts, path: string): boolean => keysUnder(b, path).every((key) => key in a);
