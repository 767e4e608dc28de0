/** What the rack shows live, on the page of the moves that it decides: above them until somebody has said so, then at their foot. */
import { LiveAngles } from '../../parts/live-angles.tsx';
import { canWatch } from '../../state/by-rack.ts';
import { live, setLive } from '../../state/preferences.ts';
import type { VisitView } from '../../state/visits.ts';
import { words } from '../../state/words.ts';

export function LiveChoice({ view, first = false }: { readonly view: VisitView; readonly first?: boolean }) {
  const { angles, assumed } = live.value;
  if (first !== assumed || !canWatch(view.car.car)) return null;
  return (
    <div class="live-choice">
      <LiveAngles legend={words.live({ live: 'which' })} angles={angles} onChoose={setLive} />
    </div>
  );
}
