/** What is under the thumb while there are moves to make: made, or not as the card says, or enough for now. */
import { signal } from '@preact/signals';
import { useEffect, useState } from 'preact/hooks';
import type { Move, Plan, Position } from '../../../core/contract.ts';
import type { MoveRecord } from '../../../core/records/stored.ts';
import { endOf, headingOf, isWhole, type Job, jobsLeft, madeText } from '../../state/jobs.ts';
import { leave } from '../../state/leave.ts';
import { measureNow } from '../../state/measure-now.ts';
import { adjusterOf } from '../../state/move-words.ts';
import { builtOf } from '../../state/packs.ts';
import { keep, records } from '../../state/records.ts';
import { moveId } from '../../state/same-id.ts';
import { choice, torqueKey } from '../../state/stage.ts';
import { type RoundView, refKey, type VisitView } from '../../state/visits.ts';
import { now } from '../../store/index.ts';
import { Stepper } from './stepper.tsx';

/** What is asked after "Won't move" or "Set to…": which of a job, then the position. Undefined while the card has its answers. */
interface Asking {
  readonly job: string;
  readonly what: 'wont-move' | 'set-to';
  readonly move?: Move;
  readonly position?: Position;
}
const asking = signal<Asking | undefined>(undefined);

interface Props {
  readonly view: VisitView;
  readonly round: RoundView;
  readonly plan: Plan;
}
type OfJob = Omit<Props, 'plan'> & { readonly job: Job };

const back = {
  label: 'Back',
  onPress: () => {
    asking.value = undefined;
  },
};

/** Each adjuster has a record of its own; those of one touch have the same time. */
function mark({ view, round }: OfJob, moves: Job, outcome: MoveRecord['outcome'], position?: Position): void {
  asking.value = undefined;
  const all = records.value.moves;
  const same = { visitId: view.visit.id, readingId: round.record.id, outcome };
  const at = now();
  const made = moves.map((move): MoveRecord => {
    const { corner, adjuster, from } = move;
    const to = outcome === 'wont-move' ? from : (position ?? move.to);
    // Made as the card says, a pack holds what the card says.
    const shims = outcome === 'done' ? builtOf(move) : undefined;
    const record = { ...same, corner, adjuster, from, to, ...(shims && { shims }) };
    return { ...record, id: moveId(all, record), at };
  });
  const fresh = made.filter((record) => !all.some(({ id }) => id === record.id));
  if (fresh.length > 0) keep(...fresh.map((record) => ['moves', record] as const));
}

/** The answers to the live card. */
export function MovesDock({ plan, whenNone, ...props }: Props & { readonly whenNone: preact.ComponentChildren }) {
  const [job] = jobsLeft(plan, props.round);
  if (!job) return <>{whenNone}</>;
  const key = `${props.round.record.id} ${job.map(refKey).join(' ')}`;
  const asked = asking.value?.job === key ? asking.value : undefined;
  const ofJob = { ...props, job };
  if (asked?.move) return <SetTo {...ofJob} asked={asked} move={asked.move} />;
  if (asked) return <Which {...ofJob} asked={asked} />;
  return <Answers {...ofJob} id={key} />;
}

/** ms for which a job's touch rests when it has come under the thumb: a nervous one touches twice. */
const RESTS = 400;

function useRested(id: string): boolean {
  const [rested, setRested] = useState('');
  useEffect(() => {
    const timer = setTimeout(() => setRested(id), RESTS);
    return () => clearTimeout(timer);
  }, [id]);
  return rested === id;
}

function Answers({ id, ...props }: OfJob & { readonly id: string }) {
  const { view, round, job } = props;
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
    ['Measure now', () => measureNow(view)],
  ] as const;
  return (
    <div class="dock action-bar">
      <button
        type="button"
        class="action-bar-primary"
        aria-disabled={resting}
        onClick={() => resting || mark(props, job, 'done')}
      >
        {madeText(view.car.car, job)}
        {torqued ? ', torqued' : ''}
      </button>
      <div class="action-bar-rest four">
        {others.map(([label, onPress]) => (
          <button key={label} type="button" class="action-bar-secondary" onClick={onPress}>
            {label}
          </button>
        ))}
      </div>
    </div>
  );
}

/** Which of the job it is about. */
function Which({ asked, ...props }: OfJob & { readonly asked: Asking }) {
  const { view, job } = props;
  const stuck = asked.what === 'wont-move';
  const pick = (move: Move) => {
    if (stuck) mark(props, [move], 'wont-move');
    else asking.value = { ...asked, move, position: move.to };
  };
  const each = job.map((move) => ({
    label: capital(endOf(view.car.car, job, move)),
    onPress: () => pick(move),
  }));
  const both = { label: 'Both', onPress: () => mark(props, job, 'wont-move') };
  return (
    <section class="dock which" aria-label="Which of them">
      <p class="stepper-caption">{stuck ? 'Which of them won’t move?' : 'Which of them is set elsewhere?'}</p>
      <div class="stepper-actions">
        {[back, ...each, ...(stuck ? [both] : [])].map(({ label, onPress }) => (
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
