/** The card of the job that is next: a picture of each of its moves, what the rack then shows, what to do, the torque. */
import type { Move, Plan } from '../../../core/contract.ts';
import { AXLES, axleOf, isAxle } from '../../../core/corners.ts';
import { angleOf } from '../../../core/reading/axle-angles.ts';
import { AdjusterDrawing } from '../../parts/adjuster-drawing.tsx';
import { Card } from '../../parts/card.tsx';
import { angleWord, fieldsOf } from '../../state/fields.ts';
import { formOfRecord } from '../../state/form.ts';
import { endOf, headingOf, isByRack, type Job, jobSaid } from '../../state/jobs.ts';
import { adjusterOf, stacks } from '../../state/move-words.ts';
import { units } from '../../state/preferences.ts';
import { choice, choose, torqueKey } from '../../state/stage.ts';
import { standingKey, UNKNOWN } from '../../state/standing.ts';
import { valueText } from '../../state/units.ts';
import { type RoundView, refKey, type VisitView } from '../../state/visits.ts';
import { AxleGone } from './axle-gone.tsx';
import { ByRack, Drawn } from './by-rack.tsx';
import { Answers, askFigure, isTyping, planFromHere } from './moves-dock.tsx';
import { SweepNote } from './sweep-note.tsx';
import { FigureText } from './torque-step.tsx';

interface Props {
  readonly view: VisitView;
  readonly round: RoundView;
  readonly job: Job;
}

export function LiveJob({ view, round, plan, job }: Props & { readonly plan: Plan }) {
  const { car } = view.car;
  const { where, title } = headingOf(car, job);
  const last = job.at(-1)!;
  const isUnknown = ({ corner, adjuster }: Move) => round.record.typed[standingKey(corner, adjuster)] === UNKNOWN;
  return (
    <Card tone="form" corner={where} title={title}>
      {job.map((move) => (
        <Picture key={refKey(move)} view={view} round={round} plan={plan} job={job} move={move} />
      ))}
      {(!job.some(isByRack) || isAxle(where)) && (
        <>
          <Expect view={view} round={round} job={job} />
          <SweepNote corner={last.corner} before={round.record.reading} after={last.expectAfter} />
        </>
      )}
      <AxleGone reading={last.expectAfter} axle={axleOf(last.corner)} />
      <p class="instruction">{jobSaid(car, job)}</p>
      {job.filter(isByRack).map((move) => (
        <Drawn key={refKey(move)} view={view} round={round} move={move} />
      ))}
      {job.some(isUnknown) && (
        <p class="soft">
          Where it stood was not known: turn it by this much from where it is. Its stop may come sooner.
        </p>
      )}
      <Torque view={view} round={round} job={job} />
      <Answers view={view} round={round} plan={plan} job={job} />
    </Card>
  );
}

/** One move drawn, or the figure that it is turned to; where there are several each says which it is. */
function Picture({ move, ...of }: Props & { readonly plan: Plan; readonly move: Move }) {
  const { view, round, job } = of;
  const { car } = view.car;
  const adjuster = adjusterOf(car, move);
  if (!adjuster) return null;
  const { corner, from, to } = move;
  const end = endOf(car, job, move);
  return (
    <div class="job-move">
      {end && <h3>{end}</h3>}
      {isByRack(move) ? (
        <ByRack
          view={view}
          round={round}
          move={move}
          onType={(angle) => askFigure(round, job, move, angle)}
          {...(!isTyping() && { onPlan: () => planFromHere(of) })}
        />
      ) : (
        <AdjusterDrawing
          adjuster={adjuster}
          corner={corner}
          from={from}
          to={to}
          units={units.value}
          {...stacks(adjuster, move)}
        />
      )}
    </div>
  );
}

/** One tick for the whole job. */
function Torque({ view: { visit, car }, round, job }: Props) {
  const keys = job.map((move) => torqueKey(round.record.id, move));
  const figures = new Set(job.flatMap((move) => adjusterOf(car.car, move)?.torque ?? []));
  return (
    <label class="torque">
      <input
        type="checkbox"
        checked={keys.every((key) => choice(visit.id, key) === 'yes')}
        onChange={(event) => {
          const ticked = event.currentTarget.checked ? 'yes' : '';
          choose(visit.id, Object.fromEntries(keys.map((key) => [key, ticked])));
        }}
      />
      <span>
        Torqued already: <FigureText figures={[...figures]} />
        <small class="soft torque-order">Else snug for now: it is asked for at ride height, before sign-off.</small>
      </span>
    </label>
  );
}

/** What the rack reads once the job is done, at its wheel or at both, in the form in which it was measured. */
function Expect({ view, round, job }: Props) {
  const { car } = view.car;
  const { where } = headingOf(car, job);
  const { expectAfter, corner } = job.at(-1)!;
  const places = isAxle(where) ? [...AXLES[where], where] : [corner, axleOf(corner)];
  const shown = fieldsOf(car, formOfRecord(round.record)).flatMap(({ id, where: at, angle }) => {
    // One part that both wheels hang on sets their toe and nothing else.
    const told = places.includes(at) && (job.length > 1 || !isAxle(where) || isAxle(at) || angle === 'toe');
    const value = told ? angleOf(expectAfter, at, angle) : undefined;
    const of = isAxle(where) && !isAxle(at) ? `${at} ` : '';
    return value === undefined ? [] : [{ id, angle, value, name: `${of}${nameOf(angle)}` }];
  });
  if (shown.length === 0) return null;
  return (
    <section class="expect" aria-label="What the rack will show">
      <h3 class="soft">When it is right, the rack shows</h3>
      <dl>
        {shown.map(({ id, name, angle, value }) => (
          <div key={id}>
            <dt>{name}</dt>
            <dd>{valueText(angle, value, car.wheel.rimDiameter)}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

const nameOf = (angle: Parameters<typeof angleWord>[0]): string =>
  angle === 'sai' ? 'SAI' : angleWord(angle).toLowerCase();
