/**
 * One random specimen of every suspension and adjuster kind. The tests that run over the catalogues draw from here: a new
 * kind joins them all by its starter or by the sample in its own file. A line here makes specimens that differ more.
 */

import type { Adjuster, Axle, Suspension, Vec3 } from '../../core/contract.ts';
import { adjusterKinds, adjusterPositions, InputError, solveCorner, suspensionKinds } from '../../core/index.ts';
import {
  between,
  eccentric,
  numbered,
  oneOf,
  type Random,
  randomSuspension,
  rod,
  shims,
  stream,
} from './random-cars.ts';

/** The points of a suspension that stand on the body or the axle: those that brackets move. */
export function bodyPoints({ kind, points }: Suspension): string[] {
  const { links = [], lines = [], seats = [] } = suspensionKinds[kind] ?? {};
  const all = new Set([...links.map(([body]) => body), ...lines.map(([body]) => body), ...seats]);
  return [...all].filter((name) => name in points);
}

/** A direction anywhere. */
export function anyDirection(random: Random): Vec3 {
  const turn = between(random, 0, 2 * Math.PI);
  const z = between(random, -0.5, 0.5);
  const flat = Math.sqrt(1 - z * z);
  return [flat * Math.cos(turn), flat * Math.sin(turn), z];
}

type Sample = (random: Random, suspension: Suspension, id: string) => Adjuster;

/** Where a sample that moves a point moves it; a suspension without points gets a name that it must refuse. */
const somePoint = (random: Random, suspension: Suspension): string => oneOf(random, bodyPoints(suspension)) ?? 'none';
const someLink = (random: Random, { kind, points }: Suspension): string =>
  oneOf(
    random,
    (suspensionKinds[kind]?.links ?? []).filter(([body]) => body in points),
  )?.[0] ?? 'none';

const SAMPLES: Readonly<Record<string, Sample>> = {
  'shim-pack': (random, suspension, id) => shims(random, id, somePoint(random, suspension)),
  'indexed-cam': (random, suspension, id) => numbered(random, id, somePoint(random, suspension)),
  'eccentric-cam': (random, suspension, id) => eccentric(random, id, somePoint(random, suspension)),
  'threaded-rod': (random, suspension, id) => rod(id, someLink(random, suspension)),
  slide: (random, suspension, id) => ({
    id,
    kind: 'slide',
    at: somePoint(random, suspension),
    direction: anyDirection(random),
    step: 1,
    range: [-5, 4],
    reference: oneOf(random, [-2, 0, 1]),
  }),
  'clamp-bolt': (random, _, id) => {
    const cam = random() < 0.5;
    return {
      id,
      kind: 'clamp-bolt',
      ...(cam ? { step: 15, range: [-90, 90], eccentricity: 1.2, spacing: 62 } : { step: 0.25, range: [-1.5, 1.5] }),
      reference: oneOf(random, cam ? [-30, 0, 45] : [-0.5, 0, 0.25]),
    };
  },
  'offset-sleeve': (random, _, id) => {
    const one = { degrees: between(random, 0.5, 1.75), reference: oneOf(random, [0, 45, 90, 225]) };
    const several = { degrees: [0, 0.5, 1.25], reference: oneOf(random, ['plain', '0.5@45', '1.25@225']) };
    return { id, kind: 'offset-sleeve', marks: 8, ...(random() < 0.5 ? one : several) };
  },
  'wedge-shim': (random, _, id) => ({
    id,
    kind: 'wedge-shim',
    degrees: [0.5, 1],
    marks: 8,
    reference: oneOf(random, ['none', '0.5@90', '1@315']),
  }),
  'axle-wedge': (random, _, id) => ({
    id,
    kind: 'axle-wedge',
    degrees: [-1, -0.5, 0.5, 1, 1.5, 2],
    reference: oneOf(random, [-0.5, 0, 1]),
  }),
  'effect-table': (random, _, id) => {
    const some = () => between(random, -0.4, 0.4);
    if (random() < 0.5) {
      const perStep = { camber: some(), caster: some(), toe: some() };
      return { id, kind: 'effect-table', perStep, range: [-3, 3], reference: oneOf(random, [-1, 0, 2]) };
    }
    const positions = ['A', 'B', 'C', 'D', 'E'].map((label) => ({
      label,
      camber: some(),
      caster: some(),
      toe: some(),
    }));
    return { id, kind: 'effect-table', positions, reference: oneOf(random, ['A', 'C']) };
  },
};

/** A random adjuster of a kind, as it fits this suspension; where none fits, one that the suspension refuses. */
export function sampleAdjuster(random: Random, kind: string, suspension: Suspension, id = kind): Adjuster {
  return (SAMPLES[kind] ?? ownSample(kind))(random, suspension, id);
}

/** What the kind's own file shows of it, at some place of this suspension where its form asks for a place. */
const ownSample =
  (kind: string): Sample =>
  (random, suspension, id) => {
    const { start = {}, sample, fields = [] } = adjusterKinds[kind] ?? {};
    const places: Readonly<Record<string, unknown>> = {
      at: somePoint(random, suspension),
      links: [someLink(random, suspension)],
      direction: anyDirection(random),
    };
    const asked = Object.entries(places).filter(([name]) => fields.some((field) => field.name === name));
    return { ...start, ...Object.fromEntries(asked), ...sample?.adjuster, id, kind, reference: sample?.from ?? 0 };
  };

/** Whether core takes such an adjuster on such a suspension. */
function fits(suspension: string, adjuster: string): boolean {
  const random = stream(1);
  const given = randomSuspension(random, suspension);
  try {
    solveCorner(given, [sampleAdjuster(random, adjuster, given)], {});
    return true;
  } catch (error) {
    if (error instanceof InputError) return false;
    throw error;
  }
}

/** Every suspension kind with every adjuster kind that fits it. */
export const FITTING: readonly { readonly suspension: string; readonly adjuster: string }[] = Object.keys(
  suspensionKinds,
).flatMap((suspension) =>
  Object.keys(adjusterKinds)
    .filter((adjuster) => fits(suspension, adjuster))
    .map((adjuster) => ({ suspension, adjuster })),
);

export interface KindCase {
  readonly suspension: string;
  readonly adjusters: readonly string[];
}

/**
 * Each suspension kind with up to `most` adjuster kinds, those first that no other has yet, so that every kind is in some
 * case: what is left over goes to the first suspension that it fits.
 */
export function kindCases(most: (suspension: string) => number): KindCase[] {
  const seen = new Set<string>();
  const cases = Object.keys(suspensionKinds).map((suspension) => {
    const fitting = FITTING.filter((pair) => pair.suspension === suspension).map(({ adjuster }) => adjuster);
    const fresh = fitting.filter((kind) => !seen.has(kind));
    const adjusters = [...fresh, ...fitting.filter((kind) => seen.has(kind))].slice(0, most(suspension));
    for (const kind of adjusters) seen.add(kind);
    return { suspension, adjusters };
  });
  for (const kind of Object.keys(adjusterKinds).filter((one) => !seen.has(one))) {
    const { suspension } = FITTING.find(({ adjuster }) => adjuster === kind)!;
    cases.find((one) => one.suspension === suspension)?.adjusters.push(kind);
  }
  return cases;
}

/** Of those, as few as hold every kind of adjuster: what `npm test` walks through. */
export function fewestCases(cases: readonly KindCase[]): readonly KindCase[] {
  const left = new Set(cases.flatMap(({ adjusters }) => adjusters));
  const fresh = ({ adjusters }: KindCase): number => adjusters.filter((kind) => left.has(kind)).length;
  const chosen: KindCase[] = [];
  while (left.size > 0) {
    const next = cases.reduce((best, one) => (fresh(one) > fresh(best) ? one : best));
    chosen.push(next);
    for (const kind of next.adjusters) left.delete(kind);
  }
  return chosen;
}

/** Of one corner; where both are one body every pair is a pose of its own. */
const MOST_COMBINATIONS = 110;
const MOST_COMBINATIONS_OF_HALF_AN_AXLE = 26;

/**
 * An axle of a kind with up to three random adjusters that fit it, few enough positions to try them all; packs may be
 * a pair, and rods may have to agree from side to side.
 */
export function sampleAxle(random: Random, kind: string, steered: boolean): Axle {
  const suspension = randomSuspension(random, kind);
  const fitting = FITTING.filter((pair) => pair.suspension === kind).map(({ adjuster }) => adjuster);
  const adjusters: Adjuster[] = [];
  let combinations = 1;
  const most = suspensionKinds[kind]?.rigidAxle ? MOST_COMBINATIONS_OF_HALF_AN_AXLE : MOST_COMBINATIONS;
  for (let i = 0; i < 6 && adjusters.length < 3; i++) {
    const one = sampleAdjuster(random, oneOf(random, fitting), suspension, `a${adjusters.length}`);
    const count = adjusterPositions(one).length;
    if (combinations * count > most) continue;
    // Two sleeves in one seat, or two wedges under one spring, are no axle.
    if (adjusters.some((other) => other.kind === one.kind && ONLY_ONE.includes(one.kind))) continue;
    combinations *= count;
    adjusters.push(limited(random, one, adjusters));
  }
  return { suspension, adjusters, steered };
}
const ONLY_ONE = ['offset-sleeve', 'wedge-shim', 'axle-wedge', 'clamp-bolt'];

function limited(random: Random, one: Adjuster, others: readonly Adjuster[]): Adjuster {
  if (one.kind === 'threaded-rod' && random() < 0.5) return { ...one, maxSideDifference: between(random, 0.3, 2) };
  const partner = one.kind === 'shim-pack' ? others.find((other) => other.kind === 'shim-pack') : undefined;
  return partner ? { ...one, pair: { with: partner.id, most: between(random, 1, 4) } } : one;
}
