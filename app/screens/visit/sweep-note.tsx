/** Most racks read caster off a steering sweep: until the next one it stands as it was. */
import type { Corner, Reading } from '../../../core/contract.ts';

/** Degrees that a rack shows. */
const SHOWN = 0.01;

interface Props {
  readonly corner: Corner;
  readonly before: Reading;
  readonly after: Reading;
}

export function SweepNote({ corner, before, after }: Props) {
  const [was, is] = [before[corner]?.caster, after[corner]?.caster];
  if (was === undefined || is === undefined || Math.abs(is - was) < SHOWN) return null;
  return <p class="soft">Caster shows after a new sweep, brake held, unless the rack follows it.</p>;
}
