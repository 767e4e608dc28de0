/** The mutants: numbered, and the same for the same seed and number. */
import { PIECE } from '../../../core/records/backup-lines.ts';
import { canonical } from '../../../core/records/canonical.ts';
import { makeBackup } from '../../../core/records/envelope.ts';
import { STORE_NAMES, type Stores } from '../../../core/records/stored.ts';
import { backupLines } from '../../tools/backup-text.ts';
import { type Dice, diceOf } from './bad.ts';
import { carFiles, recordSets } from './bases.ts';
import { damaged } from './bytes.ts';
import { changed, render } from './data.ts';

export interface Mutant {
  readonly kind: 'car' | 'backup';
  readonly text: string;
  /** What was done to which. */
  readonly says: string;
}

const MADE = '2026-03-01T18:00:00.000Z';

export async function sha256(text: string): Promise<string> {
  const bytes = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
  return Array.from(new Uint8Array(bytes), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** A backup of these records, sealed as if the app had written them: what is wrong is for the schemas to find. */
async function sealed(data: unknown, dice: Dice): Promise<string> {
  const text = render(data);
  const stores = JSON.parse(text) as Stores;
  // The app's own writer, where it can write such records at all; it knows no number that no program writes.
  if (dice.chance(0.5) && isStores(stores)) return `${(await backupLines(stores, MADE, PIECE.records)).join('\n')}\n`;
  const lists = STORE_NAMES.map((name) => [name, stores?.[name]] as const);
  const countable = Object.fromEntries(lists.map(([name, list]) => [name, Array.isArray(list) ? list : []]));
  const { counts, ...rest } = await makeBackup(countable as unknown as Stores, MADE, sha256);
  const head = { ...rest, counts, checksum: await sha256(canonical(stores)), stores: 0 };
  const whole = dice.chance(0.05) ? changed(head, dice).data : head;
  return render(whole).replace('"stores":0', () => `"stores":${text}`);
}

const isStores = (stores: Stores): boolean =>
  typeof stores === 'object' && stores !== null && STORE_NAMES.every((name) => Array.isArray(stores[name]));

export async function mutantOf(seed: string, n: number): Promise<Mutant> {
  const dice = diceOf(`${seed} ${n}`);
  const kind = dice.chance(0.5) ? 'car' : 'backup';
  const bases = kind === 'car' ? carFiles : recordSets;
  const base = Math.floor(dice.next() * bases.length);
  const isDamage = dice.chance(0.15);
  const change = isDamage ? { data: bases[base], says: '' } : changed(bases[base], dice);
  const text = kind === 'car' ? render(change.data) : await sealed(change.data, dice);
  const result = isDamage ? damaged(text, dice) : { text, says: change.says };
  return { kind, text: result.text, says: `${kind} ${base}: ${result.says}` };
}
