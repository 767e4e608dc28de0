/** Jobs of a plan and of what was made, as the cards show them: moves that are done in one go are one. */
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import { jobOf, jobsOf } from '../../core/adjuster/job.ts';
import { adjustersOf, isOnce } from '../../core/adjuster/of-corner.ts';
import {
  type AdjusterRef,
  type AxleName,
  type Car,
  CORNERS,
  type Corner,
  type Move,
  type Plan,
  type SetByRack,
} from '../../core/contract.ts';
import { axleOf } from '../../core/corners.ts';
import type { MoveRecord } from '../../core/records/stored.ts';
import type { JobPart } from '../../core/said.ts';
import type { Left } from './leave.ts';
import { adjusterOf, nameIn, wayText } from './move-words.ts';
import { units } from './preferences.ts';
import { positionText } from './standing.ts';
import { figureText, valueText } from './units.ts';
import { type RoundView, refKey, sameRef } from './visits.ts';
import { words } from './words.ts';

/** Never empty; in working order. */
export type Job = readonly Move[];

/** What is still to be marked of the plan's jobs. */
export const jobsLeft = (plan: Plan, round: RoundView): readonly Job[] =>
  jobsOf(plan.moves)
    .map((job) => job.filter((move) => !round.done.some((made) => sameRef(made, move))))
    .filter((job) => job.length > 0);

/** What was marked with one touch stands together. */
export function jobsMade(car: Car, moves: readonly MoveRecord[]): readonly (readonly MoveRecord[])[] {
  const marked = moves.map((move) => {
    const job = jobOf(car, move);
    return { move, ...(job && { job: { ...job, id: `${job.id} ${move.at} ${move.outcome}` } }) };
  });
  return jobsOf(marked).map((job) =>
    asFitted(
      car,
      job.map(({ move }) => move),
    ),
  );
}

/** Marked at the same time, they stand as the card had them: left before right, as the car's adjusters are listed. */
function asFitted<T extends AdjusterRef>(car: Car, job: readonly T[]): readonly T[] {
  const place = ({ corner, adjuster }: AdjusterRef): number =>
    100 * CORNERS.indexOf(corner) + adjustersOf(car, corner).findIndex(({ id }) => id === adjuster);
  return [...job].sort((a, b) => place(a) - place(b));
}

/** Adjusters, those that would be one job together. */
export function inJobs(car: Car, refs: readonly AdjusterRef[]): readonly (readonly AdjusterRef[])[] {
  const jobs = new Map<string, AdjusterRef[]>();
  for (const ref of refs) {
    const id = jobOf(car, ref)?.id ?? refKey(ref);
    jobs.set(id, [...(jobs.get(id) ?? []), ref]);
  }
  return [...jobs.values()];
}

/** What a card is headed with. */
export interface Heading {
  readonly where: Corner | AxleName;
  readonly title: string;
}

/** "LF Tie rod", "LF Upper arm, front and rear", "rear Lower link, both sides" */
export function headingOf(car: Car, job: readonly AdjusterRef[]): Heading {
  const [first] = job as readonly [AdjusterRef];
  const adjuster = adjusterOf(car, first);
  const name = nameIn(car, first);
  const axle = axleOf(first.corner);
  const parts = partsOf(car, job);
  // A part that the axle has once is no wheel's own.
  const once = adjuster && isOnce(adjuster, car[axle]);
  if (parts.length < 2) return { where: once ? axle : first.corner, title: name };
  const { arm } = parts[0]!;
  if (!arm) return { where: axle, title: `${name}, both sides` };
  return { where: first.corner, title: `${capital(arm)}, ${parts.map(({ end }) => end).join(' and ')}` };
}

const partsOf = (car: Car, job: readonly AdjusterRef[]): readonly JobPart[] =>
  job.flatMap((ref) => jobOf(car, ref) ?? []);

/** What one of a job is beside the others: "front", "right"; nothing where it is alone. */
export const endOf = (car: Car, job: readonly AdjusterRef[], ref: AdjusterRef): string =>
  job.length > 1 ? (jobOf(car, ref)?.end ?? '') : '';

/** Moves of which one cannot be without the others, such as wedges on both sides; or one alone. */
export const isWhole = (car: Car, job: readonly AdjusterRef[]): boolean =>
  job.length === 1 || job.every((ref) => adjusterKinds[adjusterOf(car, ref)?.kind ?? '']?.wholeAxle);

/** The touch that says it is made: "LF tie rod made", "LF upper arm made, front and rear". */
export function madeText(car: Car, job: readonly (AdjusterRef & { readonly setBy?: unknown })[]): string {
  const { where, title } = headingOf(car, job);
  const [name = '', ...rest] = job.length > 1 ? title.split(/, (?=[^,]*$)/) : [title];
  return [`${capital(where)} ${lower(name)} ${job.some(isByRack) ? 'set' : 'made'}`, ...rest].join(', ');
}

export const isByRack = ({ setBy }: { readonly setBy?: unknown }): boolean => setBy !== undefined;

/** The way of a whole job in a short line: "front 3 → 4.5 mm, rear 3 → 1.5 mm"; by the rack: "until toe 0.12". */
export const jobWay = (car: Car, job: readonly Way[]): string =>
  job
    .map((move) => {
      const adjuster = adjusterOf(car, move);
      const way = isByRack(move)
        ? rackWay(car, move)
        : adjuster
          ? wayText(adjuster, move)
          : `${move.from} → ${move.to}`;
      return `${endOf(car, job, move)} ${way}`.trim();
    })
    .join(', ');

/** Of a plan, or as it was made. */
type Way = AdjusterRef & Pick<Move, 'from' | 'to'> & { readonly setBy?: SetByRack };

/** "until toe 0.12"; once it is made "toe 0.12 by the rack, 3 flats longer", as far as its place was read off. */
function rackWay(car: Car, move: Way): string {
  const { angle, value, shown, within } = move.setBy!;
  const figure = valueText(angle, shown?.[angle] ?? value, car.wheel.rimDiameter);
  if (!('outcome' in move)) return words.live({ live: 'way', angle, figure });
  const adjuster = adjusterOf(car, move);
  return words.live({
    live: 'made',
    angle,
    figure,
    ...(adjuster && within === undefined && { stands: wayText(adjuster, move) }),
  });
}

/** Where a job that would not go stands: "front 3 mm, rear 1.5 mm". */
export const jobStands = (car: Car, job: readonly (AdjusterRef & Pick<Move, 'from'>)[]): string =>
  job
    .map((move) => {
      const adjuster = adjusterOf(car, move);
      return `${endOf(car, job, move)} ${adjuster ? positionText(adjuster, move.from) : move.from}`.trim();
    })
    .join(', ');

/** What to do, a sentence. */
export function jobSaid(car: Car, job: Job): string {
  const [first] = job as readonly [Move];
  if (job.some(isByRack)) return job.map((move) => moveSaid(car, move)).join(' ');
  if (job.length === 1) return words.act(first.act, units.value);
  const said = job.flatMap(({ job: part, act }) => (part ? [{ end: part.end, act }] : []));
  return words.job(said, first.job?.arm, units.value);
}

function moveSaid(car: Car, { act, corner, setBy, watched }: Move): string {
  if (!setBy) return words.act(act, units.value);
  const { angle, value } = setBy;
  const figure = figureText(car, angle, value);
  return words.setBy(act, { angle, corner, figure, rises: value > (watched?.from ?? value) }, units.value);
}

/** What was left alone of a plan's round, job by job. */
export const leftJobs = (car: Car, left: Left): readonly (readonly AdjusterRef[])[] =>
  inJobs(car, [...left.before, ...left.now]);

const capital = (text: string): string => `${text[0]?.toUpperCase()}${text.slice(1)}`;
/** "Tie rod" within a sentence; what is spelt in capitals stays so. */
const lower = (text: string): string => (/^\p{Lu}\p{Ll}/u.test(text) ? text[0]!.toLowerCase() + text.slice(1) : text);
