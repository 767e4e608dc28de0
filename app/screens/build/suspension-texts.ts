/** A suspension as texts and back: its points or its tape dimensions. What the card does not ask stays as it is on file. */
import type { Suspension } from '../../../core/contract.ts';
import { STARTER_WHEELBASE } from '../../../core/starters/starter.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import { tapeLayouts } from '../../../core/suspension/tape/catalogue.ts';
import { lengthsOf } from '../../../core/suspension/tape/measure.ts';
import { TAPE_TOLERANCE, type TapeDimension } from '../../../core/suspension/tape/tape.ts';
import { angleOf, exactAngle, lengthOf, lengthText, type Texts, unlessTyped } from './numbers.ts';

export const PLACES = [0, 1, 2] as const;
export const coordinate = (path: string, point: string, i: number): string => `${path}.points.${point}[${i}]`;

/**
 * How far this axle's hub is behind the front axle's. Where it stands among the texts, the points are typed from that hub
 * along the car, from where a hand reaches; a draft of before has it not, and counts them from the front axle.
 */
export const behindPath = (path: string): string => `${path}.behind`;
const isRear = (path: string): boolean => path.startsWith('car.rear.');
export function behindOf(texts: Texts, path: string): number {
  const behind = lengthOf(texts[behindPath(path)]);
  return typeof behind === 'number' ? behind : 0;
}
/** Whether the place along the car is the hub's own, which nobody measures. */
export const isHubPlace = (texts: Texts, path: string, point: string, i: number): boolean =>
  point === 'wheelCentre' && i === 0 && Boolean(texts[behindPath(path)]);

/** What a tape can take of a kind; nothing where it is given by points alone. */
export const dimensionsOf = (kind: string): readonly TapeDimension[] => tapeLayouts[kind]?.dimensions ?? [];

/** By tape where the kind has one, unless points were asked for, or typed before it had one. */
export const isByTape = (texts: Texts, path: string): boolean =>
  dimensionsOf(texts[`${path}.kind`] ?? '').length > 0 &&
  (texts[`${path}.way`] ?? (hasPoints(texts, path) ? 'points' : 'tape')) !== 'points';

const hasPoints = (texts: Texts, path: string): boolean =>
  Object.entries(texts).some(([key, text]) => text !== '' && key.startsWith(`${path}.points.`));

/** Where a length that was measured of a usual layout is typed. */
export const measuredPath = (path: string, name: string): string => `${path}.measured.${name}`;

/** Whether its points are a usual layout's, of which lengths can be measured one after another. */
export function isUsual(texts: Texts, path: string): boolean {
  const tolerance = lengthOf(texts[`${path}.tolerance`]);
  const isKnown = typeof tolerance !== 'number' || tolerance <= TAPE_TOLERANCE;
  return !isKnown && !isByTape(texts, path) && lengthsOf(texts[`${path}.kind`] ?? '').length > 0;
}

export function suspensionTexts(
  { kind, camber, toe, tolerance, points, tape, measured = {} }: Suspension,
  path: string,
): Texts {
  const texts: Record<string, string> = {
    [`${path}.kind`]: kind,
    [`${path}.way`]: tape ? 'tape' : 'points',
    [`${path}.camber`]: exactAngle(camber),
    [`${path}.toe`]: exactAngle(toe),
    [`${path}.tolerance`]: tolerance === undefined ? '' : lengthText(tolerance),
  };
  const behind = isRear(path) && points.wheelCentre ? 0 - points.wheelCentre[0] : undefined;
  if (behind !== undefined) texts[behindPath(path)] = lengthText(behind);
  for (const [name, point] of Object.entries(points)) {
    for (const i of PLACES) texts[coordinate(path, name, i)] = placeText(point[i], i, behind);
  }
  for (const dimension of lengthsOf(kind)) {
    const entry = measured[dimension.name];
    if (entry !== undefined) texts[measuredPath(path, dimension.name)] = entryText(dimension, entry);
  }
  if (tape?.tie !== undefined) texts[`${path}.tape.tie`] = String(tape.tie);
  for (const dimension of dimensionsOf(kind)) {
    const entry = tape?.[dimension.name];
    if (entry !== undefined) texts[`${path}.tape.${dimension.name}`] = entryText(dimension, entry);
  }
  return texts;
}

const placeText = (x: number, i: number, behind = 0): string => lengthText(i === 0 ? x + behind : x);

/** A dimension on file is a number, or one with how well it is known. */
function entryText({ unit }: TapeDimension, entry: unknown): string {
  const value = typeof entry === 'object' && entry !== null && 'value' in entry ? entry.value : entry;
  if (typeof value !== 'number') return String(value);
  return unit === 'degrees' ? exactAngle(value) : lengthText(value);
}

/** The suspension that the texts say, unchecked. */
export function suspensionOf(texts: Texts, path: string, onFile: Suspension | undefined): unknown {
  const kind = texts[`${path}.kind`] ?? '';
  const before = onFile?.kind === kind ? onFile : undefined;
  const { points, camber, toe, tolerance, tape, measured, ...rest } = before ?? {};
  const known = unlessTyped(texts[`${path}.tolerance`], tolerance, lengthText, lengthOf);
  const common = { ...rest, kind, ...(known === undefined ? {} : { tolerance: known }) };
  if (isByTape(texts, path)) {
    const built = tape ? { points, camber, toe } : {};
    const now = tapeOf(texts, path, kind, tape);
    // The points on file were built from this very tape.
    return sameEntries(now, tape) ? { ...common, ...built, tape } : { ...common, tape: now };
  }
  const angle = (name: 'camber' | 'toe', value: number | undefined) =>
    unlessTyped(texts[`${path}.${name}`], value, exactAngle, angleOf);
  const placed = (suspensionKinds[kind]?.points ?? []).map((name) => {
    const point = PLACES.map((i) => placeOf(texts, path, name, i, points?.[name]?.[i]));
    const isTyped = point.some((x, i) => x !== undefined && !isHubPlace(texts, path, name, i));
    return [name, isTyped ? point : undefined];
  });
  return {
    ...common,
    points: Object.fromEntries(placed.filter(([, point]) => point !== undefined)),
    camber: angle('camber', camber),
    toe: angle('toe', toe),
    ...lengthsFrom(texts, path, kind, measured),
  };
}

/** What was measured of a usual layout; a wheel's offset on file, which no field asks, stays with it. */
function lengthsFrom(texts: Texts, path: string, kind: string, before: Suspension['measured'] = {}) {
  const asked = lengthsOf(kind).map((dimension) => {
    const typed = texts[measuredPath(path, dimension.name)];
    const show = (entry: unknown): string => entryText(dimension, entry);
    return [dimension.name, unlessTyped(typed, before[dimension.name], show, lengthOf)] as const;
  });
  const own = Object.entries(before).filter(([name]) => !asked.some(([one]) => one === name));
  const measured = Object.fromEntries([...own, ...asked].filter(([, value]) => value !== undefined));
  return Object.keys(measured).length > 0 ? { measured } : {};
}

/** One coordinate, mm; what is on file stays to the last digit where the text shows it. */
export function placeOf(texts: Texts, path: string, point: string, i: number, onFile?: number): unknown {
  const behind = behindOf(texts, path);
  const show = (x: number): string => placeText(x, i, behind);
  const typed = isHubPlace(texts, path, point, i) ? show(-behind) : texts[coordinate(path, point, i)];
  return unlessTyped(typed, onFile, show, (text) => {
    const x = lengthOf(text);
    return i === 0 && typeof x === 'number' ? x - behind : x;
  });
}

type Tape = Readonly<Record<string, unknown>>;

function tapeOf(texts: Texts, path: string, kind: string, before: Tape | undefined): Tape {
  const tie = texts[`${path}.tape.tie`];
  const given = dimensionsOf(kind).map((dimension) => {
    const show = (entry: unknown): string => entryText(dimension, entry);
    const read = dimension.unit === 'degrees' ? angleOf : lengthOf;
    return [
      dimension.name,
      unlessTyped(texts[`${path}.tape.${dimension.name}`], before?.[dimension.name], show, read),
    ] as const;
  });
  const measured = Object.fromEntries(given.filter(([, value]) => value !== undefined));
  // Where an axle stands is not asked of who measures it.
  const stands = isRear(path) && measured[BEHIND] === undefined ? { [BEHIND]: wheelbaseOf(texts) } : {};
  return { ...(tie ? { tie } : {}), ...stands, ...measured };
}

export const BEHIND = 'axleBehindFront';
function wheelbaseOf(texts: Texts): number {
  const wheelbase = lengthOf(texts['car.wheelbase']);
  return typeof wheelbase === 'number' && wheelbase >= 500 && wheelbase <= 8000 ? wheelbase : STARTER_WHEELBASE;
}

function sameEntries(now: Tape, before: Tape | undefined): boolean {
  const { kind: _, ...old } = before ?? {};
  return Object.keys({ ...now, ...old }).every((key) => now[key] === old[key]);
}
