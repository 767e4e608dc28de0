/** The card of the job that is next: a picture of each of its moves, what the rack then shows, what to do, the torque. */
import type { Car, Move } from '../../../core/contract.ts';
import { AXLES, axleOf, isAxle } from '../../../core/corners.ts';
import { angleOf } from '../../../core/reading/axle-angles.ts';
import { AdjusterDrawing } from '../../parts/adjuster-drawing.tsx';
import { Card } from '../../parts/card.tsx';
import { angleWord, fieldsOf } from '../../state/fields.ts';
import { formOfRecord } from '../../state/form.ts';
import { endOf, headingOf, type Job, jobSaid } from '../../state/jobs.ts';
import { adjusterOf, stacks } from '../../state/move-words.ts';
import { choice, choose, torqueKey } from '../../state/stage.ts';
import { standingKey, UNKNOWN } from '../../state/standing.ts';
import { valueText } from '../../state/units.ts';
import { type RoundView, refKey, type VisitView } from '../../state/visits.ts';
import { AxleGone } from './axle-gone.tsx';
import { SweepNote } from './sweep-note.tsx';

interface Props {
  readonly view: VisitView;
  readonly round: RoundView;
  readonly job: Job;
}

export function LiveJob({ view, round, job }: Props) {
  const { car } = view.car;
  const { where, title } = headingOf(car, job);
  const last = job.at(-1)!;
  const isUnknown = ({ corner, adjuster }: Move) => round.record.typed[standingKey(corner, adjuster)] === UNKNOWN;
  return (
    <Card tone="form" corner={where} title={title}>
      {job.map((move) => (
        <Picture key={refKey(move)} car={car} job={job} move={move} />
      ))}
      <Expect view={view} round={round} job={job} />
      <SweepNote corner={last.corner} before={round.record.reading} after={last.expectAfter} />
      <AxleGone reading={last.expectAfter} axle={axleOf(last.corner)} />
      <p class="instruction">{jobSaid(job)}</p>
      {job.some(isUnknown) && (
        <p class="soft">
          Where it stood was not known: turn it by this much from where it is. Its stop may come sooner.
        </p>
      )}
      <Torque view={view} round={round} job={job} />
    </Card>
  );
}

/** One move drawn; where there are several each says which it is. */
function Picture({ car, job, move }: { readonly car: Car; readonly job: Job; readonly move: Move }) {
  const adjuster = adjusterOf(car, move);
  if (!adjuster) return null;
  const { corner, from, to } = move;
  const end = endOf(car, job, move);
  return (
    <div class="job-move">
      {end && <h3>{end}</h3>}
      <AdjusterDrawing adjuster={adjuster} corner={corner} from={from} to={to} {...stacks(adjuster, move)} />
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
      {figures.size > 0 ? (
        <span>
          Torque: <strong>maker’s figure, yours on file: {[...figures].join('; ')}</strong>
        </span>
      ) : (
        <span>Tightened to the maker’s figure. None on file for this car.</span>
      )}
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
