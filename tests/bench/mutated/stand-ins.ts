/** What the screens of `bench:mutated` stand on in place of a phone: a frame at once, one window, answers that are known. */
import { options } from 'preact';
import { engine } from '../../../app/engine/index.ts';
import { store } from '../../../app/store/index.ts';

// One window: where a lock changes hands, the app reads its own database anew, and the records here are not in it.
Object.defineProperty(navigator, 'locks', { value: undefined });

// Effects wait for a frame, of which a page has sixty a second.
const soon: (() => void)[] = [];
const channel = new MessageChannel();
channel.port1.onmessage = () => soon.shift()?.();
const next = (work: () => void): void => {
  soon.push(work);
  channel.port2.postMessage(0);
};
options.requestAnimationFrame = next;
const tick = (): Promise<void> => new Promise(next);

// What the screens note as they are opened is shown and goes no further.
Object.assign(store, { putAll: async () => undefined, remove: async () => undefined });

/** The same question has the same answer: those of the files before they were changed are asked over and over, and stay. */
const known = new Map<string, Promise<unknown>>();
const MOST_KNOWN = 4000;
const asked = new Set<Promise<unknown>>();
export const engineCalls = { all: 0, worked: 0, longest: 0, tooLong: 0 };
const ask = engine.call as (name: string, args: unknown, options?: object) => Promise<unknown>;
Object.assign(engine, {
  warm: () => undefined,
  call(name: string, args: unknown): Promise<unknown> {
    engineCalls.all += 1;
    const question = `${name} ${JSON.stringify(args)}`;
    const before = known.get(question);
    // Those that were asked last are at the end.
    known.delete(question);
    const answer = before ?? worked(name, args);
    known.set(question, answer);
    const [oldest] = known.keys();
    if (known.size > MOST_KNOWN && oldest !== undefined) known.delete(oldest);
    return answer;
  },
});

function worked(name: string, args: unknown): Promise<unknown> {
  const start = performance.now();
  const answer = ask(name, args);
  const settled = answer
    .catch((error: Error) => {
      if (error.name === 'TookTooLong') engineCalls.tooLong += 1;
    })
    .finally(() => {
      asked.delete(settled);
      engineCalls.worked += 1;
      engineCalls.longest = Math.max(engineCalls.longest, performance.now() - start);
    });
  asked.add(settled);
  return answer;
}

/** ms: longer than the engine lets a call go on. */
const PATIENCE = 130_000;

/** Until nothing is asked of the engine, nothing is being fetched, and what was found is drawn. @returns what has no end */
export async function settled(root: HTMLElement): Promise<string | undefined> {
  const start = performance.now();
  for (let quiet = 0; quiet < 4; quiet += 1) {
    await tick();
    if (asked.size === 0 && !root.querySelector('.wait')) continue;
    quiet = -1;
    const left = PATIENCE - (performance.now() - start);
    if (left < 0) return asked.size > 0 ? `${asked.size} questions open` : 'it waits';
    await (asked.size > 0 ? within(left, Promise.all(asked)) : new Promise((done) => setTimeout(done, 1)));
  }
  return undefined;
}

function within(ms: number, work: Promise<unknown>): Promise<unknown> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise((done) => {
    timer = setTimeout(done, ms);
  });
  return Promise.race([work, late]).finally(() => clearTimeout(timer));
}
