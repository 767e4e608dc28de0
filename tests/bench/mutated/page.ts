/** The page of `bench:mutated`: makes mutants, takes them in, and opens every screen over what was accepted. */
import { canonical } from '../../../core/records/canonical.ts';
import { judge } from './judge.ts';
import { type Mutant, mutantOf } from './mutants.ts';
import { endReader } from './reader.ts';
import { openAll, openedScreens } from './screens.ts';
import { engineCalls } from './stand-ins.ts';

export interface Failure {
  readonly n: number;
  readonly says: string;
  readonly wrong: readonly string[];
  readonly text: string;
}
export interface Tally {
  readonly files: number;
  /** By rule. */
  readonly refused: Readonly<Record<string, number>>;
  readonly aside: number;
  readonly accepted: number;
  /** Records that are the same as others that were opened. */
  readonly same: number;
  readonly screens: number;
  readonly engine: typeof engineCalls;
  /** ms and bytes of the most expensive to take in or refuse. */
  readonly slowest: number;
  readonly memory: number;
  readonly opening: number;
  readonly failures: readonly Failure[];
}

declare global {
  interface Window {
    runMutants: (seed: string, from: number, count: number) => Promise<Tally>;
    /** One file as a person has it, for a look at why. */
    mutantText: (seed: string, n: number) => Promise<string>;
    mutantsAt: number;
    /** What is found wrong with records that no screen can draw. */
    openBroken: () => Promise<string[]>;
  }
}

const errors: string[] = [];
addEventListener('error', ({ message, error }) => errors.push(`exception: ${error?.stack ?? message}`));
addEventListener('unhandledrejection', ({ reason }) => errors.push(`rejection: ${reason?.stack ?? reason}`));
const toConsole = console.error;
console.error = (...all: unknown[]) => {
  errors.push(`console: ${all.map((one) => (one instanceof Error ? one.stack : String(one))).join(' ')}`);
  toConsole(...all);
};
const taken = (): readonly string[] => errors.splice(0);

const MOST_TIME = 2000;
const LATENCIES = 20;
const MOST_MEMORY = 200_000_000;
const opened = new Set<string>();

/** What is thrown where no screen catches it. */
const outright = (error: Error): string[] => [`thrown: ${error.stack ?? error.message}`];

/**
 * How long the machine, with all else that it does now, takes for a file that is refused at its first letters, ms; with a reader
 * of its own, as in the app.
 */
async function latency({ kind }: Mutant): Promise<number> {
  endReader();
  return (await judge({ kind, text: 'no file', says: '' })).time;
}

async function one(seed: string, n: number) {
  const mutant = await mutantOf(seed, n);
  let judged = await judge(mutant);
  // What else the machine does is no part of it: what takes too long takes it each time.
  for (let times = 0; times < 3 && judged.time > MOST_TIME; times += 1) {
    const again = await judge(mutant);
    if (again.time < judged.time) judged = again;
  }
  const wrong = [...judged.wrong];
  if (judged.time > MOST_TIME && judged.time > LATENCIES * (await latency(mutant)))
    wrong.push(`took ${Math.round(judged.time)} ms to read`);
  if (judged.memory > MOST_MEMORY) wrong.push(`took ${Math.round(judged.memory / 1e6)} MB to read`);
  let isSame = false;
  let opening = 0;
  if (judged.records) {
    const key = canonical(judged.records);
    isSame = opened.has(key);
    const start = performance.now();
    if (!isSame) wrong.push(...(await openAll(judged.records, taken).catch(outright)));
    opening = performance.now() - start;
    opened.add(key);
    if (opened.size > 5000) opened.clear();
  }
  wrong.push(...taken());
  return { mutant, judged, wrong, isSame, opening };
}

window.runMutants = async (seed, from, count) => {
  const refused: Record<string, number> = {};
  const failures: Failure[] = [];
  const sums = { aside: 0, accepted: 0, same: 0, slowest: 0, memory: 0, opening: 0 };
  openedScreens.count = 0;
  Object.assign(engineCalls, { all: 0, worked: 0, longest: 0, tooLong: 0 });
  endReader();
  for (let n = from; n < from + count; n += 1) {
    window.mutantsAt = n;
    const { mutant, judged, wrong, isSame, opening } = await one(seed, n);
    if (judged.refused) refused[judged.refused.rule.is] = (refused[judged.refused.rule.is] ?? 0) + 1;
    sums.aside += judged.aside.length;
    sums.accepted += judged.records ? 1 : 0;
    sums.same += isSame ? 1 : 0;
    sums.slowest = Math.max(sums.slowest, judged.time);
    sums.memory = Math.max(sums.memory, judged.memory);
    sums.opening = Math.max(sums.opening, opening);
    if (wrong.length > 0) failures.push({ n, says: mutant.says, wrong: wrong.slice(0, 6), text: mutant.text });
  }
  return { files: count, refused, ...sums, screens: openedScreens.count, engine: { ...engineCalls }, failures };
};
window.openBroken = () =>
  openAll(
    {
      ...{ visits: [], readings: [], moves: [], drafts: [] },
      cars: [{ id: 'bad', car: null, spec: {}, changed: '2026-01-01' }] as never,
      preferences: [{ id: 'drawer', value: { counted: true, shims: [null] } }],
    },
    taken,
  );
window.mutantText = async (seed, n) => (await mutantOf(seed, n)).text;
