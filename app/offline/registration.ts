/**
 * Installs the service worker and tells the screens how it stands: whether the app would open with the
 * network off, and whether a newer version waits to be accepted. Nothing reloads without being asked.
 */
import { signal } from '@preact/signals';
import type { Workbox } from 'workbox-window';

/** `unsupported`: no service worker here (an insecure address, or switched off), so no offline start. */
export type OfflineState = 'starting' | 'ready' | 'unsupported' | 'failed';

export const offlineState = signal<OfflineState>('starting');
/** True when a newer version waits for `acceptUpdate`, or has already taken over through another tab. */
export const updateWaiting = signal(false);

let workbox: Workbox | undefined;
let registration: ServiceWorkerRegistration | undefined;
let accepted = false;

/** Registers `sw.js` beside the page. The dev server has none: there the state is `unsupported`. */
export async function registerOffline(): Promise<void> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) {
    offlineState.value = 'unsupported';
    return;
  }
  let controlled = navigator.serviceWorker.controller !== null;
  navigator.serviceWorker.addEventListener('controllerchange', () => {
    if (accepted) reloadOnce();
    // Another tab let the new version in: this page is old now, but it is not ours to reload unasked.
    else if (controlled) updateWaiting.value = true;
    controlled = true;
  });
  try {
    const { Workbox } = await import('workbox-window');
    workbox = new Workbox(new URL('sw.js', document.baseURI).href);
    workbox.addEventListener('waiting', () => {
      updateWaiting.value = true;
    });
    registration = await workbox.register();
    await navigator.serviceWorker.ready;
    offlineState.value = 'ready';
  } catch {
    offlineState.value = 'failed';
  }
  document.addEventListener('visibilitychange', checkForUpdate);
}

/** Lets the newer version take over; the page reloads once when it has. Flush what is unsaved first. */
export function acceptUpdate(): void {
  accepted = true;
  if (registration?.waiting) workbox?.messageSkipWaiting();
  else reloadOnce();
}

function reloadOnce(): void {
  accepted = false;
  location.reload();
}

/** An installed app is rarely loaded afresh, so look for a newer version when it comes back to the front. */
function checkForUpdate(): void {
  if (document.visibilityState === 'visible') void workbox?.update().catch(() => undefined);
}
