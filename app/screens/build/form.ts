/** The build card while it is being typed: texts by the path that the core names in its errors, kept in a draft. */
import { signal } from '@preact/signals';
import { InputError } from '../../../core/input-error.ts';
import type { CarRecord } from '../../../core/records/stored.ts';
import { draft, keepDraft, records } from '../../state/records.ts';
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
}

export const formDraft = (carId: string): string => `car:${carId}`;

export function useForm(id: string): Form {
  const record = records.value.cars.find((one) => one.id === id);
  useCardUnits(draft(formDraft(id))?.texts);
  const before = record ? textsOf(record) : BLANK;
  const now = (): Texts => draft(formDraft(id))?.texts ?? before;
  const keep = (next: Texts) => {
    refusal.value = undefined;
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
  };
}

/** A new car: what most have, for the eye to correct. */
const BLANK: Texts = {
  'car.front.suspension.kind': 'double-wishbone',
  'car.front.suspension.way': 'tape',
  'car.rear.suspension.kind': 'five-link',
  'car.rear.suspension.way': 'points',
};

/** What the core refused when the card was last saved: shown at its field until something is typed. */
export const refusal = signal<InputError | undefined>(undefined);

export function refuse(error: unknown): void {
  refusal.value = error instanceof InputError ? error : new InputError('car', undefined, String(error));
  requestAnimationFrame(() => {
    const place = document.querySelector<HTMLElement>('[aria-invalid="true"]');
    place?.scrollIntoView({ block: 'center' });
    place?.focus({ preventScroll: true });
  });
}
