/** As left: before and after on one sheet to print, what must still be done, and the cautions. */
import { ANGLES, type AxleName, CORNERS, type Corner, type Reading } from '../../../core/contract.ts';
import { axleOf, isAxle } from '../../../core/corners.ts';
import { type AssessedAngle, assess } from '../../../core/reading/assess.ts';
import { angleOf } from '../../../core/reading/axle-angles.ts';
import { angleAgainst, readAgainst, referenceOf, type ToeReference } from '../../../core/reading/toe-reference.ts';
import type { MoveRecord } from '../../../core/records/stored.ts';
import { useAfterPaint } from '../../parts/after-paint.tsx';
import { Plate } from '../../parts/plate.tsx';
import { Verdict } from '../../parts/verdict.tsx';
import { againstText, lineText } from '../../state/against.ts';
import { fullTime } from '../../state/days.ts';
import { canTotal, fieldsOf } from '../../state/fields.ts';
import { formOfRecord } from '../../state/form.ts';
import { headingOf, jobStands, jobsMade, jobWay } from '../../state/jobs.ts';
import { markOf, placeWord, verdictOf, windowOf } from '../../state/judge.ts';
import { measuredWith } from '../../state/methods.ts';
import { noteOf } from '../../state/move-note.ts';
import { adjusterOf } from '../../state/move-words.ts';
import { shopName, units } from '../../state/preferences.ts';
import { isTicked } from '../../state/sign-off.ts';
import { choice, choose } from '../../state/stage.ts';
import { untorquedOf } from '../../state/torque.ts';
import { toeUnitWord, valueText } from '../../state/units.ts';
import { isUnsigned } from '../../state/unsigned.ts';
import { odometerText, technicianOf } from '../../state/visit-notes.ts';
import { leftReading, leftRecord, type VisitView } from '../../state/visits.ts';
import { CHECKS } from './check-list.ts';
import { TorqueStep } from './torque-step.tsx';

const REMINDERS = [
  ['torque', 'Every fastener that was loosened is torqued to the maker’s figure, the car at ride height'],
  ['locks', 'Lock nuts tight, thread engagement and shim stacks within the maker’s limits'],
  ['wheel', 'Steering wheel straight, and its clamp off'],
  ['nuts', 'Wheel nuts torqued in the maker’s order'],
  ['sensor', 'Steering-angle sensor set'],
  ['assist', 'Driver-assistance sensors calibrated, where the car has them'],
  ['road', 'Road test done'],
] as const;

export function SignOffBody({ view }: { readonly view: VisitView }) {
  const painted = useAfterPaint();
  const isDone = (id: string): boolean => choice(view.visit.id, `left:${id}`) === 'yes';
  const tick = (ids: readonly string[], on: boolean) =>
    choose(view.visit.id, Object.fromEntries(ids.map((id) => [`left:${id}`, on ? 'yes' : ''])));
  const open = REMINDERS.map(([id]) => id).filter((id) => !isDone(id));
  return (
    <>
      <TorqueStep view={view} />
      <fieldset class="ticks">
        <legend>Before it goes</legend>
        {REMINDERS.map(([id, text]) => (
          <label key={id}>
            <input type="checkbox" checked={isDone(id)} onChange={(event) => tick([id], event.currentTarget.checked)} />
            <span>{text}</span>
          </label>
        ))}
        {open.length > 1 && (
          <button type="button" class="quiet wide" onClick={() => tick(open, true)}>
            All {REMINDERS.length} are done
          </button>
        )}
      </fieldset>
      {painted && <Paper view={view} />}
    </>
  );
}

/** The before-and-after sheet: what prints. It is the customer’s: where to look for a bent part is not said on it. */
export function Paper({ view }: { readonly view: VisitView }) {
  const { car } = view.car;
  const [first] = view.rounds;
  const found = first?.record.reading ?? {};
  const left = leftReading(view) ?? {};
  const shown = leftRecord(view) ?? first?.record;
  // Found and left are seen from the same line.
  const reference = referenceOf(shown?.reading ?? {});
  return (
    <section class="paper" aria-label="Before and after">
      {shopName.value && <p class="paper-shop">{shopName.value}</p>}
      <header class="paper-head">
        <strong>{car.label}</strong>
        {car.plate && <Plate text={car.plate} />}
      </header>
      <OfTheVisit view={view} />
      <p class="soft">
        Found {fullTime(view.rounds[0]?.record.at ?? view.visit.opened)}
        {view.visit.closed && <>, left {fullTime(view.visit.closed)}</>}. Toe in {toeUnitWord()}.{' '}
        {shown && againstText(shown)}
        {!readAgainst(found, reference) &&
          ` As found it was against ${lineText(referenceOf(found))} without rear toe, and cannot be compared.`}
      </p>
      <table class="paper-table">
        <thead>
          <tr>
            <th scope="col">Angle</th>
            <th scope="col">Found</th>
            <th scope="col">Left</th>
            <th scope="col">Window</th>
          </tr>
        </thead>
        <tbody>
          {rowsOf(view, found, left, reference).map((row) => (
            <tr key={row.name}>
              <th scope="row">{row.name}</th>
              <td>{row.found}</td>
              <td>
                <span class="paper-left">
                  {row.left} <Verdict state={row.verdict} />
                </span>
              </td>
              <td>{row.window}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Measured found={found} left={left} />
      {isUnsigned(view.visit) && <p class="caution-line">Closed as it stood: not signed off.</p>}
      {!leftReading(view) && <p class="caution-line">Not measured after the moves.</p>}
      <MovesMade view={view} />
      <Ticked view={view} />
    </section>
  );
}

/** Whose it is and what else is on file of the car and the visit, where it is. */
function OfTheVisit({ view: { car: record, visit } }: { readonly view: VisitView }) {
  const { customer, vin, tyres } = record.car;
  const facts = {
    Customer: customer,
    VIN: vin,
    Odometer: odometerText(visit),
    Tyres: tyres,
    Technician: technicianOf(visit),
  };
  const said = Object.entries(facts).flatMap(([name, text]) => (text ? [`${name}: ${text}`] : []));
  return said.length > 0 ? <p class="paper-note">{said.join('. ')}.</p> : null;
}

function rowsOf(view: VisitView, found: Reading, left: Reading, reference: ToeReference) {
  const { car, spec } = view.car;
  const show = (angle: string, value: number | undefined) =>
    value === undefined ? '–' : valueText(angle, value, car.wheel.rimDiameter);
  const total = view.rounds.some(({ record }) => formOfRecord(record).total);
  // Half of a total was not read off the wheel, and that the axle runs straight was taken for granted.
  const isTaken = (where: Corner | AxleName, angle: string): boolean =>
    total && (angle === 'toe' || angle === 'thrustAngle') && canTotal(car, isAxle(where) ? where : axleOf(where));
  const judged = inRackOrder(assess(left, spec).angles).filter(({ where, angle }) => !isTaken(where, angle));
  const others = fieldsOf(car, { sai: true, total, axle: true, wheel: true, heights: true })
    .filter(({ where, angle }) => !judged.some((one) => one.where === where && one.angle === angle))
    .filter(({ where, angle }) => [found, left].some((one) => angleOf(one, where, angle) !== undefined));
  return [
    ...judged.map(({ where, angle, value, window, state }) => ({
      name: placeWord(car, where, angle),
      found: show(angle, angleAgainst(found, where, angle, reference)),
      left: show(angle, value),
      window: `${show(angle, window.low)} to ${show(angle, window.high)}`,
      verdict: markOf(state),
    })),
    ...others.map((field) => {
      const { where, angle } = field;
      const value = angleOf(left, where, angle);
      const window = windowOf(spec, field);
      return {
        name: angle === 'steeringWheel' ? 'steering wheel, + right' : placeWord(car, where, angle),
        found: show(angle, angleAgainst(found, where, angle, reference)),
        left: show(angle, value),
        window: window ? `${show(angle, window.low)} to ${show(angle, window.high)}` : '',
        verdict: value !== undefined && window ? verdictOf(value, window) : ('unknown' as const),
      };
    }),
  ];
}

/** Wheel by wheel, caster first, as a rack shows them; the axle's own angles after its wheels. */
function inRackOrder(list: readonly AssessedAngle[]): readonly AssessedAngle[] {
  const places = [...CORNERS.slice(0, 2), 'front', ...CORNERS.slice(2), 'rear'];
  const rank = ({ where, angle }: AssessedAngle) =>
    places.indexOf(where) * 10 + (ANGLES as readonly string[]).indexOf(angle);
  return [...list].sort((a, b) => rank(a) - rank(b));
}

/** As BS AU 50 Part 2 Section 7a:1995 asks, as restated: 40 to 80 km. */
const distance = (): string => (units.value.length === 'inch' ? '25 to 50 miles' : '40 to 80 km');

/** What was not read off the rack, how it was, and how sure that is. */
function Measured({ found, left }: { readonly found: Reading; readonly left: Reading }) {
  const [before, after] = [found, left].map(measuredWith);
  const said = [
    ...(before?.length ? [`Found: ${before.join('; ')}`] : []),
    ...(after?.length ? [`Left: ${after.join('; ')}`] : []),
  ];
  if (said.length === 0) return null;
  return <p class="paper-note">Measured without the rack. {said.join('. ')}.</p>;
}

/** What was ticked and noted, for the paper. */
function Ticked({ view }: { readonly view: VisitView }) {
  const ticked = REMINDERS.filter(([id]) => isTicked(view, `left:${id}`)).map(([, text]) => text);
  const untorqued = untorquedOf(view);
  const notes = CHECKS.flatMap(([id, label]) => {
    const note = view.visit.checks?.[id];
    return note && note !== 'ok' ? [`${label}: ${note}`] : [];
  });
  return (
    <>
      {notes.length > 0 && <p class="paper-note">Noted before measuring: {notes.join('; ')}.</p>}
      {untorqued.length > 0 && (
        <p class="caution-line">
          {view.visit.closed ? 'Signed off without being ticked as torqued: ' : 'Not ticked as torqued: '}
          {untorqued.map(({ name }) => name).join('; ')}.
        </p>
      )}
      {ticked.length > 0 && <p class="paper-note">Ticked: {ticked.join('; ')}.</p>}
      <p class="paper-note">Have the wheel nuts checked again after {distance()}.</p>
      <p class="soft paper-note">
        Torque every fastener to the maker’s figure, measure again, then road test. The maker’s service information goes
        before this sheet.
      </p>
    </>
  );
}

function MovesMade({ view }: { readonly view: VisitView }) {
  const { car } = view.car;
  const made = view.rounds.flatMap(({ moves }) => moves);
  if (made.length === 0) return <p>No adjuster was moved.</p>;
  return (
    <ol class="paper-moves">
      {jobsMade(car, made).map((job) => {
        const [first] = job as readonly [MoveRecord];
        if (!adjusterOf(car, first)) return null;
        const { where, title } = headingOf(car, job);
        return (
          <li key={first.id}>
            {where} {title}:{' '}
            {first.outcome === 'wont-move' ? `would not move from ${jobStands(car, job)}` : jobWay(car, job)}
            {noteOf(view, job) && `; ${noteOf(view, job)}`}
          </li>
        );
      })}
    </ol>
  );
}
