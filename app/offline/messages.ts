/** What the page and the service worker say to each other: the whole vocabulary. */

/** Page → worker, sent by workbox-window's `messageSkipWaiting`: the update is accepted; take over now. */
export const SKIP_WAITING = 'SKIP_WAITING';

export interface PageMessage {
  readonly type: typeof SKIP_WAITING;
}
