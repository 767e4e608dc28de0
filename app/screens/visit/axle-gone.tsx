/** How far an axle on links goes, in words: what no rack shows, and an inclinometer and a tape do. */
import type { AxleName, Reading } from '../../../core/contract.ts';
import { units } from '../../state/preferences.ts';
import { words } from '../../state/words.ts';

interface Props {
  readonly reading: Reading | undefined;
  readonly axle: AxleName;
}

export function AxleGone({ reading, axle }: Props) {
  const { pinionChange, lateralChange } = reading?.[axle] ?? {};
  if (pinionChange === undefined || lateralChange === undefined) return null;
  const gone = words.axleGone(pinionChange, lateralChange, units.value);
  return (
    <p class="soft">
      {axle === 'rear' ? 'Rear' : 'Front'} axle since it was read: {gone}.
    </p>
  );
}
