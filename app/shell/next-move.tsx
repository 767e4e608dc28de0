/** The next move of a visit in one line, for its row in the list. */
import { adjusterOf, movesLeft, wayText } from '../state/move-words.ts';
import { usePlan } from '../state/planning.ts';
import type { VisitView } from '../state/visits.ts';

export function NextMove({ view }: { readonly view: VisitView }) {
  const round = view.rounds.at(-1);
  const { value: plan } = usePlan(view, round);
  const move = plan && round ? movesLeft(plan, round)[0] : undefined;
  const adjuster = move && adjusterOf(view.car.car, move);
  if (!move || !adjuster) return <>Next: the moves</>;
  return (
    <>
      Next: {move.corner} {adjuster.name}, {wayText(adjuster, move)}
    </>
  );
}
