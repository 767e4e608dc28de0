/** A text as the app takes it in: refused in words, or the records that it brings. */
import { incoming } from '../../../app/screens/build/import-file.ts';
import { createStore, type Store } from '../../../app/store/store.ts';
import { namesIn } from '../../../core/adjuster/names.ts';
import { InputError } from '../../../core/input-error.ts';
import { parseCarFile } from '../../../core/records/car-file.ts';
import type { Stores } from '../../../core/records/stored.ts';
import { en } from '../../../core/words/en/index.ts';
import type { Mutant } from './mutants.ts';

export interface Judged {
  readonly records?: Stores;
  readonly refused?: InputError;
  /** Records of a backup that stay out. */
  readonly aside: readonly InputError[];
  /** Another error than a refusal, or a refusal that is not in words. */
  readonly wrong: readonly string[];
  /** ms, and bytes more than before, of the reading and checking. */
  readonly time: number;
  readonly memory: number;
}

const NOTHING: Stores = { cars: [], visits: [], readings: [], moves: [], drafts: [], preferences: [] };
const heap = (): number =>
  (performance as unknown as { readonly memory?: { readonly usedJSHeapSize: number } }).memory?.usedJSHeapSize ?? 0;

/** A store into which nothing is ever written: what would come in is asked of it. */
let looking: Store | undefined;
let lastStore = 0;

/** Code in a sentence; what was entered, in quotation marks, is shown as it is. */
const CODE = /[a-z][A-Z]|\[|\]|[A-Za-z_]\.[A-Za-z_]|[{}]|\w_\w|undefined|NaN|null|\bobject\b/;

function wrongWords(error: InputError): string[] {
  const sentence = en.refusal(error);
  const bare = sentence.replace(/“[^”]*”/g, '');
  if (error.rule.is === 'other') return [`refused without a reason: ${sentence} (${error.field})`];
  const complete = typeof error.field === 'string' && error.allowed.length > 0 && /\.$/.test(sentence);
  return complete && !CODE.test(bare) ? [] : [`not in words: ${sentence} (${error.field}, ${error.rule.is})`];
}

async function taken({ kind, text }: Mutant): Promise<Pick<Judged, 'records' | 'aside'>> {
  if (kind === 'car') {
    // From the worker to the page.
    const file = structuredClone(parseCarFile(text));
    const { entries } = incoming(file, NOTHING, { now: '2026-03-02T08:00:00.000Z', makeId: () => crypto.randomUUID() });
    const of = (name: string) => entries.filter(([store]) => store === name).map(([, record]) => record);
    const lists = Object.keys(NOTHING).map((name) => [name, of(name)]);
    return { records: Object.fromEntries(lists) as unknown as Stores, aside: [] };
  }
  looking ??= createStore('looking');
  const { aside } = await looking.inspect(text);
  return { aside: aside.map(({ error }) => error) };
}

export async function judge(mutant: Mutant): Promise<Judged> {
  const before = heap();
  const start = performance.now();
  const cost = () => ({ time: performance.now() - start, memory: Math.max(0, heap() - before) });
  try {
    const { records, aside } = await taken(mutant);
    const spent = cost();
    const wrong = aside.flatMap(wrongWords);
    return { ...spent, aside, wrong, records: records ?? (await restored(mutant.text)) };
  } catch (error) {
    const spent = cost();
    if (!(error instanceof InputError)) {
      return {
        ...spent,
        aside: [],
        wrong: [`no refusal: ${error instanceof Error ? (error.stack ?? error.message) : error}`],
      };
    }
    const named = en.refusal(error, namesIn({}));
    return { ...spent, aside: [], refused: error, wrong: named ? wrongWords(error) : ['a refusal without words'] };
  }
}

/** What is on an empty phone after it is restored there. */
async function restored(text: string): Promise<Stores> {
  lastStore += 1;
  const name = `mutant-${lastStore}`;
  const store = createStore(name);
  try {
    await store.restore(text);
    return await store.load();
  } finally {
    store.close();
    indexedDB.deleteDatabase(name);
  }
}
