/**
 * A catalogue under its own names and no others: a name comes from a file, so that nothing is to be found under one that any
 * object has, such as `constructor`.
 */
export const ownNames = <T>(entries: Readonly<Record<string, T>>): Readonly<Record<string, T>> =>
  Object.assign(Object.create(null) as Record<string, T>, entries);

/** A catalogue of kinds by their names. */
export const byKind = <T extends { readonly kind: string }>(kinds: readonly T[]): Readonly<Record<string, T>> =>
  ownNames(Object.fromEntries(kinds.map((kind) => [kind.kind, kind])));
