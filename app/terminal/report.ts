/** A plan as lines for people. */
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import { jobsOf } from '../../core/adjuster/job.ts';
import { adjusterName } from '../../core/adjuster/names.ts';
import { adjustersOf } from '../../core/adjuster/of-corner.ts';
import {
  type AxleName,
  type Car,
  CORNERS,
  type Corner,
  type Move,
  type Plan,
  type PlanStyle,
  type Reading,
} from '../../core/contract.ts';
import { axleOf } from '../../core/corners.ts';
import { formatAngle } from '../../core/units/format.ts';
import { wordsOf } from '../../core/words/catalogue.ts';

const CAUTION =
  "The maker's service information and torque figures, local rules and a qualified technician's judgement go before " +
  'anything printed here. Support the vehicle, torque, re-measure, then road test.';

const SETTLE =
  'Roll the car and let it settle before it is read again; caster shows after a new sweep, unless the rack follows it.';

const words = wordsOf();
const ANGLES = ['caster', 'camber', 'toe'] as const;

/** @param found what the rack shows before the first move */
export function report(car: Car, found: Reading, plan: Plan, style: PlanStyle): string {
  const jobs = jobsOf(plan.moves);
  const lines = [
    `${car.label}: ${count(jobs.length, 'move')}, about ${Math.round(plan.effort)} min`,
    plan.inWindow
      ? `Chance that the re-measure is all in the window: ${Math.round(plan.chance * 100)} %`
      : 'The window cannot be reached with these adjusters; this is as near as they come.',
    ...limitOf(plan),
    ...proofOf(style, plan),
    '',
  ];
  jobs.forEach((job, i) => {
    lines.push(...jobLines(car, job, i + 1));
  });
  if (plan.moves.length > 0) lines.push('');
  lines.push('           found                                       predicted');
  for (const corner of CORNERS) {
    if (!found[corner]) continue;
    lines.push(`${corner}   ${wheel(found, corner).padEnd(48)}${wheel(plan.predicted, corner)}`);
  }
  const { LF, RF, toeReference } = found;
  if (toeReference && (LF?.toe ?? RF?.toe) !== undefined) {
    lines.push(`Front toe against the ${toeReference === 'centreline' ? 'centre line' : 'thrust line'}.`);
  }
  for (const axle of ['front', 'rear'] as const) {
    const [before, after] = [axleRead(found, axle), `${axleRead(plan.predicted, axle)}${gone(plan.predicted, axle)}`];
    if (before || after) lines.push(`${axle.padEnd(5)}${before.padEnd(48)}${after.replace(/^, /, '')}`);
  }
  for (const { where, angle, by, atStop } of plan.shortfall) {
    const stops = atStop.map(({ corner, adjuster }) => `${corner} ${adjuster}`).join(', ');
    const way = by > 0 ? 'high' : 'low';
    const size = angle === 'lateralChange' ? `${Math.abs(by).toFixed(1)} mm` : `${formatAngle(Math.abs(by))}°`;
    lines.push(`${where} ${angle} stays ${size} ${way}${stops ? `; at the end of its travel: ${stops}` : ''}`);
  }
  lines.push(...plan.notes);
  if (plan.unmeasured.length > 0) {
    lines.push(
      `Not measured, so not judged: ${plan.unmeasured.map(({ where, angle }) => `${where} ${angle}`).join(', ')}`,
    );
  }
  lines.push('', ...(plan.moves.length > 0 ? [SETTLE] : []), CAUTION);
  return lines.join('\n');
}

/** What one job is: its moves, what to do, what the rack then reads. */
function jobLines(car: Car, job: readonly Move[], number: number): string[] {
  const last = job.at(-1)!;
  const [first] = job as readonly [Move];
  const heads = job.map(({ corner, adjuster: id, from, to, setBy }) => {
    const adjuster = adjustersOf(car, corner).find((one) => one.id === id)!;
    const { place } = adjusterKinds[adjuster.kind]!;
    return `${corner} ${adjusterName(adjuster)}: ${words.place(place(adjuster, from))} → ${setBy ? 'about ' : ''}${words.place(place(adjuster, to))}`;
  });
  const said = job.flatMap(({ job: part, act }) => (part ? [{ end: part.end, act }] : []));
  const torques = new Set(
    job.flatMap(({ corner, adjuster }) => adjustersOf(car, corner).find(({ id }) => id === adjuster)?.torque ?? []),
  );
  const read = [...new Set(job.map(({ corner }) => corner))].map(
    (corner) => `${corner} reads ${wheel(last.expectAfter, corner)}`,
  );
  return [
    ...heads.map((head, i) => `${i === 0 ? `${number}.` : '  '} ${head}`),
    ...(job.length > 1 && job.every(({ setBy }) => !setBy)
      ? [words.job(said, first.job?.arm)]
      : job.map(({ instruction }) => instruction)
    ).map((line) => `   ${line}`),
    `   Then ${read.join(', ')}${gone(last.expectAfter, axleOf(last.corner))}`,
    ...[...torques].map((torque) => `   Torque, the maker's figure on your file: ${torque}`),
  ];
}

/** The window that is met least surely, unless that one is as good as sure. */
function limitOf({ odds: [least] }: Plan): string[] {
  return least && least.chance < AS_GOOD_AS_SURE ? [words.limit(least)] : [];
}
const AS_GOOD_AS_SURE = 0.98;

/** What no other combination of positions does better, as far as the search proves it. */
function proofOf(style: PlanStyle, { inWindow, optimum, noted }: Plan): string[] {
  if (optimum.combinations < 2) return [];
  const all = `${many(optimum.combinations)} combinations of positions`;
  const isSought = noted.some(({ note }) => note === 'best-found' || note === 'not-proven');
  if (!optimum.proven) return [isSought ? `Sought among ${all}.` : `Chosen from all ${all}.`];
  const better = style === 'least-work' && inWindow ? 'takes less work' : 'comes closer to the aims';
  return [`No other setting ${inWindow ? 'in the window ' : ''}${better}: proven for all ${all}.`];
}

/** 450 000 000 is "4.5 · 10^8": nobody counts the zeros. */
export const many = (n: number): string => (n < 1e5 ? String(n) : n.toExponential(1).replace('e+', ' · 10^'));

const count = (n: number, what: string): string => `${n === 0 ? 'no' : n} ${what}${n === 1 ? '' : 's'}`;

function wheel(reading: Reading, corner: Corner): string {
  return ANGLES.flatMap((angle) => {
    const value = reading[corner]?.[angle];
    return value === undefined ? [] : [`${angle} ${formatAngle(value)}`];
  }).join(', ');
}

/** What an inclinometer and a tape say of an axle on links. */
function axleRead(reading: Reading, axle: AxleName): string {
  const { pinionAngle, lateral } = reading[axle] ?? {};
  return [
    ...(pinionAngle === undefined ? [] : [`pinion ${formatAngle(pinionAngle)}`]),
    ...(lateral === undefined ? [] : [`sideways ${formatAngle(lateral, { digits: 1 })} mm`]),
  ].join(', ');
}

/** How far it goes, where it goes. */
function gone(reading: Reading, axle: AxleName): string {
  const { pinionChange, lateralChange } = reading[axle] ?? {};
  if (pinionChange === undefined || lateralChange === undefined) return '';
  return `, ${words.axleGone(pinionChange, lateralChange)}`;
}
