/** A plan as lines for people. */
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import { adjustersOf } from '../../core/adjuster/of-corner.ts';
import {
  type AxleName,
  type Car,
  CORNERS,
  type Corner,
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

const words = wordsOf();
const ANGLES = ['caster', 'camber', 'toe'] as const;

/** @param found what the rack shows before the first move */
export function report(car: Car, found: Reading, plan: Plan, style: PlanStyle): string {
  const lines = [
    `${car.label}: ${count(plan.moves.length, 'move')}, about ${Math.round(plan.effort)} min`,
    plan.inWindow
      ? `Chance that the re-measure is all in the window: ${Math.round(plan.chance * 100)} %`
      : 'The window cannot be reached with these adjusters; this is as near as they come.',
    ...limitOf(plan),
    ...proofOf(style, plan),
    '',
  ];
  plan.moves.forEach((move, i) => {
    const adjuster = adjustersOf(car, move.corner).find((one) => one.id === move.adjuster);
    const kind = adjuster && adjusterKinds[adjuster.kind];
    if (!adjuster || !kind) return;
    lines.push(
      `${i + 1}. ${move.corner} ${adjuster.name}: ${words.place(kind.place(adjuster, move.from))} → ${words.place(kind.place(adjuster, move.to))}`,
      `   ${move.instruction}`,
      `   Then ${move.corner} reads ${wheel(move.expectAfter, move.corner)}${gone(move.expectAfter, axleOf(move.corner))}`,
      ...(adjuster.torque ? [`   Torque, the maker's figure on your file: ${adjuster.torque}`] : []),
    );
  });
  if (plan.moves.length > 0) lines.push('');
  lines.push('           found                                       predicted');
  for (const corner of CORNERS) {
    if (!found[corner]) continue;
    lines.push(`${corner}   ${wheel(found, corner).padEnd(48)}${wheel(plan.predicted, corner)}`);
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
  lines.push('', CAUTION);
  return lines.join('\n');
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
  const isSought = noted.some(({ note }) => note === 'best-found');
  if (!optimum.proven) return [isSought ? `Sought among ${all}.` : `Chosen from all ${all}.`];
  const better = style === 'least-work' && inWindow ? 'takes less work' : 'is nearer to the aims';
  return [`Proven: of ${all} none ${inWindow ? 'in the window ' : ''}${better}.`];
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
