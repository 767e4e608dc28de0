/** What the hand does where several moves are one job: one sentence, what holds for all of them said once. */
import type { Act, JobEnd, JobSaid } from '../../said.ts';
import type { Units } from '../words.ts';
import { act, packText, rodText, swapped, thanNow } from './act.ts';

type Said<A extends Act['act']> = readonly { readonly end: JobEnd; readonly act: Extract<Act, { act: A }> }[];
type Sayings = { readonly [A in Act['act']]?: (all: Said<A>, arm: string | undefined, units?: Units) => string };

/** Of jobs of which every move is the same act. One that is not here is said move by move. */
const SAYINGS: Sayings = {
  'change-shims': (all, arm = 'the arm', units) => {
    const packs = all.map(({ end, act: { by, to, stack, holds } }) =>
      to === 0
        ? `${end} pack all out, ${thanNow(by, units)}`
        : `${end} pack ${packText(to, stack, units)}, ${thanNow(by, units)}${swapped(stack, holds, units)}`,
    );
    return `${capital(arm)}: support it and loosen both bolts; ${packs.join('; ')}; the full nut on each thread.`;
  },
  'turn-rod': (all, _, units) => {
    const rods = all.map(({ end, act }) => `${end} ${rodText(act, units)}`);
    return `Free the lock nuts of both rods: ${rods.join(', ')}; hold the end joints square while locking.`;
  },
  // Both sides get the same, and that is how one move of it is said.
  'change-wedges': ([{ act: first } = none()], _, units) => act(first, units),
};

export function job(all: JobSaid, arm?: string, units?: Units): string {
  const [first = none()] = all;
  const saying = SAYINGS[first.act.act] as ((all: JobSaid, arm?: string, units?: Units) => string) | undefined;
  if (saying && all.every((one) => one.act.act === first.act.act)) return saying(all, arm, units);
  return all.map(({ end, act: one }) => `${capital(end)}: ${act(one, units)}`).join(' ');
}

const none = (): never => {
  throw new Error('a job without a move');
};

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
