/** A suspension as texts and back: its points or its tape dimensions. What the card does not ask stays as it is on file. */
import type { Suspension } from '../../../core/contract.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import { tapeLayouts } from '../../../core/suspension/tape/catalogue.ts';
import type { TapeDimension } from '../../../core/suspension/tape/tape.ts';
import { angleOf, exactAngle, lengthOf, lengthText, type Texts, unlessTyped } from './numbers.ts';

export const PLACES = [0, 1, 2] as const;
export const coordinate = (path: string, point: string, i: number): string => `${path}.points.${point}[${i}]`;

/** What a tape can take of a kind; nothing where it is given by points alone. */
export const dimensionsOf = (kind: string): readonly TapeDimension[] => tapeLayouts[kind]?.dimensions ?? [];

/** By tape where the kind has one, unless points were asked for. */
export const isByTape = (texts: Texts, path: string): boolean =>
  dimensionsOf(texts[`${path}.kind`] ?? '').length > 0 && texts[`${path}.way`] !== 'points';

export function suspensionTexts({ kind, camber, toe, tolerance, points, tape }: Suspension, path: string): Texts {
  const texts: Record<string, string> = {
    [`${path}.kind`]: kind,
    [`${path}.way`]: tape ? 'tape' : 'points',
    [`${path}.camber`]: exactAngle(camber),
    [`${path}.toe`]: exactAngle(toe),
    [`${path}.tolerance`]: tolerance === undefined ? '' : lengthText(tolerance),
  };
  for (const [name, point] of Object.entries(points)) {
    for (const i of PLACES) texts[coordinate(path, name, i)] = lengthText(point[i]);
  }
  if (tape?.tie !== undefined) texts[`${path}.tape.tie`] = String(tape.tie);
  for (const dimension of dimensionsOf(kind)) {
    const entry = tape?.[dimension.name];
    if (entry !== undefined) texts[`${path}.tape.${dimension.name}`] = entryText(dimension, entry);
  }
  return texts;
}

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
  const { points, camber, toe, tolerance, tape, ...rest } = before ?? {};
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
    const point = PLACES.map((i) =>
      unlessTyped(texts[coordinate(path, name, i)], points?.[name]?.[i], lengthText, lengthOf),
    );
    return [name, point.every((x) => x === undefined) ? undefined : point];
  });
  return {
    ...common,
    points: Object.fromEntries(placed.filter(([, point]) => point !== undefined)),
    camber: angle('camber', camber),
    toe: angle('toe', toe),
  };
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
  return { ...(tie ? { tie } : {}), ...Object.fromEntries(given.filter(([, value]) => value !== undefined)) };
}

function sameEntries(now: Tape, before: Tape | undefined): boolean {
  const { kind: _, ...old } = before ?? {};
  return Object.keys({ ...now, ...old }).every((key) => now[key] === old[key]);
}
