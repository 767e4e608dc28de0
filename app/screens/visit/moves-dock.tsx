/** The answers to a move: made, or not as the card says, or enough for now. They stand under its card and nowhere else. */
import { signal } from '@preact/signals';
import { useEffect, useState } from 'preact/hooks';
import type { LiveAngle, Move, Plan, Position } from '../../../core/contract.ts';
import type { MoveRecord } from '../../../core/records/stored.ts';
import { ActionBar } from '../../parts/action-bar.tsx';
import { bookedBy, canWatch, othersOf } from '../../state/by-rack.ts';
import { endOf, headingOf, isByRack, isWhole, type Job, jobsLeft, madeText } from '../../state/jobs.ts';
import { leave } from '../../state/leave.ts';
import { measureNow } from '../../state/measure-now.ts';
import { adjusterOf } from '../../state/move-words.ts';
import { builtOf } from '../../state/packs.ts';
import { live, setLive } from '../../state/preferences.ts';
import { keep, records } from '../../state/records.ts';
import { moveId } from '../../state/same-id.ts';
import { choice, torqueKey } from '../../state/stage.ts';
import { type RoundView, refKey, type VisitView } from '../../state/visits.ts';
import { now } from '../../store/index.ts';
import { Stand } from './by-rack.tsx';
import { Figure } from './live-figure.tsx';
import { openStep } from './open-step.ts';
import { Stepper } from './stepper.tsx';

/**
 * What is asked after "Won't move" or "Set to…": which of a job, then the position; or a figure that the rack shows as it leads
 * a move. Undefined while the card has its answers.
 */
interface Asking {
  readonly job: string;
  readonly what: 'wont-move' | 'set-to' | 'figure';
  readonly angle?: LiveAngle;
  readonly move?: Move;
  readonly position?: Position;
}
const asking = signal<Asking | undefined>(undefined);

interface Props {
  readonly view: VisitView;
  readonly round: RoundView;
  readonly plan: Plan;
}
type OfJob = Props & { readonly job: Job };

const back = {
  label: 'Back',
  onPress: () => {
    asking.value = undefined;
  },
};

/** Each adjuster has a record of its own; those of one touch have the same time. */
function mark({ view, round, plan }: OfJob, moves: Job, outcome: MoveRecord['outcome'], position?: Position): void {
  asking.value = undefined;
  const all = records.value.moves;
  const same = { visitId: view.visit.id, readingId: round.record.id, outcome };
  const at = now();
  const made = moves.map((move): MoveRecord => {
    const { corner, adjuster, from } = move;
    // By the rack unless it was said where it stands instead.
    const rack = isByRack(move) && outcome !== 'wont-move' && position === undefined;
    const booked = rack ? bookedBy({ view, round, move }) : undefined;
    const to = outcome === 'wont-move' ? from : (booked?.to ?? position ?? move.to);
    // Made as the card says, a pack holds what the card says.
    const shims = outcome === 'done' ? builtOf(move) : undefined;
    const setBy = booked && { setBy: booked.setBy };
    const record = { ...same, corner, adjuster, from, to, ...(shims && { shims }), ...setBy };
    return { ...record, id: moveId(all, record), at };
  });
  const fresh = made.filter((record) => !all.some(({ id }) => id === record.id));
  if (fresh.length === 0) return;
  // The button goes with its card: one that goes while it has the focus has the browser lay out all that is half drawn.
  (document.activeElement as HTMLElement | null)?.blur();
  keep(...fresh.map((record) => ['moves', record] as const));
  // Whoever works by the plan has taken what it says of the rack.
  if (live.value.assumed && canWatch(view.car.car)) setLive(live.value.angles);
  if (outcome === 'wont-move') stuck.value = { id: fresh[0]!.id, chance: plan.inWindow ? plan.chance : undefined };
}

/** What would not move last, and the chance there was with it; of the moment only. */
export const stuck = signal<{ readonly id: string; readonly chance: number | undefined } | undefined>(undefined);

/** What was set by the rack is so, and the rest is planned anew from what it shows. */
export const planFromHere = (of: OfJob): void => mark(of, of.job, 'set-to');

/** Whether a figure is half typed. */
export const isTyping = (): boolean => asking.value?.what === 'figure';

/** Asks what the rack shows of another angle. */
export function askFigure(round: RoundView, job: Job, move: Move, angle: LiveAngle): void {
  asking.value = { job: keyOf({ round, job }), what: 'figure', move, angle };
}

const keyOf = ({ round, job }: Pick<OfJob, 'round' | 'job'>): string =>
  `${round.record.id} ${job.map(refKey).join(' ')}`;

/** What is asked about the live card, and what there is without one. */
export function MovesDock({ plan, whenNone, ...props }: Props & { readonly whenNone: preact.ComponentChildren }) {
  const [job] = jobsLeft(plan, props.round);
  if (!job) return <>{whenNone}</>;
  const ofJob = { ...props, plan, job };
  const asked = asking.value?.job === keyOf(ofJob) ? asking.value : undefined;
  if (openStep.value !== undefined) return <BackToMove view={props.view} />;
  if (asked?.what === 'figure' && asked.move && asked.angle)
    return <Figure view={props.view} round={props.round} move={asked.move} angle={asked.angle} onDone={back.onPress} />;
  if (asked?.move) return <SetTo {...ofJob} asked={asked} move={asked.move} />;
  return asked ? <Which {...ofJob} asked={asked} /> : null;
}

/** Another step lies open: no move is booked from there. */
function BackToMove({ view }: Pick<Props, 'view'>) {
  const backTo = () => {
    openStep.value = undefined;
    requestAnimationFrame(() => document.querySelector('.card-form')?.scrollIntoView({ block: 'start' }));
  };
  return (
    <ActionBar
      primary={{ label: 'Back to the move', onPress: backTo }}
      secondary={[{ label: 'Measure now', onPress: () => measureNow(view) }]}
    />
  );
}

/** ms for which a job's touches rest once it is drawn: where that came late, an impatient thumb has touched again. */
const RESTS = 400;

function useRested(id: string): boolean {
  const [rested, setRested] = useState('');
  useEffect(() => {
    const timer = setTimeout(() => setRested(id), RESTS);
    return () => clearTimeout(timer);
  }, [id]);
  return rested === id;
}

/** At the foot of the job's own card, under the thumb as long as the card is in sight. */
export function Answers(props: OfJob) {
  const id = keyOf(props);
  const { view, round, job } = props;
  const ofRack = job.filter(isByRack).map((move) => ({ view, round, move }));
  const wrong = ofRack.flatMap((of) => othersOf(of).flatMap((one) => (one.error ? [{ ...of, ...one }] : [])))[0];
  const torqued = job.every((move) => choice(view.visit.id, torqueKey(round.record.id, move)) === 'yes');
  const resting = !useRested(id);
  const ask = (what: Asking['what']) => {
    const [first] = job as readonly [Move];
    if (!isWhole(view.car.car, job)) asking.value = { job: id, what };
    else if (what === 'wont-move') mark(props, job, what);
    else asking.value = { job: id, what, move: first, position: first.to };
  };
  const others = [
    ['Won’t move', () => ask('wont-move')],
    ['Leave it', () => leave(view, round, job)],
    ['Set to…', () => ask('set-to')],
  ] as const;
  if (openStep.value !== undefined || asking.value?.job === id) return null;
  const book = () => (wrong ? askFigure(round, job, wrong.move, wrong.angle) : mark(props, job, 'done'));
  return (
    <>
      {ofRack.map((of) => (
        <Stand key={refKey(of.move)} {...of} />
      ))}
      {/* Another job has other buttons: a touch that was meant for the last one is not for them (shell/second-touch.ts). */}
      <div key={id} class="card-foot action-bar">
        <button type="button" class="action-bar-primary" aria-disabled={resting} onClick={() => resting || book()}>
          {wrong ? `${wrong.move.corner} ${wrong.angle} cannot be read: mend it` : madeText(view.car.car, job)}
          {torqued && !wrong ? ', torqued' : ''}
        </button>
        <div class="action-bar-rest">
          {others.map(([label, onPress]) => (
            <button
              key={label}
              type="button"
              class="action-bar-secondary"
              aria-disabled={resting}
              onClick={() => resting || onPress()}
            >
              {label}
            </button>
          ))}
        </div>
      </div>
    </>
  );
}

/** Which of the job it is about. */
function Which({ asked, ...props }: OfJob & { readonly asked: Asking }) {
  const { view, job } = props;
  const wontMove = asked.what === 'wont-move';
  const { where, title } = headingOf(view.car.car, job);
  const pick = (move: Move) => {
    if (wontMove) mark(props, [move], 'wont-move');
    else asking.value = { ...asked, move, position: move.to };
  };
  const each = job.map((move) => ({
    label: capital(endOf(view.car.car, job, move)),
    onPress: () => pick(move),
  }));
  const both = { label: 'Both', onPress: () => mark(props, job, 'wont-move') };
  return (
    <section class="dock which" aria-label="Which of them">
      <p class="stepper-caption">
        {where} {title}: {wontMove ? 'which of them won’t move?' : 'which of them is set elsewhere?'}
      </p>
      <div class="stepper-actions">
        {[back, ...each, ...(wontMove ? [both] : [])].map(({ label, onPress }) => (
          <button key={label} type="button" class="action-bar-secondary" onClick={onPress}>
            {label}
          </button>
        ))}
      </div>
    </section>
  );
}

function SetTo({ asked, move, ...props }: OfJob & { readonly asked: Asking; readonly move: Move }) {
  const adjuster = adjusterOf(props.view.car.car, move);
  const { position = move.to } = asked;
  const { car } = props.view.car;
  const moves = isWhole(car, props.job) ? props.job : [move];
  const { where, title } = headingOf(car, moves);
  if (!adjuster) return null;
  return (
    <Stepper
      caption={`${where} ${title}: what is it set to?`}
      corner={move.corner}
      adjuster={adjuster}
      position={position}
      onChange={(next) => {
        asking.value = { ...asked, position: next };
      }}
      actions={[
        back,
        {
          label: 'Plan from here',
          main: true,
          onPress: () => mark(props, moves, position === move.to ? 'done' : 'set-to', position),
        },
      ]}
    />
  );
}

const capital = (text: string): string => `${text[0]?.toUpperCase() ?? ''}${text.slice(1)}`;
