/** Tells the app's other tabs that records have changed, so that none of them goes on from an old picture. */
export interface Tabs {
  announce(): void;
  close(): void;
}

/** @param changed called when another tab has written to the database of this name. */
export function joinTabs(name: string, changed: () => void): Tabs {
  if (typeof BroadcastChannel === 'undefined') return { announce: () => undefined, close: () => undefined };
  const channel = new BroadcastChannel(`${name}-changes`);
  channel.onmessage = changed;
  return { announce: () => channel.postMessage('changed'), close: () => channel.close() };
}
