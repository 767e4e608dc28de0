/** Why core would not take something, in words; an error that is no refusal says it itself. */
import { namesIn } from '../../core/adjuster/names.ts';
import { InputError } from '../../core/input-error.ts';
import { units } from './preferences.ts';
import { words } from './words.ts';

/** @param within what was asked about, for the names of its adjusters: `{ car }`, `{ adjusters }` */
export function why(error: unknown, within?: object): string {
  if (error instanceof InputError) return words.refusal(error, within && namesIn(within), units.value);
  return error instanceof Error ? error.message : String(error);
}
