/** The visits of a car: those that stand open, with the ways out of one that was begun by mistake or forgotten, and the past ones. */
import type { CarRecord, VisitRecord } from '../../../core/records/stored.ts';
import { Card } from '../../parts/card.tsx';
import { Verdict } from '../../parts/verdict.tsx';
import { hashOf } from '../../routes.ts';
import { LeaveOpen } from '../../shell/leave-open.tsx';
import { WorkedOn } from '../../shell/worked-on.tsx';
import { carState } from '../../state/car-state.ts';
import { shortDay } from '../../state/days.ts';
import { bringBackVisit, deleteVisit } from '../../state/deleting.ts';
import { openSince } from '../../state/forgotten.ts';
import { judged } from '../../state/judge.ts';
import { records } from '../../state/records.ts';
import { offerUndo } from '../../state/undo-offer.ts';
import { isUnsigned } from '../../state/unsigned.ts';
import { leftReading, visitView } from '../../state/visits.ts';

interface Props {
  readonly car: CarRecord;
  readonly visit: VisitRecord;
}

/** @param first the one that is gone on with */
export function OpenVisit({ car, visit, first }: Props & { readonly first: boolean }) {
  const view = visitView(records.value, visit.id);
  const since = openSince(records.value, visit);
  const remove = () => {
    deleteVisit(visit);
    offerUndo(`Visit of ${shortDay(visit.opened)} deleted`, () => bringBackVisit(visit));
  };
  return (
    <>
      <WorkedOn record={visit} />
      <Card title={since ? `Open since ${since}` : 'On the rack'} tone={first ? 'live' : 'plain'}>
        {first ? carState(records.value, car).text : `Visit of ${shortDay(visit.opened)}, open too`}
        {since && <p class="soft">Nobody has touched it for a day or more.</p>}
        {!first && (
          <a class="quiet wide" href={hashOf({ screen: 'visit', id: visit.id })}>
            Go on with this one
          </a>
        )}
        {since && view && <LeaveOpen view={view} />}
        <button type="button" class="quiet wide" onClick={remove}>
          Delete this visit
        </button>
      </Card>
    </>
  );
}

export function PastVisit({ car, visit }: Props) {
  const view = visitView(records.value, visit.id);
  const left = view && leftReading(view);
  return (
    <>
      <WorkedOn record={visit} />
      <Card
        title={`Visit of ${shortDay(visit.opened)}`}
        href={hashOf({ screen: 'visit', id: visit.id })}
        {...(isUnsigned(visit) && { aside: 'not signed off' })}
      >
        {left ? (
          <Verdict state={judged(left, car.spec).verdict} label="as left" />
        ) : (
          <span class="soft">not measured as left</span>
        )}
      </Card>
    </>
  );
}
