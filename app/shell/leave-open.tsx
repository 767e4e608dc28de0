/** The way to close a visit that was forgotten on the rack: as it stands, at one touch, with an undo. */
import { leaveAsItStands, standsOpen } from '../state/sign-off.ts';
import { untorquedOf } from '../state/torque.ts';
import { offerUndo } from '../state/undo-offer.ts';
import type { VisitView } from '../state/visits.ts';

export function LeaveOpen({ view }: { readonly view: VisitView }) {
  const { visit, car } = view;
  const leave = () => {
    leaveAsItStands(
      view,
      untorquedOf(view).flatMap(({ keys }) => keys),
    );
    offerUndo(`${car.car.label}: closed as it stood, not signed off`, () => standsOpen(visit));
  };
  return (
    <div class="row-foot">
      <button
        type="button"
        class="quiet wide"
        aria-label={`Close the visit of ${car.car.label} as it stands`}
        onClick={leave}
      >
        Close it as it stands
      </button>
    </div>
  );
}
