/** First load. What was done at one touch and is undone at one, offered on the screen where one stands right after. */
import { signal } from '@preact/signals';
import { hashOf, type Route, route } from '../routes.ts';

interface Offer {
  /** What was done: "Visit of 3 Nov deleted" */
  readonly says: string;
  readonly undo: () => void;
  /** Address of the screen that it stands on. */
  readonly on: string;
}

export const undoOffer = signal<Offer | undefined>(undefined);

/** @param on the screen that comes next; this one, where it stays */
export function offerUndo(says: string, undo: () => void, on: Route = route.value): void {
  undoOffer.value = { says, undo, on: hashOf(on) };
}
