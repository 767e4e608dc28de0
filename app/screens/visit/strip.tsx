/** Everything of a visit after its first reading is typed: the steps behind, the live one, and what is under the thumb. */
import './visit.css';
import { useEffect } from 'preact/hooks';
import { ActionBar } from '../../parts/action-bar.tsx';
import { PunchedStep } from '../../parts/punched-step.tsx';
import { Sheet } from '../../parts/sheet.tsx';
import { go } from '../../routes.ts';
import { isWide } from '../../shell/is-wide.ts';
import { clock } from '../../state/days.ts';
import { jobsMade } from '../../state/jobs.ts';
import { isEarly } from '../../state/measure-now.ts';
import { packsOf } from '../../state/packs.ts';
import { dropDraft } from '../../state/records.ts';
import { openAgain } from '../../state/sign-off.ts';
import { choose, entryDraft, type Stage, stageOf } from '../../state/stage.ts';
import { settingsOf } from '../../state/standing.ts';
import { isUnsigned } from '../../state/unsigned.ts';
import { anythingTyped, correcting, entryReady, takeDown } from '../../state/visit-actions.ts';
import type { RoundView, VisitView } from '../../state/visits.ts';
import { CheckStep } from './check-step.tsx';
import { CompareStep } from './compare-step.tsx';
import { EntryApart, EntryDock, EntryGrid } from './entry.tsx';
import { VisitFoot } from './foot.tsx';
import { Paper, SignOffBody } from './left.tsx';
import { MadeRow } from './made.tsx';
import { MovesStep } from './moves-step.tsx';
import { openStep, turnStep } from './open-step.ts';
import { PracticeButton, PracticeTold } from './practice-button.tsx';
import { ReadingBody } from './reading.tsx';
import { StandingDock, StandingList, useStandings } from './standing.tsx';
import { asksTorque, TorqueQuestion, trySignOff } from './torque-step.tsx';
import { TwoCorrections } from './two-corrections.tsx';

export interface StepProps {
  readonly view: VisitView;
}

export function Strip({ view }: StepProps) {
  const stage = stageOf(view);
  useEffect(() => {
    // What was up when the visit was left is up again.
    const place = document.querySelector('.standing-picked') ?? document.querySelector('.step-live');
    place?.scrollIntoView({ block: 'start' });
  }, [stage, view.rounds.length]);
  useEffect(() => {
    openStep.value = undefined;
  }, [stage, view.visit.id, view.rounds.length]);
  const last = view.rounds.at(-1);
  const past = (
    <>
      <CheckStep view={view} />
      {view.rounds.map((round, index) => (
        <PastRound key={round.record.id} view={view} round={round} index={index} stage={stage} />
      ))}
    </>
  );
  if (last && stage === 'moves') return <MovesStep view={view} round={last} past={past} />;
  if (last && stage === 'compare') return <CompareStep view={view} past={past} />;
  return (
    <>
      <Sheet>
        {past}
        <Live view={view} stage={stage} />
      </Sheet>
      <Dock view={view} stage={stage} />
    </>
  );
}

/** A round behind the live step: its reading and what was done, folded until touched. */
function PastRound({ view, round, index, stage }: StepProps & { round: RoundView; index: number; stage: Stage }) {
  const { id, reading } = round.record;
  const open = isWide() || openStep.value === id;
  const isLast = round === view.rounds.at(-1);
  const { methods: _, ...read } = reading;
  const count = Object.values(read).reduce(
    (sum: number, one) => sum + (typeof one === 'object' ? Object.keys(one).length : 0),
    0,
  );
  // The live step shows the last round's moves itself.
  const showMoves = round.moves.length > 0 && !(isLast && stage === 'moves');
  return (
    <>
      <PunchedStep
        state="done"
        title={index === 0 ? 'As found' : 'Re-measured'}
        note={`${count} reading${count === 1 ? '' : 's'}`}
        time={clock(round.record.at)}
        onPick={() => isWide() || turnStep(id)}
      >
        {open && <ReadingBody view={view} round={round} open={isLast && !view.visit.closed} />}
        <TwoCorrections view={view} round={round} />
      </PunchedStep>
      {showMoves && <PastMoves view={view} round={round} undo={isLast && stage === 'entry' && !anythingTyped(view)} />}
    </>
  );
}

function PastMoves({ view, round, undo }: StepProps & { readonly round: RoundView; readonly undo: boolean }) {
  const id = `moves:${round.record.id}`;
  const open = isWide() || openStep.value === id;
  const jobs = jobsMade(view.car.car, round.moves);
  const last = jobs.at(-1);
  return (
    <PunchedStep
      state="done"
      title="Moves"
      note={`${jobs.filter((job) => job.some(({ from, to }) => from !== to)).length} made`}
      time={last?.[0] ? clock(last[0].at) : ''}
      onPick={() => isWide() || turnStep(id)}
    >
      {open && jobs.map((job) => <MadeRow key={job[0]?.id} view={view} job={job} last={undo && job === last} />)}
    </PunchedStep>
  );
}

function Live({ view, stage }: StepProps & { readonly stage: Stage }) {
  switch (stage) {
    case 'entry':
      return (
        <PunchedStep state="live" title={entryTitle(view)} note="what the rack shows now">
          {view.rounds.length > 0 && !correcting(view) && (
            <p class="soft">Roll the car and let it settle, then measure again, caster with a new sweep, brake held.</p>
          )}
          <PracticeButton view={view} />
          <EntryGrid view={view} />
          <WaysOut view={view} />
        </PunchedStep>
      );
    case 'standing':
      return (
        <PunchedStep state="live" title="Where the adjusters stand">
          <EntryApart view={view} />
          <StandingList view={view} />
        </PunchedStep>
      );
    case 'sign-off':
      return (
        <PunchedStep state="live" title="As left">
          <PracticeTold view={view} />
          <SignOffBody view={view} />
        </PunchedStep>
      );
    default:
      return (
        <PunchedStep
          state="live"
          title="As left"
          note={isUnsigned(view.visit) ? 'not signed off' : 'signed off'}
          time={clock(view.visit.closed ?? '')}
        >
          <Paper view={view} />
          <PracticeTold view={view} />
          <VisitFoot view={view} />
        </PunchedStep>
      );
  }
}

/** A correction can be left alone, and a visit can end without a re-measure; both say so. */
function WaysOut({ view }: StepProps) {
  const last = view.rounds.at(-1);
  if (!last) return null;
  const leave = () => dropDraft(entryDraft(view.visit.id));
  if (correcting(view)) {
    return (
      <button type="button" class="quiet wide" onClick={leave}>
        Leave it as it was
      </button>
    );
  }
  if (isEarly(view)) {
    return anythingTyped(view) ? null : (
      <button type="button" class="quiet wide" onClick={leave}>
        {last.moves.length > 0 || view.rounds.length === 1 ? 'Back to the moves' : 'Back'}
      </button>
    );
  }
  const close = () => {
    leave();
    choose(view.visit.id, { signOff: last.record.id });
  };
  return anythingTyped(view) ? null : (
    <button type="button" class="quiet wide" onClick={close}>
      Close without a re-measure
    </button>
  );
}

const entryTitle = (view: VisitView): string =>
  correcting(view) ? 'Change a reading' : view.rounds.length > 0 ? 'Re-measure' : 'As found';

function Dock({ view, stage }: StepProps & { readonly stage: Stage }) {
  const { list } = useStandings(view);
  switch (stage) {
    case 'entry':
      return (
        <EntryDock
          view={view}
          actionLabel={view.rounds.length > 0 ? 'Compare with the plan' : 'Where the adjusters stand'}
          onReady={() => entryReady(view)}
        />
      );
    case 'standing':
      return <StandingDock view={view} onRight={() => takeDown(view, settingsOf(list), packsOf(list))} />;
    case 'sign-off':
      if (asksTorque(view)) return <TorqueQuestion view={view} />;
      return (
        <ActionBar
          primary={{ label: 'Sign off', onPress: () => trySignOff(view) }}
          secondary={[{ label: 'Back', onPress: () => choose(view.visit.id, { signOff: '' }) }]}
        />
      );
    default:
      return (
        <ActionBar
          primary={{ label: 'Print the sheet', onPress: () => print() }}
          secondary={[
            { label: 'Open again', onPress: () => openAgain(view) },
            { label: 'The car', onPress: () => go({ screen: 'car', id: view.car.id }) },
          ]}
        />
      );
  }
}
