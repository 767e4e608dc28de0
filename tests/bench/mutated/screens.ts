/** Every screen of the app over some records, one after another, and what a person would find wrong with it. */
import { h, render } from 'preact';
import { hashOf, parseRoute, type Route, route } from '../../../app/routes.ts';
import { GROUPS } from '../../../app/screens/bench/tools.ts';
import { App } from '../../../app/shell/app.tsx';
import { loading, records } from '../../../app/state/records.ts';
import type { DraftRecord, Stores, VisitRecord } from '../../../core/records/stored.ts';
import { settled } from './stand-ins.ts';

const root = document.getElementById('app') as HTMLElement;

/** What no screen may say of itself. Preact's own error texts come to the page's console. */
const WRONG = /NaN|Infinity|undefined|\[object |cannot be shown|could not be (opened|shown)|\d{22}/;

/** All texts and names of the records in which such a word stands: a person may have typed it. */
function typedWords(value: unknown, found: Set<string> = new Set()): Set<string> {
  const take = (text: string): void => {
    if (WRONG.test(text)) found.add(text);
  };
  if (typeof value === 'string') take(value);
  else if (Array.isArray(value)) for (const one of value) typedWords(one, found);
  else if (typeof value === 'object' && value !== null) {
    for (const [name, one] of Object.entries(value)) {
      take(name);
      typedWords(one, found);
    }
  }
  return found;
}

const escaped = document.createElement('p');
/** The text as it stands in the page's markup. */
function asMarkup(text: string): readonly string[] {
  escaped.textContent = text;
  escaped.title = text;
  return [text, escaped.innerHTML, /title="([\s\S]*)"/.exec(escaped.outerHTML)?.[1] ?? text, encoded(text)];
}
function encoded(text: string): string {
  try {
    return encodeURIComponent(text);
  } catch {
    // Half a character has no place in an address.
    return text;
  }
}

function wrongIn(typed: ReadonlySet<string>): string | undefined {
  let markup = root.innerHTML;
  if (!WRONG.test(markup)) return undefined;
  for (const text of typed) {
    for (const form of asMarkup(text)) {
      markup = markup.replaceAll(form, '…');
      // A refusal shows the beginning of what is long.
      if (form.length > 30) markup = markup.replaceAll(form.slice(0, 30), '…');
    }
    // In small or capitals, or within what was made of it.
    for (const word of WRONG.exec(text) ?? []) markup = markup.replaceAll(word, '…');
  }
  const place = WRONG.exec(markup);
  return place ? markup.slice(Math.max(0, place.index - 160), place.index + 120) : undefined;
}

/** Of the bench. */
const TOOLS = GROUPS.flatMap(([, tools]) => tools.map(({ id }) => id));

/** Runs over all screens. @returns what is wrong, each with its screen */
export async function openAll(all: Stores, errors: () => readonly string[]): Promise<string[]> {
  const found: string[] = [];
  const typed = typedWords(all);
  let opened = 0;
  const look = async (where: string): Promise<void> => {
    opened += 1;
    const late = await settled(root);
    if (late) found.push(`${where}: never settles, ${late}`);
    const wrong = wrongIn(typed);
    const others = records.value.cars.length < all.cars.length ? ['these records are no longer shown'] : [];
    for (const one of [...(wrong ? [wrong] : []), ...others, ...errors()]) found.push(`${where}: ${one}`);
  };
  const show = async (to: Route): Promise<void> => {
    // As a browser does with the address.
    route.value = parseRoute(hashOf(to));
    await look(hashOf(to));
  };
  const set = (change: Partial<Stores>): void => {
    records.value = { ...all, ...change };
  };
  render(null, root);
  set({});
  loading.value = 'ready';
  route.value = { screen: 'cars' };
  render(h(App, {}), root);
  await show({ screen: 'cars' });
  await show({ screen: 'settings' });
  const visit = all.visits[0]?.id ?? '';
  for (const tool of ['', ...TOOLS]) await show({ screen: 'bench', tool, visit });
  for (const { id } of all.cars.slice(0, 2)) {
    await show({ screen: 'car', id });
    await show({ screen: 'history', id });
    await show({ screen: 'height', id });
    await show({ screen: 'chart', id });
    await show({ screen: 'build', id });
    await everySection(look);
    set({});
  }
  for (const visit of all.visits.slice(0, 3)) {
    for (const [step, change] of stepsOf(all, visit)) {
      set(change);
      await show({ screen: 'visit', id: visit.id });
      await unfold(`visit ${step}`, look);
      route.value = { screen: 'cautions' };
      await settled(root);
    }
  }
  openedScreens.count += opened;
  return found;
}
export const openedScreens = { count: 0 };

/** The build card's sections, and in them each adjuster's form. */
async function everySection(look: (where: string) => Promise<void>): Promise<void> {
  const heads = (): HTMLElement[] => [...root.querySelectorAll<HTMLElement>('button.step-head')];
  for (let i = 0; i < heads().length; i += 1) {
    const head = heads()[i];
    if (!head?.closest('.step-live')) head?.click();
    await look(`build, section ${i}`);
    const folds = root.querySelectorAll('[aria-expanded=false]').length;
    for (let k = 0; k < folds; k += 1) {
      const fold = root.querySelectorAll<HTMLElement>('[aria-expanded]')[k];
      if (fold?.ariaExpanded === 'false') fold.click();
      await look(`build, section ${i}, adjuster ${k}`);
    }
  }
}

/** Everything that is folded away on a step of a visit. */
async function unfold(where: string, look: (where: string) => Promise<void>): Promise<void> {
  const folds = [...root.querySelectorAll<HTMLElement>('button.step-head, details:not([open]) > summary')];
  for (const fold of folds) fold.click();
  if (folds.length > 0) await look(`${where}, unfolded`);
}

/** A visit at each of its steps: what is typed, chosen and closed is what makes them. */
function stepsOf(all: Stores, visit: VisitRecord): readonly (readonly [string, Partial<Stores>])[] {
  const { closed: _, marks: __, ...reopened } = visit;
  const last = all.readings.findLast(({ visitId }) => visitId === visit.id)?.id ?? '';
  const own = (id: string): DraftRecord | undefined => all.drafts.find((draft) => draft.id === id);
  const entry = `reading:${visit.id}`;
  const choices = `visit:${visit.id}`;
  const others = all.drafts.filter(({ id }) => id !== entry && id !== choices);
  const open = { visits: all.visits.map((one) => (one.id === visit.id ? (reopened as VisitRecord) : one)) };
  const drafted = (id: string, texts: Record<string, string>): DraftRecord => {
    const draft = own(id);
    return { ...draft, id, texts: { ...draft?.texts, ...texts }, changed: '2026-03-01T09:00:00.000Z' };
  };
  const withDrafts = (...drafts: DraftRecord[]): Partial<Stores> => ({ ...open, drafts: [...others, ...drafts] });
  const steps: readonly (readonly [string, Partial<Stores>])[] = [
    ['as it is', {}],
    ['read', withDrafts()],
    ['entry', withDrafts(drafted(entry, {}))],
    ['standing', withDrafts(drafted(entry, { '@step': 'standing' }))],
    ['correction', withDrafts(drafted(entry, { '@replaces': last }))],
    ['moves', withDrafts(drafted(choices, { goOn: last }))],
    ['as left', withDrafts(drafted(choices, { signOff: last }))],
    ['closed', { visits: all.visits.map((one) => (one.id === visit.id ? { ...visit, closed: visit.opened } : one)) }],
  ];
  // Some are the same step: a visit that is on the rack as it is, one with a single reading and its moves before it.
  const stages = steps.map(([, change]) => {
    const { visits, drafts } = { ...all, ...change };
    const texts = [entry, choices].map((id) => drafts.find((one) => one.id === id)?.texts);
    const isSingle = all.readings.filter(({ visitId }) => visitId === visit.id).length < 2;
    const { goOn: _, ...rest } = texts[1] ?? {};
    return JSON.stringify([
      visits.find(({ id }) => id === visit.id)?.closed,
      texts[0],
      isSingle ? rest : (texts[1] ?? {}),
    ]);
  });
  return steps.filter((_, i) => stages.indexOf(stages[i] ?? '') === i);
}
