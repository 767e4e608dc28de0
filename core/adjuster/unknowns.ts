/**
 * What is not known for certain of a corner, one number each: every coordinate of its points, to the tolerance with
 * which they were taken, and what its adjusters say is uncertain of them. One list, so that what a plan counts with and
 * what readings teach are the same.
 */
import type { Adjuster, Suspension, Vec3 } from '../contract.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { adjusterKinds } from './catalogue.ts';
import type { Side } from './of-corner.ts';

/** The most that a taped coordinate is off, ± mm, where nothing else is said. Trade practice, no source. */
export const DEFAULT_TOLERANCE = 5;

/** A tolerance of a move says where 95 % lie: so many standard deviations. */
export const SIGMAS = 2;

/** One number that is 0 for the car as it was entered. */
export type Unknown = {
  /** 0 on the left, or of a corner alone. */
  readonly side: number;
  /** Such as `upperFront.x`, mm, or `cam.camber`, a share of what the chart prints. */
  readonly name: string;
  /** One standard deviation, before anything was read. */
  readonly sigma: number;
} & ({ readonly point: string; readonly axis: number } | { readonly adjuster: string; readonly share: number });

const AXES = ['x', 'y', 'z'] as const;

/** A coordinate that is off by at most t, anywhere within equally likely, has the standard deviation t/√3. */
export function coordinatesOf({ suspension }: Side, side: number): readonly Unknown[] {
  const tolerance = suspension.tolerance ?? DEFAULT_TOLERANCE;
  if (tolerance === 0) return [];
  const sigma = tolerance / Math.sqrt(3);
  // What a rigid axle has once stands with its left side.
  const once = side > 0 ? (suspensionKinds[suspension.kind]?.rigidAxle?.once ?? []) : [];
  const points = Object.keys(suspension.points).filter((name) => !once.includes(name));
  return points.flatMap((point) =>
    AXES.map((letter, axis): Unknown => ({ side, name: `${point}.${letter}`, sigma, point, axis })),
  );
}

/** Shares of what charts print that may be off, and of usual figures. */
function sharesOf({ adjusters }: Side, side: number): readonly Unknown[] {
  return adjusters.flatMap((adjuster) => {
    const { unsure, tolerance } = adjusterKinds[adjuster.kind] ?? {};
    const sigma = unsure && tolerance ? unsure.sigma(madeWithin(adjuster), adjuster) : 0;
    if (!unsure || sigma === 0) return [];
    return unsure.of.map(
      (name, share): Unknown => ({ side, name: `${adjuster.id}.${name}`, sigma, adjuster: adjuster.id, share }),
    );
  });
}

/** All of an assembly's sides. */
export const unknownsOf = (sides: readonly Side[]): readonly Unknown[] =>
  sides.flatMap((one, side) => [...coordinatesOf(one, side), ...sharesOf(one, side)]);

/** Those of them that are no part of the error of a move, one side's: what a plan counts beside it. */
export const apartFromMoves = (one: Side, side: number): readonly Unknown[] => [
  ...coordinatesOf(one, side),
  ...sharesOf({ ...one, adjusters: one.adjusters.filter(({ kind }) => !adjusterKinds[kind]?.unsure?.left) }, side),
];

/** One standard deviation of how exactly an adjuster is set, in its kind's own unit. */
export const madeWithin = (adjuster: Adjuster): number =>
  ((adjuster.tolerance as number | undefined) ?? adjusterKinds[adjuster.kind]!.tolerance.usual) / SIGMAS;

/** The sides with some of the unknowns so much off what was entered, in the order of both lists. */
export function movedBy(sides: readonly Side[], unknowns: readonly Unknown[], by: ArrayLike<number>): readonly Side[] {
  return sides.map((given, side): Side => {
    const points: Record<string, Vec3> = { ...given.suspension.points };
    const shares = new Map<string, number[]>();
    unknowns.forEach((one, i) => {
      if (one.side !== side || by[i] === 0) return;
      if ('point' in one) points[one.point] = shifted(points[one.point]!, one.axis, by[i]!);
      else {
        const own = shares.get(one.adjuster) ?? [];
        own[one.share] = by[i]!;
        shares.set(one.adjuster, own);
      }
    });
    const suspension: Suspension = { ...given.suspension, points };
    if (shares.size === 0) return { ...given, suspension };
    return { suspension, adjusters: given.adjusters.map((one) => withShares(one, shares.get(one.id))) };
  });
}

function withShares(adjuster: Adjuster, shares: readonly number[] | undefined): Adjuster {
  const { unsure } = adjusterKinds[adjuster.kind] ?? {};
  return shares && unsure
    ? unsure.with(
        adjuster,
        unsure.of.map((_, i) => shares[i] ?? 0),
      )
    : adjuster;
}

const shifted = (point: Vec3, axis: number, by: number): Vec3 =>
  point.map((x, i) => (i === axis ? x + by : x)) as unknown as Vec3;
