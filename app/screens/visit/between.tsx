/**
 * A reading between two moves, offered where it pays: what the first moves do tells how the car is built, and a turn of an
 * adjuster of unknown place where it stands.
 */

import { jobsOf } from '../../../core/adjuster/job.ts';
import type { Plan } from '../../../core/contract.ts';
import type { TurnsThatTell, WatchedTurn } from '../../../core/index.ts';
import type { MoveRecord } from '../../../core/records/stored.ts';
import { Card } from '../../parts/card.tsx';
import { headingOf, jobsLeft } from '../../state/jobs.ts';
import { measureNow } from '../../state/measure-now.ts';
import { chanceText, nameIn } from '../../state/move-words.ts';
import { useMeasureBetween } from '../../state/planning.ts';
import { units } from '../../state/preferences.ts';
import { keep, records } from '../../state/records.ts';
import { moveId } from '../../state/same-id.ts';
import { type RoundView, refKey, type VisitView } from '../../state/visits.ts';
import { words } from '../../state/words.ts';
import { now } from '../../store/index.ts';

interface Props {
  readonly view: VisitView;
  readonly round: RoundView;
  readonly plan: Plan;
  /** Of adjusters of unknown place, where there are such. */
  readonly turns: TurnsThatTell | undefined;
}

/** A plan that is surer is not asked about. */
const SURE = 0.85;
const NONE: TurnsThatTell = { watch: [], lost: [] };

export function Between({ view, round, plan, turns: { watch, lost } = NONE }: Props) {
  const { first } = useMeasureBetween(view, round, plan.inWindow && plan.chance < SURE).value ?? {};
  const made = jobsOf(plan.moves).length - jobsLeft(plan, round).length;
  const names = lost.map((ref) => `${ref.corner} ${nameIn(view.car.car, ref)}`);
  return (
    <>
      {watch.map((turn) => (
        <Watch key={refKey(turn)} view={view} round={round} turn={turn} />
      ))}
      {lost.length > 0 && (
        <Card tone="caution" title="Left alone: nobody knows where it stands">
          <p>
            {names.join(', ')}. What turning it does hangs on where it stands: look at its mark and correct the reading,
            or set it to its middle or to a number and measure again.
          </p>
        </Card>
      )}
      {first && made <= first.jobs && (
        <Card tone="live" title={made < first.jobs ? 'A reading in between pays' : 'Measure now, it pays'}>
          <p class={made < first.jobs ? 'between' : 'between between-now'}>
            <span>
              {made < first.jobs
                ? `Make ${first.jobs === 1 ? 'the first move' : `the first ${first.jobs} moves`}, as far as ${headingText(view, first.last)}, and measure: what ${first.jobs === 1 ? 'it does' : 'they do'} tells how this car is built, and the rest comes surer.`
                : `What ${first.jobs === 1 ? 'this move' : 'these moves'} did tells how the car is built. The rest is planned again with that.`}
            </span>
            <strong>
              <small class="soft">{chanceText(first.now)} → about</small> {chanceText(first.after)}
            </strong>
          </p>
          {made === first.jobs && (
            <button type="button" class="cause-yes wide" onClick={() => measureNow(view)}>
              Measure now
            </button>
          )}
        </Card>
      )}
    </>
  );
}

function headingText({ car }: VisitView, job: Parameters<typeof headingOf>[1]): string {
  const { where, title } = headingOf(car.car, job);
  return `${where} ${title}`;
}

/** An adjuster of which nobody knows where it stands: turned and measured it is found. */
function Watch({ view, round, turn }: Pick<Props, 'view' | 'round'> & { readonly turn: WatchedTurn }) {
  const { car } = view.car;
  const { where, title } = headingOf(car, [turn]);
  const [more, less] = turn.to;
  return (
    <Card tone="live" corner={turn.corner} title="Turn this one first, and measure">
      <p>
        Nobody knows where {where} {title} stands, and what turning it does hangs on that. Turn it{' '}
        <strong>{words.step(turn.said, units.value)}</strong>, or as much the other way where its stop comes first, and
        measure: then it is planned with the rest. Or look at its mark and correct the reading.
      </p>
      <div class="pair">
        <button type="button" class="cause-yes" onClick={() => watched(view, round, turn, more)}>
          Turned towards +
        </button>
        <button type="button" class="quiet" onClick={() => watched(view, round, turn, less)}>
          Turned towards −
        </button>
      </div>
    </Card>
  );
}

/** What was turned is on record, counted from where nobody knows; then it is measured. */
function watched(view: VisitView, round: RoundView, { corner, adjuster, from }: WatchedTurn, to: number): void {
  const all = records.value.moves;
  const move: Omit<MoveRecord, 'id' | 'at'> = {
    ...{ visitId: view.visit.id, readingId: round.record.id, corner, adjuster },
    ...{ from, to, outcome: 'done' },
  };
  const id = moveId(all, move);
  if (!all.some((one) => one.id === id)) keep(['moves', { ...move, id, at: now() }]);
  measureNow(view);
}
