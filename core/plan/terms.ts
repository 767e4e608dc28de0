/**
 * A spec as the search sees it: each window is about one number that is linear in the wheels' angles (a wheel's own
 * angle, left − right, left + right, half the difference; against the thrust line, front toe with the rear's share).
 */
import { adjusterKinds } from '../adjuster/catalogue.ts';
import type { BothSides } from '../adjuster/kind.ts';
import { adjustersOfSide } from '../adjuster/of-corner.ts';
import {
  type Adjuster,
  AXLE_CHANGES,
  type Axle,
  type AxleChange,
  type AxleName,
  type Car,
  type Corner,
  type Reading,
  type Settings,
  type Spec,
} from '../contract.ts';
import { AXLES, isAxle } from '../corners.ts';
import type { Assembly } from '../pose/car-model.ts';
import { CAMBER, CASTER, LATERAL, PITCH, TOE } from '../pose/numbers.ts';
import { thrustOf } from '../reading/axle-angles.ts';
import { aimed, EDGE_NOISE, type SpecTerm, specTerms } from '../reading/spec-terms.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { TIE } from './states/state-space.ts';

/** `factor` times one angle (CAMBER, CASTER or TOE, PITCH or LATERAL; from TIE on a tie) of one corner. */
export interface TermPart {
  readonly corner: Corner;
  readonly angle: number;
  readonly factor: number;
}

export interface Term extends SpecTerm {
  readonly parts: readonly TermPart[];
  readonly constant: number;
  /** It costs what it is off its aim, and no chance; limits it has only where it is assumed to have. */
  readonly wish?: true;
  /** A limit of the parts themselves, kept whether or not the windows can be met; it costs nothing. */
  readonly hard?: true;
}

const PLACE: Readonly<Record<string, number>> = {
  camber: CAMBER,
  caster: CASTER,
  toe: TOE,
  totalToe: TOE,
  crossCamber: CAMBER,
  crossCaster: CASTER,
  thrustAngle: TOE,
};
const NAME = { [CAMBER]: 'camber', [CASTER]: 'caster', [TOE]: 'toe' } as const;

/** Left and right factor of an axle's angle. */
const PAIR: Readonly<Record<string, readonly [number, number]>> = {
  totalToe: [1, 1],
  crossCamber: [1, -1],
  crossCaster: [1, -1],
  thrustAngle: [thrustOf(1, 0), thrustOf(0, 1)],
};

/** Splits the spec into terms that this reading of the car can judge and those whose angles were not measured. */
export function termsOf(spec: Spec, reading: Reading, car: Car): { terms: Term[]; unmeasured: SpecTerm[] } {
  const terms: Term[] = [];
  const unmeasured: SpecTerm[] = [];
  for (const item of specTerms(spec)) {
    const parts = partsOf(item.where, item.angle);
    if (!parts.every(({ corner, angle }) => isMeasured(reading, corner, angle))) {
      unmeasured.push(item);
      continue;
    }
    terms.push({ ...item, ...againstThrustLine(parts, reading) });
  }
  for (const item of changeTerms(spec)) {
    const { where, angle } = item;
    if (isOnLinks(car[where])) terms.push({ ...item, ...changePart(where, angle, reading) });
    else unmeasured.push(item);
  }
  return { terms, unmeasured };
}

/** Every window of how far an axle may go from where it was read; one reading alone says nothing of them. */
const changeTerms = (spec: Spec) =>
  (['front', 'rear'] as const).flatMap((where) =>
    AXLE_CHANGES.flatMap((angle) => {
      const given = spec[where]?.[angle];
      if (!given) return [];
      return [{ where, angle, window: aimed(given) }];
    }),
  );

export const isOnLinks = ({ suspension }: Axle): boolean =>
  suspensionKinds[suspension.kind]?.rigidAxle?.onLinks === true;

/** How far the axle has gone since it was read: a state's numbers count from where it stands now. */
function changePart(where: AxleName, angle: AxleChange, reading: Reading): Pick<Term, 'parts' | 'constant'> {
  const place = angle === 'pinionChange' ? PITCH : LATERAL;
  const constant = reading[where]?.[angle] ?? 0;
  return { parts: [{ corner: AXLES[where][0], angle: place, factor: 1 }], constant };
}

/** What is wished, as far as this reading can judge it. */
export const wishesOf = (wish: Spec, reading: Reading, car: Car): Term[] =>
  termsOf(wish, reading, car).terms.map((term) => ({ ...(term.window.assumed ? term : unlimited(term)), wish: true }));

export const unlimited = (term: Term): Term => ({
  ...term,
  window: { ...term.window, low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY },
});

function partsOf(where: Corner | AxleName, angle: string): TermPart[] {
  const place = PLACE[angle]!;
  if (!isAxle(where)) return [{ corner: where, angle: place, factor: 1 }];
  const [left, right] = PAIR[angle]!;
  return [
    { corner: AXLES[where][0], angle: place, factor: left },
    { corner: AXLES[where][1], angle: place, factor: right },
  ];
}

const isMeasured = (reading: Reading, corner: Corner, angle: number): boolean =>
  reading[corner]?.[NAME[angle as keyof typeof NAME]] !== undefined;

/**
 * Front toe that is read against the thrust line falls on the left, and rises on the right, by what the thrust angle
 * gains. The constant takes the thrust angle of now away, which is in the reading already.
 */
function againstThrustLine(parts: readonly TermPart[], reading: Reading): { parts: TermPart[]; constant: number } {
  const all = [...parts];
  let constant = 0;
  if (reading.toeReference === 'thrust-line') {
    // The rear toe of a wheel that was not measured counts from 0: only its change matters.
    const now = thrustOf(reading.LR?.toe ?? 0, reading.RR?.toe ?? 0);
    let share = 0;
    for (const { corner, angle, factor } of parts) {
      if (angle !== TOE) continue;
      if (corner === 'LF') share -= factor;
      if (corner === 'RF') share += factor;
    }
    if (share !== 0) {
      all.push({ corner: 'LR', angle: TOE, factor: share * thrustOf(1, 0) });
      all.push({ corner: 'RR', angle: TOE, factor: share * thrustOf(0, 1) });
      constant = -share * now;
    }
  }
  return { parts: all, constant };
}

/** Assemblies that no term ties to one another are planned apart: smaller problems, same answer. */
export function groups(terms: readonly Term[], assemblies: readonly Assembly[]): Assembly[][] {
  const leader = new Map<Assembly, Assembly>(assemblies.map((assembly) => [assembly, assembly]));
  const find = (assembly: Assembly): Assembly => {
    const up = leader.get(assembly)!;
    return up === assembly ? assembly : find(up);
  };
  const assemblyOf = ({ corner }: TermPart): Assembly => assemblies.find(({ corners }) => corners.includes(corner))!;
  for (const { parts } of terms) {
    for (const part of parts) leader.set(find(assemblyOf(part)), find(assemblyOf(parts[0]!)));
  }
  const found = new Map<Assembly, Assembly[]>();
  for (const assembly of assemblies) found.set(find(assembly), [...(found.get(find(assembly)) ?? []), assembly]);
  const used = new Set(terms.flatMap(({ parts }) => parts.map(assemblyOf)));
  return [...found.values()].filter((group) => group.some((assembly) => used.has(assembly)));
}

/** Whether it is about toe, of one wheel or of two. */
export const isToe = ({ parts }: Term): boolean => parts.every(({ angle }) => angle === TOE);

/** ((value − aim)/half window)² */
export function distanceOf({ window }: Term, value: number): number {
  const x = (value - window.aim) / window.half;
  return x * x;
}

export const isIn = ({ window }: Term, value: number): boolean =>
  value >= window.low - EDGE_NOISE && value <= window.high + EDGE_NOISE;

/** What a term is where the corners' angles are these. */
export function termValue(term: Term, corners: readonly Corner[], angles: readonly Float64Array[]): number {
  let value = term.constant;
  for (const { corner, angle, factor } of term.parts) {
    value += factor * angles[corners.indexOf(corner)]![angle]!;
  }
  return value;
}

/** An adjuster that both sides of an axle have: the left one and the right one. */
export type Tie = readonly [Adjuster, Adjuster];

const bothSides = (one: Adjuster, position = one.reference): BothSides | undefined =>
  adjusterKinds[one.kind]?.bothSides?.(one, position);

/** Adjusters of an axle whose two sides must agree within limits, by their id. */
export const tiesOf = (axle: Axle): readonly Tie[] =>
  adjustersOfSide(axle, false).flatMap((right): Tie[] => {
    const left = axle.adjusters.find(({ id, kind }) => id === right.id && kind === right.kind);
    return left && Number.isFinite(mostApart([left, right])) ? [[left, right]] : [];
  });

/** Whether what sets them apart is on file, so that nothing is taken for equal. */
export const isKnownApart = (tie: Tie): boolean =>
  tie.every((one) => adjusterKinds[one.kind]?.wholeAxle || bothSides(one)?.start !== undefined);

/** The most that both may differ by: what the stricter one says. */
export const mostApart = (tie: Tie): number =>
  Math.min(...tie.map((one) => bothSides(one)?.most ?? Number.POSITIVE_INFINITY));

/** The limits between left and right. What exceeds one as the adjusters stand may stay, and may not get worse. */
export function tieTerms(car: Car, now: Readonly<Record<Corner, Settings>>): Term[] {
  return (['front', 'rear'] as const).flatMap((name) => {
    const [left, right] = AXLES[name];
    return tiesOf(car[name]).map((tie, k): Term => {
      const [l, r] = tie.map((one, side) => bothSides(one, now[side === 0 ? left : right][one.id])!) as [
        BothSides,
        BothSides,
      ];
      const constant = isKnownApart(tie) ? (l.start ?? 0) - (r.start ?? 0) : 0;
      const most = Math.max(mostApart(tie), Math.abs(l.value - r.value + constant));
      const angle = TIE + k;
      return {
        where: name,
        angle: tie[0].id,
        window: { low: -most, aim: 0, high: most, half: Number.POSITIVE_INFINITY },
        parts: [
          { corner: left, angle, factor: 1 },
          { corner: right, angle, factor: -1 },
        ],
        constant,
        hard: true,
      };
    });
  });
}
