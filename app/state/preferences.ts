/** First load. What the technician chose once: units, gauge repeatability, theme. Kept as preference records. */
import { computed, effect } from '@preact/signals';
import type { Gauge, ShimCount } from '../../core/contract.ts';
import { now } from '../store/index.ts';
import type { Form } from './form.ts';
import { keep, records } from './records.ts';

export interface Units {
  readonly angle: 'degrees' | 'degrees-minutes';
  /** How front and rear toe are read on the rack: an angle, or a length at the rim. */
  readonly toe: 'angle' | 'mm' | 'inch';
  readonly length: 'mm' | 'inch';
  /** The thrust line to the right is shown as + by some makers and as − by others. */
  readonly thrust: 'right-plus' | 'right-minus';
  readonly decimal: '.' | ',';
  /** Whether the rack gives SAI as well. */
  readonly sai: boolean;
}
export type Theme = 'system' | 'light' | 'dark' | 'high-contrast';

const UNITS: Units = {
  angle: 'degrees',
  toe: 'angle',
  length: 'mm',
  thrust: 'right-plus',
  decimal: '.',
  sai: false,
};
export const units = computed<Units>(() => ({ ...UNITS, ...stored('units') }));
/** One standard deviation of the rack, as the user gave it; without it the core takes a usual one. */
export const gauge = computed<Gauge | undefined>(() => {
  const value = stored('gauge');
  return 'camber' in value && 'caster' in value && 'toe' in value ? (value as Gauge) : undefined;
});
/** The shims in the shop's drawer; their counts are kept while nothing is counted. */
export interface Drawer {
  readonly counted: boolean;
  readonly shims: readonly ShimCount[];
}
export const drawer = computed<Drawer>(() => {
  const value = stored('drawer');
  return 'shims' in value && Array.isArray(value.shims) ? (value as Drawer) : { counted: false, shims: [] };
});
export const theme = computed<Theme>(() => {
  const value = records.value.preferences.find((one) => one.id === 'theme')?.value;
  return value === 'light' || value === 'dark' || value === 'high-contrast' ? value : 'system';
});

/** When it was set goes with it: of two phones' settings the newer holds. */
function prefer(id: string, value: unknown): void {
  keep(['preferences', { id, value, changed: now() }]);
}

export function setUnits(change: Partial<Units>): void {
  prefer('units', { ...units.value, ...change });
}
export function setGauge(value: Gauge): void {
  prefer('gauge', value);
}
export function setDrawer(change: Partial<Drawer>): void {
  prefer('drawer', { ...drawer.value, ...change });
}
export function setTheme(value: Theme): void {
  prefer('theme', value);
}

/** What a new reading of this car asks; toe as it was last taken on it. */
export function usualForm(carId: string): Form {
  const total = records.value.preferences.find((one) => one.id === `total-toe:${carId}`)?.value === true;
  return { sai: units.value.sai, total, reference: usualReference(carId) };
}
export function setTotalToe(carId: string, value: boolean): void {
  prefer(`total-toe:${carId}`, value);
}

/** What the shop's rack reads front toe against; nothing until somebody has said so. */
export const toeReference = computed(() => referenceAt('toe-reference'));
export function setToeReference(value: Form['reference']): void {
  prefer('toe-reference', value);
}

/** Most four-wheel racks read it against the thrust line; an earlier version asked for it car by car. */
const usualReference = (carId: string): Form['reference'] =>
  toeReference.value ?? referenceAt(`toe-reference:${carId}`) ?? 'thrust-line';

function referenceAt(id: string): Form['reference'] | undefined {
  const value = records.value.preferences.find((one) => one.id === id)?.value;
  return value === 'thrust-line' || value === 'centreline' ? value : undefined;
}

/** Keeps the page in the theme that was chosen. */
export function dressPage(): void {
  effect(() => {
    if (theme.value === 'system') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = theme.value;
  });
}

/** A stored preference as an object, or nothing if it is not one. */
function stored(id: string): object {
  const value = records.value.preferences.find((one) => one.id === id)?.value;
  return typeof value === 'object' && value !== null ? value : {};
}
