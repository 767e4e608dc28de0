/** At the end of a visit's strip: what another phone did to it, and the way out of one that was begun by mistake. */
import { go } from '../../routes.ts';
import { WorkedOn } from '../../shell/worked-on.tsx';
import { shortDay } from '../../state/days.ts';
import { bringBackVisit, deleteVisit } from '../../state/deleting.ts';
import { offerUndo } from '../../state/undo-offer.ts';
import type { VisitView } from '../../state/visits.ts';

export function VisitFoot({ view: { visit, car } }: { readonly view: VisitView }) {
  const remove = () => {
    const on = { screen: 'car', id: car.id } as const;
    deleteVisit(visit);
    offerUndo(`Visit of ${shortDay(visit.opened)} deleted`, () => bringBackVisit(visit), on);
    go(on, 'replace');
  };
  return (
    <div class="not-printed">
      <WorkedOn record={visit} />
      <button type="button" class="quiet wide" onClick={remove}>
        Delete this visit
      </button>
    </div>
  );
}
