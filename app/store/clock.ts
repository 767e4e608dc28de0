/** The one place where the app takes a new id and reads the clock; everything else is handed both. */

/** A random UUID: ids made on different phones never meet, so files merge by union. */
export function newId(): string {
  return crypto.randomUUID();
}

/** The present, ISO 8601 in UTC. */
export function now(): string {
  return new Date().toISOString();
}
