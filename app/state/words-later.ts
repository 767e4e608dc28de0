/** The words that are wanted there now and then, fetched when they are: none of them is on the first load. */
import { signal } from '@preact/signals';
import type { Words } from '../../core/words/words.ts';

const words = signal<Words | undefined>(undefined);
let asked = false;

/** Nothing for the moment that they load; it draws the screen again when they are there. */
export function wordsLater(): Words | undefined {
  if (!asked) {
    asked = true;
    import('../../core/words/en/index.ts').then(
      ({ en }) => {
        words.value = en;
      },
      () => {
        asked = false;
      },
    );
  }
  return words.value;
}
