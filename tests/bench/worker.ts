/**
 * The whole car's plan by the built app's own worker in Chromium, slowed down as a phone is. Chromium slows pages only: to
 * a worker it answers "only supported for pages, not workers", and a page's rate does not reach its workers. So the
 * worker is measured at full speed and its time scaled, and beside it the same built code is run where Chromium does
 * slow it, on a page's own thread. How much slower a thread truly is, a busy loop tells.
 */
import { existsSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium, type Page } from 'playwright';
import { REHEARSALS } from '../../app/engine/rehearsals.ts';
import { serveFolder } from '../../app/terminal/serve.ts';
import type { Plan, PlanRequest } from '../../core/contract.ts';
import { findOrInstallChromium } from '../tools/chromium.ts';
import { wholeCar } from './cars.ts';
import { ms, type Row } from './topic.ts';

const DIST = fileURLToPath(new URL('../../dist', import.meta.url));
const PORT = 4390;
const RATE = 6;
const TARGET = 'target 250 ms';
const PLANS = 30;
const SETTLED = 1000; // ms

interface Times {
  /** The first plan of a thread that has just started, and the median of those after it, ms. */
  readonly first: number;
  readonly median: number;
  readonly inWindow: boolean;
}

/** ms that a loop without memory takes on a page's thread, the least of five: text, as the page has none of our helpers. */
const LOOP = `Math.min(...Array.from({ length: 5 }, () => {
  const start = performance.now();
  for (let i = 0, x = 1; i < 1e7; i++) x = (31 * x + i) | 0;
  return performance.now() - start;
}))`;

/** Plans in a thread that has just started: the worker behind `url`, or this page with the chunk behind `url`. */
async function timesIn(
  page: Page,
  url: string,
  request: PlanRequest,
  rehearsals: readonly number[] = [],
): Promise<Times> {
  const { times, plan } = await page.evaluate(
    async ({ url, request, plans, rehearsals }) => {
      const { car, spec, reading, settings, style = 'closest', live = [] } = request;
      const rounds = [{ reading, settings }];
      const visits = [{ id: 'visit', carId: car.id, opened: '2026-01-01T08:00:00Z', rounds }];
      const file = { format: 'cornerwright', version: 1, car, spec, visits };
      const call = { id: 1, name: 'planOfFile', args: [file, { style, live }] };
      const worker = url.includes('/worker-') ? new Worker(url, { type: 'module' }) : undefined;
      const chunk = worker ? undefined : await import(url);
      if (worker) await new Promise((ready) => worker.addEventListener('message', ready, { once: true }));
      // A method: a function of its own name would bring a helper of the compiler's that the page has not.
      const thread = {
        ask(call: object): Promise<{ result?: Plan }> {
          if (!worker) return chunk.answer(call);
          return new Promise((done) => {
            worker.addEventListener('message', ({ data }) => done(data), { once: true });
            worker.postMessage(call);
          });
        },
      };
      for (const off of rehearsals)
        await thread.ask({ id: 0, name: 'rehearse', args: [request.car, request.spec, off, live] });
      const times: number[] = [];
      let answer: { result?: Plan } = {};
      for (let i = 0; i < plans; i++) {
        const start = performance.now();
        answer = await thread.ask(call);
        times.push(performance.now() - start);
      }
      return { times, plan: answer.result };
    },
    { url, request, plans: PLANS, rehearsals },
  );
  const [first = Number.NaN, ...rest] = times;
  const median = rest.sort((a, b) => a - b)[rest.length >> 1] ?? Number.NaN;
  return { first, median, inWindow: plan?.inWindow ?? false };
}

/** Rows of the built app; one that says why where there is no build. */
export async function slowPhone(): Promise<Row[]> {
  const built = existsSync(DIST) ? readdirSync(`${DIST}/assets`) : [];
  const file = (name: string): string | undefined =>
    built.find((one) => one.startsWith(`${name}-`) && one.endsWith('.js'));
  const [worker, answer] = [file('worker'), file('answer')];
  if (!worker || !answer) return [{ what: 'not measured: "npm run build" first', value: '' }];
  const server = await serveFolder({ folder: DIST, port: PORT });
  const browser = await chromium.launch({ executablePath: findOrInstallChromium(), chromiumSandbox: false });
  try {
    const page = async (): Promise<Page> => {
      const opened = await browser.newPage();
      await opened.goto(`http://localhost:${PORT}/`);
      await opened.locator('main').first().waitFor();
      // The app keeps itself for offline use first; nobody plans a car while it does.
      await opened.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');
      await opened.waitForTimeout(SETTLED);
      return opened;
    };
    const closest = wholeCar(17, true);
    const surest: PlanRequest = { ...closest, style: 'surest' };
    const cold = await timesIn(await page(), `/assets/${worker}`, closest);
    // As the app asks.
    const rehearsed = await timesIn(await page(), `/assets/${worker}`, surest, REHEARSALS);
    const live = await timesIn(
      await page(),
      `/assets/${worker}`,
      { ...closest, style: 'practical', live: ['camber', 'toe'] },
      REHEARSALS,
    );
    const slowed = await page();
    const full = await slowed.evaluate<number>(LOOP);
    const devtools = await slowed.context().newCDPSession(slowed);
    await devtools.send('Emulation.setCPUThrottlingRate', { rate: RATE });
    const slow = await timesIn(slowed, `/assets/${answer}`, closest);
    const slowSurest = await timesIn(slowed, `/assets/${answer}`, surest);
    const rate = `${((await slowed.evaluate<number>(LOOP)) / full).toFixed(1)} ×`;
    const all = [cold, rehearsed, live, slow, slowSurest];
    if (!all.every(({ inWindow }) => inWindow)) throw new Error('the built app does not find the plan that there is');
    const page6 = `a page's thread that Chromium slows (a busy loop: ${rate})`;
    return [
      row('its worker, at full speed', cold.median),
      row(`its worker, at full speed, times ${RATE}`, RATE * cold.median, TARGET),
      row(`its worker, times ${RATE}: its first plan`, RATE * cold.first),
      row(`its worker, times ${RATE}, surest`, RATE * rehearsed.median, TARGET),
      row(`its worker, times ${RATE}, surest: the first, rehearsed during entry`, RATE * rehearsed.first, TARGET),
      row(`its worker, times ${RATE}, practical, camber and toe live`, RATE * live.median, TARGET),
      row(`its worker, times ${RATE}, practical, live: the first, rehearsed during entry`, RATE * live.first, TARGET),
      row(page6, slow.median, TARGET),
      row(`${page6}: its first plan`, slow.first),
      row(`${page6}, surest`, slowSurest.median, TARGET),
    ];
  } finally {
    await browser.close();
    server.closeAllConnections();
    server.close();
  }
}

const row = (what: string, time: number, target = ''): Row => ({ what, value: ms(time), target });
