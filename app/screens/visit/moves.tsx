/** The moves of a round, one card each in working order: what to turn, from where to where, what the rack then reads. */
import { signal } from '@preact/signals';
import type { Move, Plan, Position } from '../../../core/contract.ts';
import type { MoveRecord } from '../../../core/records/stored.ts';
import { ActionBar } from '../../parts/action-bar.tsx';
import { Card } from '../../parts/card.tsx';
import { CornerMark } from '../../parts/corner-mark.tsx';
import { placeWord } from '../../state/judge.ts';
import { adjusterOf, chanceText, movesLeft, wayText } from '../../state/move-words.ts';
import { builtOf } from '../../state/packs.ts';
import { keep } from '../../state/records.ts';
import { choice, torqueKey } from '../../state/stage.ts';
import { unknownPlaces } from '../../state/unknown-places.ts';
import { type RoundView, refKey, type VisitView } from '../../state/visits.ts';
import { words } from '../../state/words.ts';
import { newId, now } from '../../store/index.ts';
import { LiveMove } from './live-move.tsx';
import { Made } from './made.tsx';
import { PlanChoiceCard } from './plan-choice.tsx';
import { ReachCards } from './reach.tsx';
import { ShortfallCard } from './shortfall.tsx';
import { Stepper } from './stepper.tsx';
import { WhatElseCard } from './what-else.tsx';

/** The position being chosen under "Set to…"; undefined while the card shows its three answers. */
const setTo = signal<{ readonly move: string; readonly position: Position } | undefined>(undefined);

interface Props {
  readonly view: VisitView;
  readonly round: RoundView;
  readonly plan: Plan;
}

export function MovesBody({ view, round, plan }: Props) {
  const left = movesLeft(plan, round);
  const live = left[0];
  return (
    <>
      <Headline view={view} round={round} plan={plan} />
      <Unknown view={view} round={round} />
      <Made view={view} moves={round.moves} />
      {live && <LiveMove view={view} round={round} move={live} />}
      {left.slice(1).map((move) => (
        <LaterRow key={refKey(move)} view={view} round={round} plan={plan} move={move} />
      ))}
      {round.done.length === 0 && plan.moves.length > 0 && <PlanChoiceCard view={view} round={round} />}
      <ReachCards view={view} round={round} plan={plan} />
      <WhatElseCard car={view.car.car} plan={plan} />
    </>
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
      {plan.notes.map((note) => (
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

/** What is not planned with, as nobody knows where it stands, and what to do about it. */
function Unknown({ view, round }: Omit<Props, 'plan'>) {
  const unknown = unknownPlaces(view, round);
  if (unknown.length === 0) return null;
  const names = unknown.map((ref) => `${ref.corner} ${adjusterOf(view.car.car, ref)?.name ?? ref.adjuster}`);
  return (
    <Card tone="caution" title="Left alone: nobody knows where it stands">
      <p>
        {names.join(', ')}. What turning it does hangs on where it stands: look at its mark and correct the reading, or
        set it to its middle or to a number and measure again.
      </p>
    </Card>
  );
}

/** A move to come. What must not be touched is left alone before its turn comes: the rest is planned without it. */
function LaterRow({ move, ...props }: Props & { readonly move: Move }) {
  const adjuster = adjusterOf(props.view.car.car, move);
  const name = adjuster?.name ?? move.adjuster;
  return (
    <p class="move-row">
      <CornerMark corner={move.corner} />
      <span>
        {name}
        <strong class="move-way">{adjuster ? wayText(adjuster, move) : ''}</strong>
      </span>
      <button
        type="button"
        class="move-leave"
        aria-label={`Leave ${move.corner} ${name} alone`}
        onClick={() => mark(props, move, move.from, 'wont-move')}
      >
        Leave
      </button>
    </p>
  );
}

function mark({ view, round }: Props, move: Move, to: Position, outcome: MoveRecord['outcome']): void {
  const { corner, adjuster, from } = move;
  const shims = outcome === 'done' ? builtOf(move) : undefined;
  setTo.value = undefined;
  const ids = { id: newId(), visitId: view.visit.id, readingId: round.record.id, at: now() };
  keep(['moves', { ...ids, corner, adjuster, from, to, outcome, ...(shims && { shims }) }]);
}

/** The three answers to the live card. */
export function MovesDock(props: Props & { readonly whenNone: preact.ComponentChildren }) {
  const { view, round, plan, whenNone } = props;
  const move = movesLeft(plan, round)[0];
  const adjuster = move && adjusterOf(view.car.car, move);
  if (!move || !adjuster) return <>{whenNone}</>;
  const key = `${round.record.id} ${refKey(move)}`;
  const choosing = setTo.value?.move === key ? setTo.value : undefined;
  if (choosing) {
    return (
      <Stepper
        caption={`${move.corner} ${adjuster.name}: what is it set to?`}
        adjuster={adjuster}
        position={choosing.position}
        onChange={(position) => {
          setTo.value = { move: key, position };
        }}
        actions={[
          {
            label: 'Back',
            onPress: () => {
              setTo.value = undefined;
            },
          },
          {
            label: 'Plan from here',
            main: true,
            onPress: () => mark(props, move, choosing.position, choosing.position === move.to ? 'done' : 'set-to'),
          },
        ]}
      />
    );
  }
  const torqued = choice(view.visit.id, torqueKey(round.record.id, move)) === 'yes';
  return (
    <ActionBar
      primary={{ label: torqued ? 'Done, torqued' : 'Done', onPress: () => mark(props, move, move.to, 'done') }}
      secondary={[
        { label: 'Won’t move', onPress: () => mark(props, move, move.from, 'wont-move') },
        {
          label: 'Set to…',
          onPress: () => {
            setTo.value = { move: key, position: move.to };
          },
        },
      ]}
    />
  );
}
