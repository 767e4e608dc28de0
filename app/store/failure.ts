/** Why the records could not be read or written, in words for the person who holds the phone. */
export class StoreError extends Error {
  override readonly name = 'StoreError';
}

const WORDS: Readonly<Record<string, string>> = {
  QuotaExceededError: 'There is no room left on this phone. Free some space; what you typed is kept on the screen.',
  VersionError: 'These records were written by a newer Cornerwright. Update this one to open them.',
};

/** Errors that another try on a fresh connection cannot mend. */
const FINAL = new Set(['QuotaExceededError', 'VersionError', 'ConstraintError', 'DataError', 'DataCloneError']);

export function nameOf(error: unknown): string {
  return error instanceof Error || error instanceof DOMException ? error.name : 'Error';
}

/** True where the connection may have died under the work, so that it is worth opening it again. */
export function mayBeDeadConnection(error: unknown): boolean {
  return !(error instanceof StoreError) && !FINAL.has(nameOf(error));
}

/** Any failure as a `StoreError` that can be shown. */
export function explain(error: unknown): StoreError {
  if (error instanceof StoreError) return error;
  const name = nameOf(error);
  const detail = error instanceof Error && error.message ? `${name}: ${error.message}` : name;
  return new StoreError(WORDS[name] ?? `The phone could not reach its records (${detail}).`, { cause: error });
}
