/** What only a practice car has, fetched for one. */
import { Lazy } from '../../shell/lazy.tsx';
import type { Of } from '../../state/by-rack.ts';
import type { VisitView } from '../../state/visits.ts';

const loadTake = async () => (await import('./practice-take.tsx')).PracticeTake;

/** Its place is kept while it is fetched: the cell that is typed into has been brought in sight above the keypad by then. */
export const PracticeButton = ({ view }: { readonly view: VisitView }) =>
  view.car.practice ? (
    <div class="practice-take">
      <Lazy load={loadTake} props={{ view }} quiet />
    </div>
  ) : null;

const loadHidden = async () => (await import('./practice-hidden.tsx')).PracticeHidden;

/** What was hidden in the car, once the visit is as good as over. */
export const PracticeTold = ({ view }: { readonly view: VisitView }) =>
  view.car.practice ? <Lazy load={loadHidden} props={{ view }} quiet /> : null;

const loadTurn = async () => (await import('./practice-turn.tsx')).PracticeTurns;

/** Turns a move that goes by the rack, on a practice car's own. */
export const PracticeTurn = (of: Of) => (of.view.car.practice ? <Lazy load={loadTurn} props={of} quiet /> : null);
