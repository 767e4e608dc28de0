/** The moves of a round, one card each in working order: what to turn, from where to where, what the rack then reads. */
import { signal } from '@preact/signals';
import type { Move, Plan, Position, WheelReading } from '../../../core/contract.ts';
import { ANGLES } from '../../../core/contract.ts';
import type { MoveRecord } from '../../../core/records/stored.ts';
import { ActionBar } from '../../parts/action-bar.tsx';
import { AdjusterDrawing } from '../../parts/adjuster-drawing.tsx';
import { Card } from '../../parts/card.tsx';
import { CornerMark } from '../../parts/corner-mark.tsx';
import { adjusterOf, movesLeft, shortfallText, stacks, wayText } from '../../state/move-words.ts';
import { dropDraft, keep } from '../../state/records.ts';
import { choice, choose, entryDraft, torqueKey } from '../../state/stage.ts';
import { positionText, standingKey, UNKNOWN } from '../../state/standing.ts';
import { valueText } from '../../state/units.ts';
import { type RoundView, refKey, type VisitView } from '../../state/visits.ts';
import { newId, now } from '../../store/index.ts';
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
      <Headline view={view} plan={plan} />
      <Made view={view} moves={round.moves} />
      {live && <LiveMove view={view} round={round} move={live} />}
      {left.slice(1).map((move) => (
        <LaterRow key={refKey(move)} view={view} move={move} />
      ))}
      {round.done.length === 0 && plan.moves.length > 0 && <Styles view={view} />}
      <WhatElseCard car={view.car.car} plan={plan} />
    </>
  );
}

/** The chance in large figures; what the windows cannot have, in words. */
function Headline({ view, plan }: Omit<Props, 'round'>) {
  return (
    <>
      {plan.inWindow ? (
        <p class="chance">
          <span>Chance that the re-measure is all in the window</span>
          <strong>{percent(plan.chance)}</strong>
        </p>
      ) : (
        <Card tone="caution" title="The windows cannot all be reached">
          <p>This is the nearest that the adjusters allow.</p>
          <ul>
            {plan.shortfall.map((one) => (
              <li key={`${one.where} ${one.angle}`}>{shortfallText(view.car.car, one)}</li>
            ))}
          </ul>
        </Card>
      )}
      {plan.notes.map((note) => (
        <p key={note} class="plan-note">
          {note}
        </p>
      ))}
      {plan.unmeasured.length > 0 && (
        <p class="soft">
          Not judged, as not measured: {plan.unmeasured.map(({ where, angle }) => `${where} ${angle}`).join(', ')}.
        </p>
      )}
    </>
  );
}

/** The other plan, beside the one shown; once a move of it is made it is kept to. */
function Styles({ view }: { readonly view: VisitView }) {
  const style = choice(view.visit.id, 'style') || 'closest';
  return (
    <fieldset class="choice">
      <legend>Which plan</legend>
      {(
        [
          ['closest', 'Closest to the aim'],
          ['least-work', 'Least work'],
        ] as const
      ).map(([id, label]) => (
        <button key={id} type="button" aria-pressed={style === id} onClick={() => choose(view.visit.id, { style: id })}>
          {label}
        </button>
      ))}
    </fieldset>
  );
}

/** What is made already: the last move open to being taken back, the ones before it folded away. */
function Made({ view, moves }: { readonly view: VisitView; readonly moves: readonly MoveRecord[] }) {
  const last = moves.at(-1);
  const before = moves.slice(0, -1);
  return (
    <>
      {before.length > 0 && (
        <details class="made">
          <summary>{before.length} made before</summary>
          {before.map((move) => (
            <MadeRow key={move.id} view={view} move={move} last={false} />
          ))}
        </details>
      )}
      {last && <MadeRow view={view} move={last} last />}
    </>
  );
}

/** Never 100 %, never 0 %: a model is not a promise. */
const percent = (chance: number): string => `${Math.min(99, Math.max(1, Math.round(chance * 100)))} %`;

function LiveMove({ view, round, move }: Omit<Props, 'plan'> & { readonly move: Move }) {
  const adjuster = adjusterOf(view.car.car, move);
  if (!adjuster) return null;
  const torqued = torqueKey(round.record.id, move);
  return (
    <Card tone="form" corner={move.corner} title={adjuster.name}>
      <AdjusterDrawing
        adjuster={adjuster}
        corner={move.corner}
        from={move.from}
        to={move.to}
        {...stacks(adjuster, move)}
      />
      <Expect reading={move.expectAfter[move.corner]} rim={view.car.car.wheel.rimDiameter} />
      <p class="instruction">{move.instruction}</p>
      {round.record.typed[standingKey(move.corner, move.adjuster)] === UNKNOWN && (
        <p class="soft">
          Where it stood was not known: turn it by this much from where it is. Its stop may come sooner.
        </p>
      )}
      <label class="torque">
        <input
          type="checkbox"
          checked={choice(view.visit.id, torqued) === 'yes'}
          onChange={(event) => choose(view.visit.id, { [torqued]: event.currentTarget.checked ? 'yes' : '' })}
        />
        {adjuster.torque ? (
          <span>
            Torque: <strong>maker’s figure, yours on file: {adjuster.torque}</strong>
          </span>
        ) : (
          <span>Tightened to the maker’s figure. None on file for this car.</span>
        )}
      </label>
    </Card>
  );
}

/** What the rack reads at this wheel once the move is made. */
function Expect({ reading, rim }: { readonly reading: WheelReading | undefined; readonly rim: number }) {
  if (!reading) return null;
  return (
    <section class="expect" aria-label="What the rack will show">
      <h3 class="soft">When it is right, the rack shows</h3>
      <dl>
        {ANGLES.filter((angle) => reading[angle] !== undefined).map((angle) => (
          <div key={angle}>
            <dt>{angle === 'sai' ? 'SAI' : angle}</dt>
            <dd>{valueText(angle, reading[angle] ?? 0, rim)}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

function LaterRow({ view, move }: { readonly view: VisitView; readonly move: Move }) {
  const adjuster = adjusterOf(view.car.car, move);
  return (
    <p class="move-row">
      <CornerMark corner={move.corner} />
      <span>
        {adjuster?.name ?? move.adjuster}
        <strong class="move-way">{adjuster ? wayText(adjuster, move) : ''}</strong>
      </span>
    </p>
  );
}

const OUTCOME = { done: 'done', 'wont-move': 'won’t move', 'set-to': 'set' } as const;

/** A move that was made, with the last one open to being taken back. */
export function MadeRow({
  view,
  move,
  last,
}: {
  readonly view: VisitView;
  readonly move: MoveRecord;
  readonly last: boolean;
}) {
  const adjuster = adjusterOf(view.car.car, move);
  const stays = adjuster && move.outcome === 'wont-move';
  const way = stays
    ? positionText(adjuster, move.from)
    : adjuster
      ? wayText(adjuster, move)
      : `${move.from} → ${move.to}`;
  return (
    <p class="move-row move-made">
      <CornerMark corner={move.corner} />
      <span>
        {adjuster?.name ?? move.adjuster}
        <span class="soft move-way">
          {way}, {OUTCOME[move.outcome]}
        </span>
      </span>
      {last && (
        <button type="button" class="quiet" onClick={() => takeBack(move)}>
          Undo
        </button>
      )}
    </p>
  );
}

/** A mark taken back is a record that replaces it and moves nothing. */
function takeBack(move: MoveRecord): void {
  // The re-measure that opened by itself when all was marked closes again; it offers no undo once a digit is typed.
  dropDraft(entryDraft(move.visitId));
  keep(['moves', { ...move, id: newId(), at: now(), to: move.from, outcome: 'done', replaces: move.id }]);
}

function mark(
  { view, round }: Props,
  { corner, adjuster, from }: Move,
  to: Position,
  outcome: MoveRecord['outcome'],
): void {
  setTo.value = undefined;
  const ids = { id: newId(), visitId: view.visit.id, readingId: round.record.id, at: now() };
  keep(['moves', { ...ids, corner, adjuster, from, to, outcome }]);
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
