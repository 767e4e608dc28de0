/** Builds the page of `bench:mutated` as the app is built, opens it in Chromium, and adds up what it says. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright';
import { build } from 'vite';
import { CONTENT_POLICY } from '../../../app/terminal/content-policy.ts';
import { serveFolder } from '../../../app/terminal/serve.ts';
import type { Failure, Tally } from './page.ts';

const PORT = Number(process.env.CORNERWRIGHT_PORT ?? 4310) + 60;
/** Mutants that a page is asked for at once. */
const BATCH = 50;
/** ms that one of them may take before its page counts as frozen. */
const FROZEN = 600_000;

export interface Options {
  readonly files: number;
  readonly seed: string;
  /** The number of the first one. */
  readonly from?: number;
  /** Pages at the same time, each with a browser of its own. */
  readonly pages?: number;
  readonly executable: string;
  /** Begins no more after so many minutes. */
  readonly minutes?: number;
  readonly told?: (sum: Sum) => void;
}
export type Sum = { -readonly [K in keyof Tally]: Tally[K] };

async function builtPage(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'cornerwright-mutated-'));
  await build({
    configFile: false,
    logLevel: 'error',
    base: './',
    worker: { format: 'es' },
    build: {
      outDir: folder,
      assetsInlineLimit: 0,
      modulePreload: false,
      cssCodeSplit: false,
      target: 'es2022',
      minify: false,
      rolldownOptions: {
        input: fileURLToPath(new URL('./page.ts', import.meta.url)),
        // In one piece: a screen of it is opened tens of thousands of times.
        output: { entryFileNames: 'page.js', codeSplitting: false },
      },
    },
  });
  const policy = `<meta http-equiv="Content-Security-Policy" content="${CONTENT_POLICY}">`;
  const page = `<!doctype html><html lang="en"><title>mutated</title>${policy}<div id="app" hidden></div><script type="module" src="./page.js"></script>`;
  writeFileSync(join(folder, 'index.html'), page);
  return folder;
}

const NONE: Tally = {
  ...{ files: 0, refused: {}, aside: 0, accepted: 0, same: 0, screens: 0, slowest: 0, memory: 0, opening: 0 },
  engine: { all: 0, worked: 0, longest: 0, tooLong: 0 },
  failures: [],
};

function added(a: Sum, b: Tally): Sum {
  const refused = { ...a.refused };
  for (const [rule, count] of Object.entries(b.refused)) refused[rule] = (refused[rule] ?? 0) + count;
  const sums = Object.fromEntries(
    (['files', 'aside', 'accepted', 'same', 'screens'] as const).map((key) => [key, a[key] + b[key]]),
  );
  const most = Object.fromEntries(
    (['slowest', 'memory', 'opening'] as const).map((key) => [key, Math.max(a[key], b[key])]),
  );
  const engine = {
    ...{ all: a.engine.all + b.engine.all, worked: a.engine.worked + b.engine.worked },
    ...{ longest: Math.max(a.engine.longest, b.engine.longest), tooLong: a.engine.tooLong + b.engine.tooLong },
  };
  return { ...a, ...sums, ...most, refused, engine, failures: [...a.failures, ...b.failures] };
}

export async function runMutants({
  files,
  seed,
  from: first = 0,
  pages = 2,
  executable,
  minutes = Number.POSITIVE_INFINITY,
  told,
}: Options): Promise<Sum> {
  const folder = await builtPage();
  const server = await serveFolder({ folder, port: PORT });
  let sum: Sum = { ...NONE };
  let next = 0;
  const until = Date.now() + minutes * 60_000;
  const work = async (): Promise<void> => {
    let at: { readonly browser: Browser; readonly page: Page } | undefined;
    while (next < files && Date.now() < until) {
      const from = next;
      const count = Math.min(BATCH, files - from);
      next += count;
      at ??= await opened(executable);
      const answer = await asked(at.page, seed, first + from, count);
      sum = added(sum, answer.tally);
      if (answer.isFrozen) {
        await at.browser.close();
        at = undefined;
      }
      told?.(sum);
    }
    await at?.browser.close();
  };
  try {
    await Promise.all(Array.from({ length: pages }, work));
  } finally {
    server.closeAllConnections();
    server.close();
    rmSync(folder, { recursive: true, force: true });
  }
  return sum;
}

async function opened(executable: string): Promise<{ readonly browser: Browser; readonly page: Page }> {
  const browser = await chromium.launch({
    executablePath: executable,
    chromiumSandbox: false,
    args: ['--enable-precise-memory-info'],
  });
  const page = await browser.newPage({ viewport: { width: 360, height: 740 } });
  await page.goto(`http://localhost:${PORT}/`);
  await page.waitForFunction(() => 'runMutants' in window);
  // What sees nothing wrong there would see nothing wrong anywhere.
  const broken = await page.evaluate(() => window.openBroken());
  for (const where of ['#/', '#/settings', '#/car/bad', '#/car/bad/history']) {
    if (!broken.some((one) => one.startsWith(`${where}: `))) throw new Error(`${where} is broken, and not seen to be`);
  }
  return { browser, page };
}

/** A page that no longer answers is given up, and the mutant that it was at is what failed. */
async function asked(page: Page, seed: string, from: number, count: number) {
  let at = from;
  let since = Date.now();
  const work = page.evaluate(([seed, from, count]) => window.runMutants(seed, from, count), [
    seed,
    from,
    count,
  ] as const);
  let why = 'no answer';
  work.catch((error: Error) => (why = error.message));
  while (true) {
    const tally = await Promise.race([work, new Promise<undefined>((done) => setTimeout(done, 2000))]).catch(
      () => null,
    );
    if (tally) return { tally, isFrozen: false };
    const now =
      tally === null
        ? at
        : await Promise.race([
            page.evaluate(() => window.mutantsAt).catch(() => at),
            new Promise<number>((done) => setTimeout(() => done(at), 1000)),
          ]);
    if (now !== at) since = Date.now();
    at = now;
    if (tally === null || Date.now() - since > FROZEN) return { tally: frozen(at, at - from + 1, why), isFrozen: true };
  }
}

const frozen = (n: number, files: number, why: string): Tally => ({
  ...NONE,
  files,
  failures: [{ n, says: 'the page froze or broke', wrong: [why], text: '' } satisfies Failure],
});
