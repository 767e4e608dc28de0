/** The entry as it is now: fields, texts and the caret, all from the draft; and what a key does to it. */
import { signal } from '@preact/signals';
import type { Angle } from '../../core/contract.ts';
import { type Field, figureOf, isToe, readField, type Typed, unitsOf, unitTexts } from './fields.ts';
import { formTexts } from './form.ts';
import { rack, setRack, setUnits, units } from './preferences.ts';
import { draft, keepDraft } from './records.ts';
import { entryDraft } from './stage.ts';
import { decimalsIn, END, type Pad, pick, press, type Typing } from './typing.ts';
import { unitsFor } from './units.ts';
import { correcting, entryFields, entryForm } from './visit-actions.ts';
import type { VisitView } from './visits.ts';
import { wordsLater } from './words-later.ts';

/** What bears on the next keys beside texts and caret: of the moment only, so that it is kept nowhere. */
type Hand = Omit<Typing, 'texts' | 'cursor'> & { readonly visit?: string };
const hand = signal<Hand>({});

/** Asked anew at every key: fast hands outrun a drawing. */
export function entryOf(view: VisitView) {
  const { car } = view.car;
  const form = entryForm(view);
  const fields = entryFields(view, form);
  const kept = draft(entryDraft(view.visit.id));
  const texts = kept?.texts ?? {};
  const own = unitsOf(texts, unitsFor(car));
  const cursor = kept?.cursor ?? fields[0]?.id ?? END;
  const { visit, ...now } = hand.value;
  const typing: Typing = { ...(visit === view.visit.id && now), texts, cursor };
  const field = (id: string | undefined) => fields.find((one) => one.id === id);
  const pad: Pad = {
    fields,
    units: own,
    decimals: (one) => decimalsOf(figureOf(one, own)),
    // A correction is of the cell that was touched: it does not walk on through the rest.
    alone: correcting(view) !== undefined,
  };
  return {
    form,
    fields,
    texts,
    own,
    typing,
    pad,
    active: field(cursor),
    taken: field(typing.taken),
    from: field(typing.walk?.from),
    read: (one: Field): Typed => readField(one, texts[one.id] ?? '', own, car.wheel.rimDiameter),
  };
}

const decimalsOf = (figure: ReturnType<typeof figureOf>): number => (figure ? rack.value.decimals[figure] : 0);

function put(view: VisitView, { texts, cursor, ...rest }: Typing): void {
  const { form, own } = entryOf(view);
  hand.value = { ...rest, visit: view.visit.id };
  keepDraft(entryDraft(view.visit.id), { ...unitTexts(own), ...formTexts(form), ...texts }, cursor);
}

/** A key of the pad or a character of a real keyboard. */
export function pressKey(view: VisitView, key: string, at: number): void {
  if (key === 'dm') {
    setUnits({ angle: units.value.angle === 'degrees' ? 'degrees-minutes' : 'degrees' });
    return;
  }
  const { typing, pad } = entryOf(view);
  put(view, press(typing, key, at, pad));
}

export const pickCell = (view: VisitView, id: string): void => put(view, pick(entryOf(view).typing, id));

/** The decimals of a figure that has more than the rack was said to show: those that it may show in truth. */
export function moreDecimals(view: VisitView, field: Field): 2 | 3 | undefined {
  const { texts, pad, own } = entryOf(view);
  if (!figureOf(field, own)) return undefined;
  const there = decimalsIn(texts[field.id] ?? '');
  return there > pad.decimals(field) && (there === 2 || there === 3) ? there : undefined;
}

export function showDecimals(view: VisitView, field: Field, count: 1 | 2 | 3): void {
  const figure = figureOf(field, entryOf(view).own);
  if (figure) setRack({ decimals: { ...rack.value.decimals, [figure]: count } });
}

/** Whether an unlikely figure is right, asked as soon as it is there; it is taken all the same. */
export function questionOf(view: VisitView, field: Field): string | undefined {
  const { own, read } = entryOf(view);
  const { unusual } = read(field);
  if (!unusual) return undefined;
  const { angle } = field;
  const told =
    wordsLater()?.unusual(angle === 'totalToe' ? 'toe' : (angle as Angle), unusual.value, unusual.usual, units.value) ??
    '…';
  const question = angle === 'totalToe' ? `Each wheel: ${told}` : told;
  if (!isToe(angle) || own.toe === 'angle') return question;
  return `${question} It was typed as a length: is the diameter on the car’s card the gauge’s?`;
}
