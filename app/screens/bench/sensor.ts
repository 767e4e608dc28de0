/** The phone's own inclinometer, as long as a screen listens to it. */
import { signal } from '@preact/signals';
import type { Orientation } from '../../../core/measure/phone.ts';

export type SensorState = 'off' | 'waiting' | 'on' | 'refused' | 'none';

export const sensorState = signal<SensorState>('off');
/** What it shows now. */
export const orientation = signal<Orientation | undefined>(undefined);

/** ms after which a phone that has said nothing has no sensor. */
const PATIENCE = 2_000;

type Asking = { readonly requestPermission?: () => Promise<'granted' | 'denied'> };

let timer: ReturnType<typeof setTimeout> | undefined;
const hear = (event: DeviceOrientationEvent): void => {
  // A desktop answers once, with nothing in it.
  if (event.beta === null || event.gamma === null) return;
  clearTimeout(timer);
  orientation.value = { beta: event.beta, gamma: event.gamma };
  sensorState.value = 'on';
};

/** Has to be called from a touch: some phones ask their owner then. */
export async function startSensor(): Promise<void> {
  if (typeof DeviceOrientationEvent === 'undefined') {
    sensorState.value = 'none';
    return;
  }
  sensorState.value = 'waiting';
  const asked = await (DeviceOrientationEvent as unknown as Asking)
    .requestPermission?.()
    .catch(() => 'denied' as const);
  if (asked === 'denied') {
    sensorState.value = 'refused';
    return;
  }
  addEventListener('deviceorientation', hear);
  clearTimeout(timer);
  timer = setTimeout(() => {
    if (sensorState.value === 'waiting') sensorState.value = 'none';
  }, PATIENCE);
}

export function stopSensor(): void {
  removeEventListener('deviceorientation', hear);
  clearTimeout(timer);
  sensorState.value = 'off';
  orientation.value = undefined;
}
