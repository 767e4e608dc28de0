/** The live step while there are moves to make: asks for the plan, and goes on to the re-measure when all are marked. */
import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import { jobsOf } from '../../../core/adjuster/job.ts';
import type { Car } from '../../../core/contract.ts';
import { ActionBar } from '../../parts/action-bar.tsx';
import { Card } from '../../parts/card.tsx';
import { PunchedStep } from '../../parts/punched-step.tsx';
import { Sheet } from '../../parts/sheet.tsx';
import { go } from '../../routes.ts';
import { jobsLeft, jobsMade } from '../../state/jobs.ts';
import { leftIn } from '../../state/leave.ts';
import { measureNow } from '../../state/measure-now.ts';
import { alongside } from '../../state/one-window.ts';
import { usePlan, useTurnsThatTell } from '../../state/planning.ts';
import { choose } from '../../state/stage.ts';
import { unknownPlaces } from '../../state/unknown-places.ts';
import { beginEntry } from '../../state/visit-actions.ts';
import type { RoundView, VisitView } from '../../state/visits.ts';
import { why } from '../../state/why.ts';
import { MovesBody } from './moves.tsx';
import { MovesDock } from './moves-dock.tsx';

interface Props {
  readonly view: VisitView;
  readonly round: RoundView;
  readonly past: ComponentChildren;
}

export function MovesStep({ view, round, past }: Props) {
  // Asked for first, as it is soon answered: what is to be turned before the plan stands above it and pushes nothing away.
  const anyLost = unknownPlaces(view, round).length > 0;
  const { value: turns, busy } = useTurnsThatTell(view, round, anyLost);
  const { value, error } = usePlan(view, round);
  const plan = busy ? undefined : value;
  const left = plan ? jobsLeft(plan, round) : [];
  const all = plan ? jobsOf(plan.moves).length : 0;
  const anyMoved = round.moves.some(({ from, to }) => from !== to);
  const alone = leftIn(view, round);
  const anyLeft = alone.now.length + alone.before.length > 0;
  // What was left alone can be taken up again first.
  const finished = plan !== undefined && left.length === 0 && anyMoved && !anyLeft;
  // Begun in the window where the visit is live: begun again in another, it would take back the first digits.
  const begins = finished && !alongside.value;
  useEffect(() => {
    if (begins) beginEntry(view);
  }, [begins]);
  const isStuck = round.moves.at(-1)?.outcome === 'wont-move';
  const made = jobsMade(view.car.car, round.moves).length;
  useEffect(() => {
    // After the first move the card itself matters more than the headline over it; what would not move has its price there.
    const place = document.querySelector(made > 0 && !isStuck ? '.between-now, .card-form' : '.step-live');
    if (!plan) return;
    place?.scrollIntoView({ block: 'start' });
    figuresInSight();
  }, [plan, made]);
  return (
    <>
      <Sheet>
        {past}
        <PunchedStep
          state="live"
          title="Moves"
          {...(left.length > 0 ? { note: `${made + 1} of ${made + left.length}` } : {})}
          {...(plan && left.length > 0 ? { time: `about ${minutes(plan.effort, left.length / all)} min` } : {})}
        >
          {plan && <MovesBody view={view} round={round} plan={plan} turns={turns} />}
          {plan && plan.moves.length === 0 && !anyMoved && !anyLeft && (
            <p>
              {plan.inWindow ? 'Everything is in its window: there is nothing to move.' : 'No move brings it nearer.'}
            </p>
          )}
          {error && <Refused error={error} car={view.car.car} />}
          {!plan && !error && (
            <p role="status" class="soft">
              Working out the moves…
            </p>
          )}
        </PunchedStep>
      </Sheet>
      {plan && (
        <MovesDock
          view={view}
          round={round}
          plan={plan}
          whenNone={<NothingDock view={view} round={round} moved={anyMoved} />}
        />
      )}
      {error && (
        <ActionBar
          primary={{ label: 'Open the car’s build', onPress: () => go({ screen: 'build', id: view.car.id }) }}
        />
      )}
    </>
  );
}

/**
 * What the rack will read after the move is above the answers that stand at the foot, however much is told before it; the
 * price of what would not move stays in sight too.
 */
function figuresInSight(): void {
  const box = (of: string) => document.querySelector(of)?.getBoundingClientRect();
  const [figures, foot, head, price] = ['.card-form .expect', '.card-foot', '.top-bar', '.stuck-cost'].map(box);
  if (!figures) return;
  const under = figures.bottom + AIR - (foot?.top ?? innerHeight);
  const most = price ? price.top - (head?.bottom ?? 0) - AIR : under;
  const by = Math.min(under, most);
  if (by > 0) scrollBy(0, by);
}
/** px between what is to be seen and what stands over the paper. */
const AIR = 8;

/** The plan's minutes for the share of its moves that is still to be made. */
const minutes = (effort: number, share: number): number => Math.max(1, Math.round(effort * share));

/** @param moved something was, so that the car is to be measured before it goes */
function NothingDock({ view, round, moved }: Omit<Props, 'past'> & { readonly moved: boolean }) {
  const asLeft = { label: 'As left', onPress: () => choose(view.visit.id, { signOff: round.record.id }) };
  const measure = { label: 'Measure again', onPress: () => measureNow(view) };
  return <ActionBar primary={moved ? measure : asLeft} secondary={[moved ? asLeft : measure]} />;
}

/** What the core refused; everything that was typed is still there. */
function Refused({ error, car }: { readonly error: Error; readonly car: Car }) {
  return (
    <Card tone="caution" title="No plan can be made yet">
      <p role="alert">{why(error, { car })}</p>
      <p>What you entered is kept.</p>
    </Card>
  );
}
