/** First load. What the technician chose once: units, gauge repeatability, theme. Kept as preference records. */
import { computed, effect } from '@preact/signals';
import { type Gauge, type LiveAngle, type ShimCount, WHEEL_ANGLES } from '../../core/contract.ts';
import {
  DECIMALS,
  DECIMALS_OF,
  isOneOf,
  RACK_ORDERS,
  THEMES,
  TOE_REFERENCES,
  UNIT_CHOICES,
} from '../../core/records/preferences.ts';
import { now } from '../store/index.ts';
import type { Form } from './form.ts';
import { keep, records } from './records.ts';

type Choice<K extends keyof typeof UNIT_CHOICES> = (typeof UNIT_CHOICES)[K][number];

export interface Units {
  readonly angle: Choice<'angle'>;
  /** How front and rear toe are read on the rack: an angle, or a length at the rim. */
  readonly toe: Choice<'toe'>;
  /** Of toe in inches. */
  readonly toeParts: Choice<'toeParts'>;
  readonly length: Choice<'length'>;
  /** The thrust line to the right is shown as + by some makers and as − by others. */
  readonly thrust: Choice<'thrust'>;
  readonly decimal: Choice<'decimal'>;
  readonly distance?: Choice<'distance'>;
  /** Whether the rack gives SAI as well. */
  readonly sai: boolean;
  /** Whether ride heights are taken as well, before the angles. */
  readonly heights?: boolean;
}
export type Theme = (typeof THEMES)[number];

const UNITS: Units = {
  angle: 'degrees',
  toe: 'angle',
  toeParts: 'decimal',
  length: 'mm',
  thrust: 'right-plus',
  decimal: '.',
  sai: false,
};
export const units = computed<Units>(() => {
  const value = stored('units');
  const chosen = Object.entries(UNIT_CHOICES).filter(([name, of]) => isOneOf(of, value[name]));
  const known = Object.fromEntries(chosen.map(([name]) => [name, value[name]]));
  return { ...UNITS, ...known, sai: value.sai === true, ...(value.heights === true && { heights: true }) };
});
/** What odometers count: as it was chosen, else what goes with the shop's lengths. */
export const distance = computed(() => units.value.distance ?? (units.value.length === 'inch' ? 'mi' : 'km'));
/** How the rack shows its figures. */
export interface Rack {
  readonly order: (typeof RACK_ORDERS)[number];
  /** Decimals, by what a figure is. */
  readonly decimals: Readonly<Record<(typeof DECIMALS_OF)[number], (typeof DECIMALS)[number]>>;
  /** Nobody has said how many decimals yet. */
  readonly assumed: boolean;
}
const USUAL_DECIMALS: Rack['decimals'] = { angle: 2, toe: 2, mm: 1, inch: 2 };
export const rack = computed<Rack>(() => {
  const value = stored('rack');
  const said = DECIMALS_OF.filter((of) => isOneOf(DECIMALS, value[of]));
  return {
    order: isOneOf(RACK_ORDERS, value.order) ? value.order : 'across',
    decimals: { ...USUAL_DECIMALS, ...Object.fromEntries(said.map((of) => [of, value[of]])) },
    assumed: said.length === 0,
  };
});
/** The angles that the rack shows while something is turned. */
export interface Live {
  readonly angles: readonly LiveAngle[];
  /** Nobody has said so yet: it is as most racks are. */
  readonly assumed: boolean;
}
const USUALLY_LIVE: readonly LiveAngle[] = ['camber', 'toe'];
export const live = computed<Live>(() => {
  const said = onFile('live');
  const angles = Array.isArray(said) ? WHEEL_ANGLES.filter((angle) => said.includes(angle)) : USUALLY_LIVE;
  return { angles, assumed: !Array.isArray(said) };
});
/** One standard deviation of the rack, as the user gave it; without it the core takes a usual one. */
export const gauge = computed<Gauge | undefined>(() => {
  const { camber, caster, toe } = stored('gauge');
  return isDeviation(camber) && isDeviation(caster) && isDeviation(toe) ? { camber, caster, toe } : undefined;
});
const isDeviation = (value: unknown): value is number => typeof value === 'number' && value >= 0 && value <= 5;
/** The shims in the shop's drawer; their counts are kept while nothing is counted. */
export interface Drawer {
  readonly counted: boolean;
  readonly shims: readonly ShimCount[];
}
export const drawer = computed<Drawer>(() => {
  const { counted, shims } = stored('drawer');
  return { counted: counted === true, shims: Array.isArray(shims) ? shims.filter(isShimCount) : [] };
});
function isShimCount(value: unknown): value is ShimCount {
  const { size, count } = (value ?? {}) as Readonly<Record<string, unknown>>;
  return typeof size === 'number' && size > 0 && size <= 50 && Number.isInteger(count) && (count as number) >= 0;
}
export const theme = computed<Theme>(() => {
  const value = onFile('theme');
  return isOneOf(THEMES, value) ? value : 'system';
});

/** As the sheet names the shop; empty until it is typed. */
export const shopName = computed(() => textIn(stored('shop').name));
/** Who worked last on this phone. */
export const technician = computed(() => textIn(onFile('technician')));
const textIn = (value: unknown): string => (typeof value === 'string' ? value : '');

/** When it was set goes with it: of two phones' settings the newer holds. */
function prefer(id: string, value: unknown): void {
  keep(['preferences', { id, value, changed: now() }]);
}

export function setUnits(change: Partial<Units>): void {
  prefer('units', { ...units.value, ...change });
}
export function setRack({ order = rack.value.order, decimals }: Partial<Pick<Rack, 'order' | 'decimals'>>): void {
  prefer('rack', { ...stored('rack'), order, ...decimals });
}
export function setLive(angles: readonly LiveAngle[]): void {
  prefer('live', angles);
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
export function setShop(name: string): void {
  prefer('shop', { name });
}
export function setTechnician(name: string): void {
  prefer('technician', name);
}

/** What a new reading of this car asks; toe as it was last taken on it. */
export function usualForm(carId: string): Form {
  const total = onFile(`total-toe:${carId}`) === true;
  const { sai, heights } = units.value;
  return { sai, total, ...(heights && { heights }), reference: usualReference(carId) };
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
  const value = onFile(id);
  return isOneOf(TOE_REFERENCES, value) ? value : undefined;
}

/** Keeps the page in the theme that was chosen. */
export function dressPage(): void {
  effect(() => {
    if (theme.value === 'system') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = theme.value;
  });
}

/** As it is on file, whatever that is: one that is not what it should be counts as not set. */
const onFile = (id: string): unknown => records.value.preferences.find((one) => one.id === id)?.value;

/** A stored preference as an object, or nothing if it is not one. */
function stored(id: string): Readonly<Record<string, unknown>> {
  const value = onFile(id);
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
}
