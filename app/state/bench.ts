/** The bench's own figures: what was last typed at each tool, how well each instrument repeats, and where a result goes. */
import { computed } from '@preact/signals';
import type { Measuring } from '../../core/contract.ts';
import { type Instrument, type Scatter, USUAL_SCATTER } from '../../core/measure/instruments.ts';
import { BENCH } from '../../core/records/preferences.ts';
import { exactAngle } from '../../core/units/exact-angle.ts';
import { formatLength } from '../../core/units/length.ts';
import { toeToLength } from '../../core/units/toe.ts';
import { byId, now } from '../store/index.ts';
import { carsInOrder } from './car-list.ts';
import { type Field, isToe, unitsOf, unitTexts } from './fields.ts';
import { isGone } from './gone.ts';
import { measureNow } from './measure-now.ts';
import { methodTexts } from './methods.ts';
import { type Units, units } from './preferences.ts';
import { draft, dropDraft, keep, keepDraft, type Records, records } from './records.ts';
import { ENTRY_STEP, entryDraft, stageOf } from './stage.ts';
import { END } from './typing.ts';
import { unitsFor } from './units.ts';
import { changeForm, entryFields } from './visit-actions.ts';
import { openVisit, type VisitView, visitView } from './visits.ts';

const benchDraft = (tool: string): string => `bench:${tool}`;
/** Among the texts: the visit that they were typed for. */
const FOR = '@for';
/** And the unit of lengths that they were typed in. */
const LENGTH = '@length';

/** What was last typed at a tool. */
export const benchTexts = (tool: string): Readonly<Record<string, string>> => draft(benchDraft(tool))?.texts ?? {};

/** @param visit that the tool was opened for, '' for none */
export function typeAtBench(tool: string, change: Readonly<Record<string, string>>, visit: string): void {
  const { [LENGTH]: length = units.value.length, ...texts } = benchTexts(tool);
  keepDraft(benchDraft(tool), { ...texts, [LENGTH]: length, [FOR]: visit, ...change }, undefined);
}

/** The unit of lengths that a tool's texts are in: that of when they were typed. */
export const benchLength = (tool: string): Units['length'] =>
  benchTexts(tool)[LENGTH] === 'inch' ? 'inch' : benchTexts(tool)[LENGTH] === 'mm' ? 'mm' : units.value.length;

export const clearBench = (tool: string): void => dropDraft(benchDraft(tool));

/** The car that a tool's figures were typed for, where that is not the visit that it is open for now. */
export function typedForAnother(tool: string, visit: string): string | undefined {
  const other = benchTexts(tool)[FOR];
  if (other === undefined || other === visit) return undefined;
  return visitView(records.value, other)?.car.car.label ?? 'another job';
}

/** One standard deviation of each instrument: as it was tried at the bench, else a usual one. */
export const scatter = computed<Scatter>(() => {
  const value = byId(records.value.preferences, 'bench')?.value;
  const tried = typeof value === 'object' && value !== null ? (value as Readonly<Record<string, unknown>>) : {};
  const own = Object.entries(BENCH).flatMap(([name, { most }]) => {
    const sd = tried[name];
    return typeof sd === 'number' && sd >= 0 && sd <= most ? [[name, sd]] : [];
  });
  return { ...USUAL_SCATTER, ...Object.fromEntries(own) };
});

export function setScatter(instrument: Instrument, sd: number): void {
  const before = byId(records.value.preferences, 'bench')?.value;
  keep(['preferences', { id: 'bench', value: { ...(before as object), [instrument]: sd }, changed: now() }]);
}

/** One figure for a reading, in degrees or mm. */
export interface Handed extends Partial<Measuring> {
  readonly where: Field['where'];
  readonly angle: Field['angle'];
  readonly value: number;
}

/**
 * Visits that a result can go to: open, and not about to be signed off; the newest of each car on the rack, the newest first.
 * @param only the visit that the tool was opened for, '' for none
 */
export function visitsToHandTo(only: string): readonly VisitView[] {
  const all = records.value;
  const open = only === '' ? onTheRack(all) : [visitView(all, only)];
  return open
    .flatMap((view) => view ?? [])
    .filter(({ visit, car }) => !visit.closed && !isGone(all, visit) && !isGone(all, car))
    .filter((view) => stageOf(view) !== 'sign-off')
    .sort((a, b) => (a.visit.opened < b.visit.opened ? 1 : -1))
    .slice(0, MOST_OFFERED);
}
const MOST_OFFERED = 3;

function onTheRack(all: Records): readonly (VisitView | undefined)[] {
  const cars = carsInOrder(all);
  // Those on the rack come first.
  const until = cars.findIndex(({ id }) => !openVisit(all, id));
  return cars.slice(0, until < 0 ? cars.length : until).map(({ id }) => visitView(all, openVisit(all, id)?.id ?? ''));
}

/**
 * Puts figures into the entry of a visit, each with how it was measured; where the moves are on, a re-measure is begun. The
 * form asks for what came. @returns what this car's form has no place for
 */
export function handOver(view: VisitView, results: readonly Handed[]): readonly Handed[] {
  const stage = stageOf(view);
  if (stage === 'moves' || stage === 'compare') measureNow(view);
  const of = (...angles: readonly Handed['angle'][]): boolean => results.some(({ angle }) => angles.includes(angle));
  changeForm(view, {
    ...(of('toe') && { total: false }),
    ...(of('totalToe') && { total: true }),
    // A string knows of no thrust line.
    ...(results.some(({ by }) => by === 'string') && { reference: 'centreline' }),
    ...(of('sai') && { sai: true }),
    ...(of('pinionAngle', 'lateral') && { axle: true }),
    ...(of('rideHeight') && { heights: true }),
  });
  const fields = entryFields(view);
  const id = entryDraft(view.visit.id);
  const { [ENTRY_STEP]: _, ...texts } = draft(id)?.texts ?? {};
  const own = unitsOf(texts, unitsFor(view.car.car));
  const placed = results.flatMap((one) => {
    const field = fields.find(({ where, angle }) => where === one.where && angle === one.angle);
    return field ? [{ field, one }] : [];
  });
  const put = placed.map(({ field, one }) => {
    const text = textOf(one, own, view.car.car.wheel.rimDiameter);
    const { by, sd } = one;
    return { [field.id]: text, ...(by && sd !== undefined && methodTexts(field.id, text, { by, sd })) };
  });
  const next: Record<string, string> = Object.assign({ ...texts, ...unitTexts(own) }, ...put);
  keepDraft(id, next, fields.find((field) => !next[field.id])?.id ?? END);
  return results.filter((one) => !placed.some((there) => there.one === one));
}

/** As it would be typed, with a digit more than a rack shows, so that nothing of it is lost. */
function textOf({ angle, value }: Handed, own: Units, rimDiameter: number | undefined): string {
  const { decimal } = own;
  if (angle === 'lateral' || angle === 'rideHeight') return lengthIn(value, own.length, decimal);
  if (!isToe(angle) || own.toe === 'angle' || rimDiameter === undefined) {
    return exactAngle(Number(value.toFixed(2)), { angle: own.angle, decimal });
  }
  const wheels = angle === 'totalToe' ? 2 : 1;
  return lengthIn(toeToLength(value / wheels, rimDiameter) * wheels, own.toe, decimal);
}

const lengthIn = (mm: number, unit: 'mm' | 'inch', decimal: '.' | ','): string =>
  formatLength(mm, { unit, bare: true, decimal, digits: unit === 'mm' ? 1 : 3 });
