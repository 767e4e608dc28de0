/** The one place where the app takes a new id and reads the clock; everything else is handed both. */

/** A random UUID: ids made on different phones never meet, so files merge by union. */
export function newId(): string {
  return crypto.randomUUID();
}

let last = 0;

/**
 * The present, ISO 8601 in UTC. Each is later than the one before, as the order of records hangs on it; a clock that was
 * set back goes on from there.
 */
export function now(): string {
  const time = Date.now();
  const justNow = time <= last && time > last - 1000;
  last = justNow ? last + 1 : time;
  return new Date(last).toISOString();
}
