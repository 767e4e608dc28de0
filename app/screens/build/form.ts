/** The build card while it is being typed: texts by the path that the core names in its errors, kept in a draft. */
import { signal } from '@preact/signals';
import type { CarRecord } from '../../../core/records/stored.ts';
import { STARTER_WHEELBASE } from '../../../core/starters/starter.ts';
import { draft, keepDraft, records } from '../../state/records.ts';
import { byId } from '../../store/index.ts';
import { textsOf } from './car-texts.ts';
import { keptUnits, type Texts, useCardUnits } from './numbers.ts';

export interface Form {
  readonly id: string;
  readonly texts: Texts;
  /** The car as it is on file; absent while it is new. */
  readonly record: CarRecord | undefined;
  readonly put: (change: Texts) => void;
  /** Replaces all texts that begin with a path. */
  readonly replace: (path: string, texts: Texts) => void;
  /** Replaces all that stands at these paths at one touch, so that one touch more puts it back. */
  readonly fill: (texts: Texts, under: readonly string[], says: string) => void;
  readonly undo: () => void;
}

export const formDraft = (carId: string): string => `car:${carId}`;

export function useForm(id: string): Form {
  const record = byId(records.value.cars, id);
  useCardUnits(draft(formDraft(id))?.texts);
  const before = record ? textsOf(record) : BLANK;
  const now = (): Texts => draft(formDraft(id))?.texts ?? before;
  const keep = (next: Texts) => {
    refusal.value = undefined;
    stray.value = false;
    keepDraft(formDraft(id), { ...next, ...keptUnits() }, undefined);
  };
  return {
    id,
    texts: now(),
    record,
    put: (change) => keep({ ...now(), ...change }),
    replace: (path, change) => {
      const rest = Object.entries(now()).filter(([key]) => !key.startsWith(path));
      keep({ ...Object.fromEntries(rest), ...change });
    },
    fill: (change, under, says) => keep(filled(now(), change, under, says)),
    undo: () => {
      const last = undoOf(now());
      if (last) keep(filled(now(), last.texts, last.under, 'Put back'));
    },
  };
}

/** What the last fill replaced. */
export interface Undo {
  readonly says: string;
  readonly under: readonly string[];
  readonly texts: Texts;
}
const UNDO = '@undo';

/** Kept among the texts, so that it is there after the app was closed. */
export function undoOf(texts: Texts): Undo | undefined {
  try {
    const { says, under, texts: before } = JSON.parse(texts[UNDO] ?? '{}') as Partial<Undo>;
    const isUndo = typeof says === 'string' && Array.isArray(under) && under.every((one) => typeof one === 'string');
    return isUndo && isTexts(before) ? { says, under, texts: before } : undefined;
  } catch {
    // A draft may come from a backup: what cannot be read there puts nothing back.
    return undefined;
  }
}

const isTexts = (value: unknown): value is Texts =>
  typeof value === 'object' && value !== null && Object.values(value).every((one) => typeof one === 'string');

export function filled(texts: Texts, change: Texts, under: readonly string[], says: string): Texts {
  const inside = ([key]: readonly [string, string]) =>
    under.some((path) => key === path || key.startsWith(`${path}.`) || key.startsWith(`${path}[`));
  const all = Object.entries(texts);
  const last: Undo = { says, under, texts: Object.fromEntries(all.filter(inside)) };
  const rest = Object.fromEntries(all.filter((entry) => !inside(entry)));
  return { ...rest, ...change, [UNDO]: JSON.stringify(last) };
}

/** A car's card as another car file says it, to be looked at and saved, or undone. */
export function draftFrom(record: CarRecord, says: string): void {
  const present = byId(records.value.cars, record.id);
  const now = draft(formDraft(record.id))?.texts ?? (present ? textsOf(present) : {});
  useCardUnits(now);
  keepDraft(
    formDraft(record.id),
    { ...filled(now, textsOf(record), ['car', 'spec'], says), ...keptUnits() },
    undefined,
  );
}

/** A new car: what most have, for the eye to correct. */
const BLANK: Texts = {
  'car.front.suspension.kind': 'double-wishbone',
  'car.rear.suspension.kind': 'five-link',
  'car.rear.suspension.behind': `${STARTER_WHEELBASE} mm`,
};

/** What went wrong when the card was last saved, mostly a refusal of the core: shown until something is typed, where no field shows it. */
export const refusal = signal<Error | undefined>(undefined);
/** Whether no field of the card shows it. */
export const stray = signal(false);

export function refuse(error: unknown): void {
  refusal.value = error instanceof Error ? error : new Error(String(error));
  requestAnimationFrame(() => {
    const place = document.querySelector<HTMLElement>('[aria-invalid="true"], .wrong');
    stray.value = place === null;
    place?.scrollIntoView({ block: 'center' });
    place?.focus({ preventScroll: true });
  });
}
