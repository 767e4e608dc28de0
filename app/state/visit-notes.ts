/** What a sheet names of a visit beside its figures: the odometer and the technician. Marks of it, as its checks are. */
import type { VisitRecord } from '../../core/records/stored.ts';
import { marked } from '../../core/records/visit-facts.ts';
import { byId, now } from '../store/index.ts';
import { distance, setTechnician, technician } from './preferences.ts';
import { keep, records } from './records.ts';

export interface Odometer {
  /** As it was typed. */
  readonly text: string;
  /** What the dash counts: the shop's usual, or what it was when this was typed. */
  readonly unit: 'km' | 'mi';
}

const ODOMETER = 'odometer';
const TECHNICIAN = 'technician';
const LOOK = 'look';

export const technicianOf = ({ checks }: VisitRecord): string => checks?.[TECHNICIAN] ?? '';

export function odometerOf({ checks }: VisitRecord): Odometer {
  const [, text = '', unit = distance.value] = /^(.*) (km|mi)$/.exec(checks?.[ODOMETER] ?? '') ?? [];
  return { text, unit: unit === 'mi' ? 'mi' : 'km' };
}

/** Whole km or miles: `84210`, `84 210`, `84,210`, the last tenth of a dash left off; nothing where it is no such number. */
export function distanceIn(text: string): number | undefined {
  const [, whole] = /^\s*(\d{1,3}(?:[ .,']\d{3})+|\d{1,7})(?:[.,]\d)?\s*$/.exec(text) ?? [];
  return whole === undefined ? undefined : Number(whole.replace(/\D/g, ''));
}

/** `84 210 km`; as it was typed where it is no number. Nothing where none was typed. */
export function odometerText(visit: VisitRecord): string {
  const { text, unit } = odometerOf(visit);
  const whole = distanceIn(text);
  if (!text.trim()) return '';
  return `${whole === undefined ? text : String(whole).replace(/\B(?=(\d{3})+$)/g, ' ')} ${unit}`;
}

export function setOdometer(visit: VisitRecord, text: string): void {
  const { unit } = odometerOf(visit);
  note(visit, ODOMETER, text === '' ? '' : `${text} ${unit}`);
}

/** The next visit on this phone begins with the same. */
export function setTechnicianOf(visit: VisitRecord, name: string): void {
  note(visit, TECHNICIAN, name);
  setTechnician(name);
}

/** Where the bench said to look for a bent part: for whoever works on the car, on no sheet. */
export const lookOf = ({ checks }: VisitRecord): string => checks?.[LOOK] ?? '';
export const noteLook = (visit: VisitRecord, text: string): void => note(visit, LOOK, text);

/** What a new visit has from the start. */
export const begunBy = (visit: VisitRecord): VisitRecord =>
  technician.value ? marked(visit, { checks: { [TECHNICIAN]: technician.value } }, visit.opened) : visit;

function note({ id }: VisitRecord, name: string, text: string): void {
  const visit = byId(records.value.visits, id);
  if (visit) keep(['visits', marked(visit, { checks: { [name]: text } }, now())]);
}
