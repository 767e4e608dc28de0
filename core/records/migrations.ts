/**
 * How data of an earlier version becomes data of the present one. Shared by car files, backups and the database: a
 * step is pure, numbered, and never edited once it has shipped. Version 1 is the first, so there is no step yet.
 */
import { InputError } from '../input-error.ts';
import type { Rule } from '../rule.ts';

export const VERSION = 1;

export type Migrated = 'car-file' | 'stores';
const OBJECT: Rule = { is: 'object', as: 'object', fields: ['format', 'version'], open: true };
type Data = Readonly<Record<string, unknown>>;

/** From version `to − 1` to version `to`, for each shape that the version changed. */
export interface Migration extends Readonly<Partial<Record<Migrated, (data: Data) => Data>>> {
  readonly to: number;
}
/** Contiguous: 2, 3, … `VERSION`. */
export const MIGRATIONS: readonly Migration[] = [];

/** Refuses a version that is not a known one; a newer one is refused with nothing touched. */
export function checkVersion(version: unknown, newest: number = VERSION): number {
  if (Number.isInteger(version) && (version as number) >= 1 && (version as number) <= newest) return version as number;
  const newer = typeof version === 'number' && version > newest;
  throw new InputError('version', version, { is: 'version', newest, newer });
}

/**
 * Data brought to the present version, its `version` field with it.
 * @throws InputError when it is not an object, or its `version` is not one that we know
 */
export function migrate(
  shape: Migrated,
  value: unknown,
  steps: readonly Migration[] = MIGRATIONS,
  newest: number = VERSION,
): Data {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) throw new InputError('file', value, OBJECT);
  const data = value as Data;
  const from = checkVersion(data.version, newest);
  const due = steps.filter(({ to }) => to > from);
  const moved = due.reduce((now, step) => step[shape]?.(now) ?? now, data);
  return { ...moved, version: newest };
}
