/** The next move of a visit in one line, for its row in the list. */
import { headingOf, jobsLeft, jobWay } from '../state/jobs.ts';
import { usePlan } from '../state/planning.ts';
import type { VisitView } from '../state/visits.ts';

export function NextMove({ view }: { readonly view: VisitView }) {
  const round = view.rounds.at(-1);
  const { car } = view.car;
  const { value: plan } = usePlan(view, round);
  const job = plan && round ? jobsLeft(plan, round)[0] : undefined;
  if (!job) return <>Next: the moves</>;
  const { where, title } = headingOf(car, job);
  return (
    <>
      Next: {where} {title}, {jobWay(car, job)}
    </>
  );
}
