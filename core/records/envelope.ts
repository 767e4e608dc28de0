/** The backup of everything: one versioned envelope with every store, how many records, and a checksum over them. */
import * as v from 'valibot';
import { ruleText } from '../adjuster/rule-text.ts';
import { byName, open, shape } from '../check/object.ts';
import { check } from '../check/refuse.ts';
import { InputError } from '../input-error.ts';
import { canonical } from './canonical.ts';
import { checkVersion, migrate, VERSION } from './migrations.ts';
import { STORE_NAMES, type StoreName, type Stores } from './stored.ts';
import { readStores, type SetAside } from './stored-schema.ts';

/** SHA-256 of a text in lower-case hexadecimal. Passed in: the ES library has none. */
export type Digest = (text: string) => Promise<string>;

export interface Backup {
  readonly format: 'cornerwright-backup';
  readonly version: number;
  /** When, ISO 8601. */
  readonly made: string;
  readonly counts: Readonly<Record<StoreName, number>>;
  /** Digest of the stores in canonical form. */
  readonly checksum: string;
  readonly stores: Stores;
}

/** @param made when, ISO 8601 */
export async function makeBackup(stores: Stores, made: string, digest: Digest): Promise<Backup> {
  return {
    format: 'cornerwright-backup',
    version: VERSION,
    made,
    counts: countsOf(stores),
    checksum: await digest(canonical(stores)),
    stores,
  };
}

/** What is to be used of a backup, and what of it is not. */
export interface CheckedBackup {
  /** When it was made, ISO 8601. */
  readonly made: string;
  readonly records: Stores;
  readonly aside: readonly SetAside[];
}

const BACKUP = open(
  {
    format: v.literal('cornerwright-backup', ruleText({ is: 'exactly', value: 'cornerwright-backup' })),
    version: v.unknown(),
    made: v.string(ruleText({ is: 'time' })),
    counts: byName(v.number(ruleText({ is: 'a-count' })), { is: 'counts' }),
    checksum: v.string(ruleText({ is: 'a-checksum' })),
    stores: byName(v.unknown(), { is: 'stores' }),
  },
  shape('format version made counts checksum stores', { as: 'backup' }),
);

/**
 * What a backup holds, checked in this order: shape and version, checksum, migration, every record, counts. A record that
 * is not as it should be is set aside, and the rest is to be used.
 * @throws InputError, and then nothing of it is to be used
 */
export async function checkBackup(value: unknown, digest: Digest): Promise<CheckedBackup> {
  const { version, made, counts, checksum, stores } = check(BACKUP, value, 'backup');
  checkVersion(version);
  const own = await digest(canonical(stores));
  if (own !== checksum) throw new InputError('checksum', checksum, { is: 'checksum', own });
  const { version: _, ...migrated } = migrate('stores', { ...stores, version });
  const { stores: records, aside } = readStores(migrated);
  const found = countsOf(records);
  for (const name of STORE_NAMES) {
    const there = found[name] + aside.filter(({ store }) => store === name).length;
    if (counts[name] !== there) throw new InputError(`counts.${name}`, counts[name], { is: 'count', there });
  }
  return { made, records, aside };
}

const countsOf = (stores: Stores): Record<StoreName, number> =>
  Object.fromEntries(STORE_NAMES.map((name) => [name, stores[name].length])) as Record<StoreName, number>;
