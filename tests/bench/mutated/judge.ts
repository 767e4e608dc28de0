/** A text as the app takes it in: refused in words, or the records that it brings. */
import { incoming } from '../../../app/screens/build/import-file.ts';
import { namesIn } from '../../../core/adjuster/names.ts';
import { InputError } from '../../../core/input-error.ts';
import { parseCarFile } from '../../../core/records/car-file.ts';
import type { Stores } from '../../../core/records/stored.ts';
import { en } from '../../../core/words/en/index.ts';
import type { Mutant } from './mutants.ts';
import { newPhone, type Phone } from './phone.ts';
import { readerStart } from './reader.ts';

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

let phone: Phone | undefined;

/** Code in a sentence; what was entered, in quotation marks, is shown as it is. */
const CODE = /[a-z][A-Z]|\[|\]|[A-Za-z_]\.[A-Za-z_]|[{}]|\w_\w|undefined|NaN|null|\bobject\b/;

function wrongWords(error: InputError): string[] {
  const sentence = en.refusal(error);
  const bare = sentence.replace(/“[^”]*”/g, '');
  if (error.rule.is === 'other') return [`refused without a reason: ${sentence} (${error.field})`];
  const complete = typeof error.field === 'string' && error.allowed.length > 0 && /\.$/.test(sentence);
  return complete && !CODE.test(bare) ? [] : [`not in words: ${sentence} (${error.field}, ${error.rule.is})`];
}

/** From the worker to the page. */
function broughtBy(text: string): Stores {
  const file = structuredClone(parseCarFile(text));
  const { entries } = incoming(file, NOTHING, { now: '2026-03-02T08:00:00.000Z', makeId: () => crypto.randomUUID() });
  const of = (name: string) => entries.filter(([store]) => store === name).map(([, record]) => record);
  const lists = Object.keys(NOTHING).map((name) => [name, of(name)]);
  return Object.fromEntries(lists) as unknown as Stores;
}

export async function judge({ kind, text }: Mutant): Promise<Judged> {
  const before = heap();
  const start = performance.now();
  let spent: Pick<Judged, 'time' | 'memory'> | undefined;
  /** Up to its first call. */
  const cost = () => {
    // For each backup the app starts a worker.
    const started = kind === 'backup' && Number.isFinite(readerStart) ? readerStart : 0;
    spent ??= { time: performance.now() - start + started, memory: Math.max(0, heap() - before) };
    return spent;
  };
  try {
    if (kind === 'car') {
      const records = broughtBy(text);
      return { ...cost(), aside: [], wrong: [], records };
    }
    const file = new Blob([text]);
    phone ??= newPhone();
    const aside = (await phone.inspect(file)).aside.map(({ error }) => error);
    return { ...cost(), aside, wrong: aside.flatMap(wrongWords), records: await restored(file, phone) };
  } catch (error) {
    if (error instanceof InputError) return { ...cost(), aside: [], refused: error, wrong: wrongRefusal(error) };
    const wrong = [`no refusal: ${error instanceof Error ? (error.stack ?? error.message) : error}`];
    return { ...cost(), aside: [], wrong };
  }
}

function wrongRefusal(error: InputError): string[] {
  const named = en.refusal(error, namesIn({}));
  return named ? wrongWords(error) : ['a refusal without words'];
}

async function restored(file: Blob, on: Phone): Promise<Stores> {
  try {
    return await on.restore(file);
  } catch (error) {
    on.throwAway();
    phone = undefined;
    throw error;
  }
}
