/** How an adjuster would go further than it can: beyond its own positions, or its point put further beside them. */
import type { Effect, End, Extension } from '../../adjuster/kind.ts';
import { adjustersOf } from '../../adjuster/of-corner.ts';
import { MOST_FURTHER, multiples } from '../../adjuster/steps.ts';
import {
  type Adjuster,
  type AdjusterRef,
  type Axle,
  CORNERS,
  type Corner,
  type PlanRequest,
  type Position,
  type Settings,
  type Suspension,
  type Vec3,
} from '../../contract.ts';
import type { Remedy } from '../../said.ts';
import { kindOfAdjuster } from '../problem.ts';
import type { Instead } from '../states/corner-stand.ts';

/** Which way a point goes, or what becomes of a link. */
export type Way = 'forward' | 'rearward' | 'outboard' | 'inboard' | 'up' | 'down' | 'longer' | 'shorter';

/** One adjuster that would have to go further. */
export interface BareFreeChange extends AdjusterRef {
  /** How far beyond its travel at the least; absent: it was not to be moved, and would do if it could be. */
  readonly further?: {
    readonly by: number;
    readonly unit: Extension['unit'];
    /** Which way its point goes, or what becomes of its link, where that can be said. */
    readonly way?: Way;
    /** The parts or work that it takes. */
    readonly remedy: Remedy;
  };
}

/** mm by which the point of a cam would be put elsewhere, at a time. */
const FINE = 0.5;
/** A cam goes along an axis that it moves its point along by at least this share of what it moves it most. */
const ALONG = 0.5;
const AXES = [
  { direction: [1, 0, 0], ways: ['rearward', 'forward'] },
  { direction: [0, 1, 0], ways: ['inboard', 'outboard'] },
  { direction: [0, 0, 1], ways: ['down', 'up'] },
] as const satisfies readonly { direction: Vec3; ways: readonly [Way, Way] }[];

/** None of the kinds that go further needs points to say what it does. */
const NO_POINTS: Suspension = { kind: 'unknown', points: {}, camber: 0, toe: 0 };

/** A slide that stands for a cam's point put elsewhere, fitted to its axle but held. */
export interface Offset {
  readonly axis: number;
  readonly slide: Adjuster;
}

/** The car with a held slide along each axis in which a cam moves its point. */
export function withOffsets(request: PlanRequest) {
  const offsets = new Map<Adjuster, Offset[]>();
  const withSlides = (adjusters: readonly Adjuster[]): Adjuster[] => {
    const slides = adjusters.flatMap((cam) => {
      const kind = kindOfAdjuster(cam);
      const [at] = kind.touches(cam).points ?? [];
      if (!kind.extension || kind.extension.beyond || at === undefined) return [];
      const spread = AXES.map((_, axis) => {
        const along = kind.positions(cam).map((p) => kind.effect(cam, p, NO_POINTS).shift?.[at]?.[axis] ?? 0);
        return Math.max(...along) - Math.min(...along);
      });
      const own = AXES.flatMap(({ direction }, axis): Offset[] => {
        const least = Math.max(ALONG * Math.max(...spread), Number.MIN_VALUE);
        if (spread[axis]! < least) return [];
        const id = freeId(adjusters, `${cam.id} ${axis}`);
        const range = [-MOST_FURTHER, MOST_FURTHER];
        return [{ axis, slide: { id, kind: 'slide', at, direction, range, step: FINE, reference: 0 } }];
      });
      offsets.set(cam, own);
      return own.map(({ slide }) => slide);
    });
    return [...adjusters, ...slides];
  };
  const axleWithSlides = ({ adjusters, rightAdjusters, ...axle }: Axle): Axle => ({
    ...axle,
    adjusters: withSlides(adjusters),
    ...(rightAdjusters && { rightAdjusters: withSlides(rightAdjusters) }),
  });
  const { front, rear } = request.car;
  const car = { ...request.car, front: axleWithSlides(front), rear: axleWithSlides(rear) };
  const held = CORNERS.flatMap((corner) =>
    adjustersOf(request.car, corner).flatMap((cam) =>
      (offsets.get(cam) ?? []).map(({ slide }) => ({ corner, adjuster: slide.id })),
    ),
  );
  return { asked: { ...request, car, locked: [...(request.locked ?? []), ...held] }, offsets };
}

const freeId = (adjusters: readonly Adjuster[], id: string): string =>
  adjusters.some((one) => one.id === id) ? freeId(adjusters, `${id}'`) : id;

/** One adjuster with more travel: level by level, each with all positions of those before it. */
export interface ExtendedTravel extends AdjusterRef {
  readonly last: readonly Position[];
  readonly levels: readonly { readonly further?: BareFreeChange['further']; readonly instead: Instead }[];
  /** What becomes of the corner's positions if it goes so much that way from where it stands. */
  readonly begin?: (stands: Settings, by: number) => Settings;
}

export function extendedTravels(
  { car, locked = [] }: PlanRequest,
  corner: Corner,
  offsets: ReadonlyMap<Adjuster, readonly Offset[]>,
): ExtendedTravel[] {
  return adjustersOf(car, corner).flatMap((adjuster): ExtendedTravel[] => {
    const kind = kindOfAdjuster(adjuster);
    const ref = { corner, adjuster: adjuster.id };
    if (locked.some((one) => one.corner === corner && one.adjuster === adjuster.id)) {
      return [{ ...ref, last: [], levels: [{ instead: new Map([[adjuster.id, kind.positions(adjuster)]]) }] }];
    }
    const { extension } = kind;
    if (!extension) return [];
    const ends: readonly End[] = [1, -1];
    if (extension.beyond) return ends.map((end) => ({ ...ref, ...beyond(adjuster, extension, end) }));
    return ends.flatMap((end) =>
      (offsets.get(adjuster) ?? []).map((offset) => ({ ...ref, ...beside(adjuster, extension, offset, end) })),
    );
  });
}

const takesOf = ({ takes, unit }: Extension, end: End) => ({ unit, remedy: takes[end > 0 ? 1 : 0] });

function beyond(adjuster: Adjuster, extension: Extension, end: End): Omit<ExtendedTravel, keyof AdjusterRef> {
  const kind = kindOfAdjuster(adjuster);
  const places = extension.beyond?.(adjuster, end) ?? [];
  const last = kind.positions(adjuster).at(end > 0 ? -1 : 0)!;
  const effect = (position: Position) => kind.effect(adjuster, position, NO_POINTS);
  const way = places[0] && wayOf(effect(places[0].position), effect(last));
  const sizes = [...new Set(places.map(({ by }) => by))];
  return {
    last: [last],
    ...(typeof places[0]?.position === 'number' && {
      begin: ({ [adjuster.id]: at }, by) => ({ [adjuster.id]: (at as number) + end * by }),
    }),
    levels: sizes.map((by) => ({
      further: { by, ...takesOf(extension, end), ...(way && { way }) },
      instead: new Map([[adjuster.id, places.filter((one) => one.by <= by).map(({ position }) => position)]]),
    })),
  };
}

/** A cam turned as far as it goes along an axis, and its point put further along it. */
function beside(
  cam: Adjuster,
  extension: Extension,
  { axis, slide }: Offset,
  end: End,
): Omit<ExtendedTravel, keyof AdjusterRef> {
  const kind = kindOfAdjuster(cam);
  const along = (position: Position): number =>
    end * (kind.effect(cam, position, NO_POINTS).shift?.[slide.at]?.[axis] ?? 0);
  const all = kind.positions(cam);
  const most = Math.max(...all.map(along));
  const last = all.filter((position) => along(position) > most - 1e-6);
  const way = AXES[axis]?.ways[end > 0 ? 1 : 0] as Way;
  return {
    last,
    begin: (_, by) => ({ [slide.id]: end * by }),
    levels: multiples(FINE, FINE, MOST_FURTHER).map((by) => ({
      further: { by, ...takesOf(extension, end), way },
      instead: new Map([
        [cam.id, last],
        [slide.id, multiples(FINE, FINE, by).map((x) => end * x)],
      ]),
    })),
  };
}

/** Which way a point goes, or what becomes of a link, as an adjuster goes from one effect to another. */
function wayOf(to: Effect, from: Effect): Way | undefined {
  const [link, length] = Object.entries(to.lengthen ?? {})[0] ?? [];
  if (link !== undefined) return length! > (from.lengthen?.[link] ?? 0) ? 'longer' : 'shorter';
  const [point, place] = Object.entries(to.shift ?? {})[0] ?? [];
  if (point === undefined) return undefined;
  const gone = place!.map((x, i) => x - (from.shift?.[point]?.[i] ?? 0));
  const axis = gone.findIndex((x) => Math.abs(x) === Math.max(...gone.map(Math.abs)));
  return AXES[axis]?.ways[gone[axis]! > 0 ? 1 : 0];
}
