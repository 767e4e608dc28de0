/** The moves of a round, one card a job in working order: what to turn, from where to where, what the rack then reads. */
import './moves.css';
import type { AdjusterRef, Plan } from '../../../core/contract.ts';
import type { TurnsThatTell } from '../../../core/index.ts';
import { AfterPaint } from '../../parts/after-paint.tsx';
import { CornerMark } from '../../parts/corner-mark.tsx';
import { headingOf, type Job, jobsLeft, jobWay, leftJobs } from '../../state/jobs.ts';
import { placeWord } from '../../state/judge.ts';
import { leave, leftIn, takeUp } from '../../state/leave.ts';
import { measureNow } from '../../state/measure-now.ts';
import { chanceText } from '../../state/move-words.ts';
import { units } from '../../state/preferences.ts';
import { type RoundView, refKey, type VisitView } from '../../state/visits.ts';
import { words } from '../../state/words.ts';
import { Between } from './between.tsx';
import { LiveChoice } from './live-choice.tsx';
import { LiveJob } from './live-move.tsx';
import { Made } from './made.tsx';
import { stuck } from './moves-dock.tsx';
import { PlanChoiceCard } from './plan-choice.tsx';
import { ReachCards } from './reach.tsx';
import { ShortfallCard } from './shortfall.tsx';
import { WhatElseCard } from './what-else.tsx';

const keyOf = (job: readonly AdjusterRef[]): string => job.map(refKey).join(' ');

interface Props {
  readonly view: VisitView;
  readonly round: RoundView;
  readonly plan: Plan;
}

/** @param turns of adjusters of unknown place, where there are such */
export function MovesBody({ view, round, plan, turns }: Props & { readonly turns: TurnsThatTell | undefined }) {
  const [live, ...later] = jobsLeft(plan, round);
  const left = leftJobs(view.car.car, leftIn(view, round));
  return (
    <>
      <LiveChoice view={view} first />
      <StuckCost view={view} round={round} plan={plan} />
      <Headline view={view} round={round} plan={plan} />
      <Made view={view} moves={round.moves} />
      <Between view={view} round={round} plan={plan} turns={turns} />
      {live && <LiveJob view={view} round={round} plan={plan} job={live} />}
      {later.map((job) => (
        <LaterRow key={keyOf(job)} view={view} round={round} job={job} />
      ))}
      {left.map((job) => (
        <LeftRow key={keyOf(job)} view={view} round={round} job={job} />
      ))}
      {live && (
        <button type="button" class="quiet wide" onClick={() => measureNow(view)}>
          Measure now
        </button>
      )}
      <AfterPaint>
        <LiveChoice view={view} />
        {round.done.length === 0 && plan.moves.length > 0 && <PlanChoiceCard view={view} round={round} />}
        <ReachCards view={view} round={round} plan={plan} />
        <WhatElseCard car={view.car.car} plan={plan} />
      </AfterPaint>
    </>
  );
}

/** What it costs that something would not move: shown in the place where it was said, until the next mark. */
function StuckCost({ view, round, plan }: Props) {
  const last = round.moves.at(-1);
  if (last?.outcome !== 'wont-move') return null;
  const marked = round.moves.filter(({ outcome, at }) => outcome === last.outcome && at === last.at);
  const { where, title } = headingOf(view.car.car, marked);
  const before = marked.some(({ id }) => id === stuck.value?.id) ? stuck.value?.chance : undefined;
  const now = plan.inWindow ? chanceText(plan.chance) : 'not all comes into its window';
  return (
    <section class="stuck-cost" aria-label="What it costs" role="status">
      <strong>
        {where} {title} won’t move.
      </strong>{' '}
      Planned around it: {before === undefined ? '' : `${chanceText(before)} before, `}
      {plan.inWindow ? `${now} now` : now}.
    </section>
  );
}

/** A window that is met as surely as this limits nothing. */
const AS_GOOD_AS_SURE = 0.98;

/** The chance in large figures and what limits it; what the windows cannot have, in words. */
function Headline({ view, round, plan }: Props) {
  const [least] = plan.odds;
  return (
    <>
      {plan.inWindow ? (
        <p class="chance">
          <span>Chance that the re-measure is all in the window</span>
          <strong>{chanceText(plan.chance)}</strong>
        </p>
      ) : (
        <ShortfallCard view={view} round={round} plan={plan} />
      )}
      {least && least.chance < AS_GOOD_AS_SURE && (plan.inWindow || least.fixed) && (
        <p class="plan-note">{words.limit(least)}</p>
      )}
      {plan.noted
        .map((one) => words.note(one, units.value))
        .map((note) => (
          <p key={note} class="plan-note">
            {note}
          </p>
        ))}
      {plan.unmeasured.length > 0 && (
        <p class="soft">
          Not judged, as not measured:{' '}
          {plan.unmeasured.map(({ where, angle }) => placeWord(view.car.car, where, angle)).join(', ')}.
        </p>
      )}
    </>
  );
}

/** A job to come. It can be left alone before its turn comes: the others stay as they are. */
function LaterRow({ view, round, job }: Omit<Props, 'plan'> & { readonly job: Job }) {
  const { car } = view.car;
  const { where, title } = headingOf(car, job);
  return (
    <p class="move-row">
      <CornerMark corner={where} />
      <span>
        {title}
        <strong class="move-way">{jobWay(car, job)}</strong>
      </span>
      <button
        type="button"
        class="move-leave"
        aria-label={`Leave it this time: ${where} ${title}`}
        onClick={() => leave(view, round, job)}
      >
        Leave it
      </button>
    </p>
  );
}

/** What was left this time, until it is taken up again. */
function LeftRow({ view, round, job }: Omit<Props, 'plan'> & { readonly job: readonly AdjusterRef[] }) {
  const { where, title } = headingOf(view.car.car, job);
  return (
    <p class="move-row move-left">
      <CornerMark corner={where} />
      <span>
        {title}
        <span class="soft move-way">left as it is this time</span>
      </span>
      <button
        type="button"
        class="quiet"
        aria-label={`Make it after all: ${where} ${title}`}
        onClick={() => takeUp(view, round, job)}
      >
        Make it
      </button>
    </p>
  );
}
