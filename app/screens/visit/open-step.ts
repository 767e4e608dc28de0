/** Which step behind the live one lies open: one at a time, and the live one's actions rest meanwhile. */
import { signal } from '@preact/signals';

/** Its name: a reading's id, `moves:` and a reading's id, `checks:` and a visit's. */
export const openStep = signal<string | undefined>(undefined);

export function turnStep(id: string): void {
  openStep.value = openStep.value === id ? undefined : id;
}
