/**
 * Cycles of a kill and the start after it: the hands do something, the browser is killed in it, and what the next start
 * shows is held against what screens had called saved. A screen is a claim, whatever the code behind it thinks.
 */
import type { Page } from 'playwright';
import { oneOf, type Random, stream } from '../../tools/random-cars.ts';
import { Mortal } from './browser.ts';
import { add, build, halfOf, readAll } from './database.ts';
import { Ledger } from './ledger.ts';
import type { Screen } from './notes.ts';
import { SITUATIONS, type Walk } from './situations.ts';

export interface Cycle {
  readonly situation: string;
  readonly kill: 'at random' | 'at the log';
  /** How often a screen called something saved. */
  readonly claims: number;
  /** Called saved, and not there after the start. */
  readonly lost: readonly string[];
  /** What the start said of a loss. */
  readonly said: string;
  readonly half: readonly string[];
  /** A part of a restore or of an undo, how many of how many; and what was said of it. */
  readonly part?: string;
  readonly cutOff?: string;
  readonly screen: 'the same' | 'further on' | 'another';
  /** Of another: what was looked for and what there was. */
  readonly screens?: string;
}
export const isFault = ({ lost, said, half, part, cutOff, screen }: Cycle): boolean =>
  (lost.length > 0 && !said) || half.length > 0 || (part !== undefined && !cutOff) || (screen === 'another' && !said);

/** Bytes by which the log grows before the kill; none: when a new one is begun. */
const GROWTHS = [1, 1_000, 20_000, 100_000, 300_000, 1_000_000, 0] as const;
/** Cycles of one profile: it holds all that was done before, and grows by it. */
const LIFE = 25;
/** What is there to be shown comes within this, ms. */
const PATIENCE = 10_000;

export interface Options {
  readonly cycles: number;
  readonly seed: number;
  /** Where the built app is served. */
  readonly url: string;
  readonly told?: (cycle: Cycle) => void;
}

export async function runCycles({ cycles, seed, url, told }: Options): Promise<readonly Cycle[]> {
  const random = stream(seed);
  const draw = bagOf(random);
  const done: Cycle[] = [];
  while (done.length < cycles) {
    const ledger = new Ledger();
    const browser = new Mortal((what) => ledger.note(what));
    try {
      await live(browser, ledger, { url, random, draw, cycles: Math.min(LIFE, cycles - done.length) }, (cycle) => {
        done.push(cycle);
        told?.(cycle);
      });
    } finally {
      await browser.remove();
    }
  }
  return done;
}

interface Life {
  readonly url: string;
  readonly random: Random;
  /** The next situation. */
  readonly draw: () => string;
  readonly cycles: number;
}

/** Situations as often as they are to be, in an order of chance: a few of them are not all the same. */
function bagOf(random: Random): () => string {
  const bag: string[] = [];
  return () => {
    if (bag.length === 0)
      for (const [name, [, share]] of Object.entries(SITUATIONS)) bag.push(...Array<string>(share).fill(name));
    return bag.splice(Math.floor(random() * bag.length), 1)[0] as string;
  };
}

/** One profile, from its first start on. */
async function live(
  browser: Mortal,
  ledger: Ledger,
  { url, random, draw, cycles }: Life,
  told: (cycle: Cycle) => void,
) {
  let page = await browser.open();
  await open(page, url, '#/');
  /** How long the hands took the last time that they were not cut off, ms. */
  const lasts = new Map<string, number>();
  for (let n = 0; n < cycles; n += 1) {
    const situation = draw();
    const walk = SITUATIONS[situation]![0](`${Math.floor(random() * 1e9).toString(36)}`, random);
    if (walk.dump) page = await browser.openAfresh();
    await prepare(page, url, walk, ledger);
    const kill = random() < (walk.bulk ? 0.6 : 0.3) ? ('at the log' as const) : ('at random' as const);
    const { claims } = ledger;
    const began = performance.now();
    const hands = walk
      .hands(page)
      .then(() => lasts.set(situation, performance.now() - began))
      .catch(isKilled);
    const longest = 1.3 * (lasts.get(situation) ?? walk.lasts);
    if (kill === 'at the log') {
      await browser.killAtLog(oneOf(random, GROWTHS));
      await Promise.race([hands, browser.gone]);
    } else await Promise.race([hands, browser.gone, wait(longest * random())]);
    await browser.kill();
    await hands;
    ledger.end();
    page = await browser.open();
    told({ situation, kill, claims: ledger.claims - claims, ...(await startAgain(page, url, walk, ledger, random)) });
  }
}

const wait = (milliseconds: number) => new Promise((done) => setTimeout(done, milliseconds));

/** The walk's records, its place, and the first of its hands. */
async function prepare(page: Page, url: string, walk: Walk, ledger: Ledger): Promise<void> {
  // A page of the same origin without the app.
  await page.goto(`${url}icons/mark.svg`);
  if (walk.dump && walk.dump !== 'nothing') await build(page, walk.dump);
  if (walk.records) await add(page, walk.records);
  ledger.begin(walk.dump === 'nothing' ? new Map() : await readAll(page));
  if (!walk.before) return void (await page.goto(url + walk.hash, { waitUntil: 'commit' }));
  await open(page, url, walk.hash);
  await walk.before(page);
}

async function open(page: Page, url: string, hash: string): Promise<void> {
  await page.goto(url + hash);
  await page.locator('main').first().waitFor();
}

/** What is cut off by the kill ends as it must; anything else is a walk that went wrong. */
function isKilled(error: unknown): void {
  if (!/closed|crashed|disconnected|Target/i.test(String(error))) throw error;
}

/** The start after the kill, at the place where the hands were, held against what was noted. */
async function startAgain(page: Page, url: string, walk: Walk, ledger: Ledger, random: Random) {
  const wanted = [...ledger.screens];
  const hash = wanted[0]?.hash ?? walk.hash;
  await page.goto(url + hash);
  const shown = await until(page, (screen) => compare(screen, wanted, hash) !== 'another');
  await page.locator('main[aria-busy=true]').waitFor({ state: 'detached' });
  const found = await readAll(page);
  const lost = ledger.lost(found);
  const { there, all } = ledger.bulk(found);
  const screen = compare(shown, wanted, hash);
  // It looks for one that was cut off once everything has been read.
  if (there > 0 && there < all)
    await notes(page)
      .first()
      .waitFor({ timeout: PATIENCE })
      .catch(() => undefined);
  const said = (await notes(page).allTextContents()).filter((text) => !isCutOff(text)).join(' ');
  const cutOff = (await notes(page).allTextContents()).filter(isCutOff).join(' ');
  const seen = page.getByRole('button', { name: 'I have seen it' });
  if (await seen.isVisible()) await seen.click();
  const left = cutOff ? await answer(page, walk, ledger, random) : '';
  return {
    ...{ lost, said, half: [...halfOf(found), ...(left ? [left] : [])], screen },
    ...(cutOff && { cutOff }),
    ...(there > 0 && there < all && { part: `${there} of ${all}` }),
    ...(screen === 'another' && { screens: `${JSON.stringify(wanted)} → ${JSON.stringify(shown)}` }),
  };
}

const notes = (page: Page) => page.locator('.note-bad, main [role=alert]');
const isCutOff = (text: string): boolean => /was cut off/.test(text);

/**
 * One that was cut off is left as it is, or ended: a restore is taken back, an undo finished.
 * @returns what is wrong then
 */
async function answer(page: Page, { bulk }: Walk, ledger: Ledger, random: Random): Promise<string> {
  const ends = random() < 0.5;
  const end = bulk === 'undo' ? 'Finish it' : 'Take back what it brought';
  await page
    .locator('.note-bar')
    .getByRole('button', { name: ends ? end : 'Leave it as it is' })
    .click();
  await isDone(page);
  if (!ends || !bulk) return '';
  const { there, all } = ledger.bulk(await readAll(page));
  return there === (bulk === 'undo' ? all : 0) ? '' : `${end}: ${there} of ${all} are as they were written`;
}

/** The note gives way to what is being done, and comes back where that was not done. */
async function isDone(page: Page): Promise<void> {
  const open = page.locator('.note-bar:has-text("was cut off"), .restoring');
  for (let quiet = 0, all = 0; quiet < 8; all += 1) {
    if (all > 600) throw new Error('what was cut off is never done');
    quiet = (await open.count()) === 0 ? quiet + 1 : 0;
    await page.waitForTimeout(100);
  }
}

async function until(page: Page, is: (screen: Screen) => boolean): Promise<Screen> {
  const end = Date.now() + PATIENCE;
  for (;;) {
    const screen = await page.evaluate(() => window.lookAtScreen());
    // Nothing at all is shown until the records are there, however long that takes.
    if (is(screen) || (Date.now() > end && (screen.title || Date.now() > end + 8 * PATIENCE))) return screen;
    await page.waitForTimeout(50);
  }
}

/** The last that was called saved has to come back, or one that followed it. */
function compare(shown: Screen, wanted: readonly Screen[], hash: string): Cycle['screen'] {
  const [saved, ...later] = wanted;
  // Killed before it said that anything was saved: it has to open.
  if (!saved) return shown.title !== '' && shown.hash === hash ? 'the same' : 'another';
  if (isSame(shown, saved)) return 'the same';
  if (later.some((one) => isSame(shown, one)) || isFurther(shown, saved)) return 'further on';
  return 'another';
}

const isSame = (a: Screen, b: Screen): boolean => JSON.stringify(a) === JSON.stringify(b);

/** More of the same: digits in the last moment, that were kept and not noted any more. */
function isFurther(shown: Screen, saved: Screen): boolean {
  const textOf = ({ cells }: Screen) => cells.map((cell) => cell.replace(/: empty$/, ': ')).join('\n');
  const onlyMore = shown.cells.every((cell, i) => startsAs(cell, saved.cells[i] ?? ''));
  return shown.hash === saved.hash && shown.step === saved.step && onlyMore && textOf(shown) !== '';
}
const startsAs = (cell: string, before: string): boolean => cell.startsWith(before.replace(/: empty$/, ': '));
