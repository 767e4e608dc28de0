/** Another name or plate for a car, typed on its own page; as all that is typed it is kept as it is typed. */
import type { CarRecord } from '../../core/records/stored.ts';
import { edited } from '../../core/records/versions.ts';
import { byId, now } from '../store/index.ts';
import { draft, dropDraft, keep, keepDraft, records } from './records.ts';

export interface Names {
  readonly label: string;
  readonly plate: string;
}

export const nameDraft = (carId: string): string => `name:${carId}`;

export function beginRename({ id, car }: CarRecord): void {
  typeName(id, { label: car.label, plate: car.plate ?? '' });
}

export const typeName = (carId: string, names: Names): void => keepDraft(nameDraft(carId), { ...names }, undefined);

export function namesTyped(carId: string): Names {
  const { label = '', plate = '' } = draft(nameDraft(carId))?.texts ?? {};
  return { label, plate };
}

export const leaveName = (carId: string): void => dropDraft(nameDraft(carId));

/** @returns false, and nothing is changed, where there is no name */
export function rename(carId: string): boolean {
  const record = byId(records.value.cars, carId);
  const [label, plate] = [namesTyped(carId).label.trim(), namesTyped(carId).plate.trim()];
  if (!record || !label) return false;
  const { plate: _, ...car } = record.car;
  keep(['cars', edited(record, { ...record, car: { ...car, label, ...(plate && { plate }) } }, now())]);
  renameBuildCard(carId, label, plate);
  leaveName(carId);
  return true;
}

/** A build card that is half changed would put the old name back. */
function renameBuildCard(carId: string, label: string, plate: string): void {
  const id = `car:${carId}`;
  const card = draft(id);
  if (card) keepDraft(id, { ...card.texts, 'car.label': label, 'car.plate': plate }, card.cursor);
}
