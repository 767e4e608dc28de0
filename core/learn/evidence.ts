/** What the readings say of one assembly: sight by sight what was read, where the adjusters stood, which were set since. */
import type { AxleName, Corner, Gauge, Position, Reading, Round, Settings } from '../contract.ts';
import { axleOf } from '../corners.ts';
import { anglesAt } from '../plan/chance/move-error.ts';
import { samePosition } from '../plan/states/axis.ts';
import { placeAmong } from '../plan/states/state-space.ts';
import type { Assembly } from '../pose/car-model.ts';
import { CAMBER, CASTER, hasBody, LATERAL, numbersOf, PITCH, TOE } from '../pose/numbers.ts';
import type { Sitting } from './sittings.ts';

/** An adjuster that was set in this sitting, not as it was found. */
export interface SetPlace {
  readonly side: number;
  readonly id: string;
  /** Where it was found. */
  readonly found: Position;
  /** The same for all sights between which it was not touched: they share one error. */
  readonly event: string;
  /** How well its place is known, one standard deviation, where that is not as its kind is set. */
  readonly within?: number;
}

/** One reading of an assembly. */
export interface Sight {
  /** Of which round of the sitting. */
  readonly round: Round;
  /** A side each. */
  readonly settings: readonly Settings[];
  /** Its numbers in their places, NaN where it was not read. */
  readonly values: Float64Array;
  readonly set: readonly SetPlace[];
  readonly lost: readonly LostPlace[];
}

/** An adjuster of which nobody knew where it stood, but how far it was turned from there. */
export interface LostPlace {
  readonly side: number;
  readonly id: string;
  /** The same for all sights of a sitting. */
  readonly place: string;
}

/** The sights of each sitting, of those with two or more: one alone teaches nothing. */
export type Evidence = readonly (readonly Sight[])[];

export function evidenceOf(assembly: Assembly, sittings: readonly Sitting[]): Evidence {
  return sittings.map((sitting, s) => sightsOf(assembly, sitting, s)).filter((sights) => sights.length > 1);
}

function sightsOf(assembly: Assembly, { rounds, inOrder }: Sitting, s: number): readonly Sight[] {
  const { corners, sides } = assembly;
  const seen = rounds.flatMap((round) => {
    const values = numbersRead(assembly, round.reading);
    const settings = standing(assembly, round);
    const isSeen = values.some((value) => !Number.isNaN(value)) && anglesAt(assembly.model, settings);
    return isSeen ? [{ round, values, settings }] : [];
  });
  const places = sides.flatMap(({ adjusters }, side) => adjusters.map(({ id }) => ({ side, id })));
  const events = new Map(
    places.map(({ side, id }) => [`${side}/${id}`, eventsOf(rounds, corners[side]!, id, inOrder)]),
  );
  return seen.map((sight) => {
    const at = rounds.indexOf(sight.round);
    const set = places.flatMap(({ side, id }): SetPlace[] => {
      const event = events.get(`${side}/${id}`)![at]!;
      const found = seen[0]!.settings[side]![id]!;
      const asFound = event === events.get(`${side}/${id}`)![rounds.indexOf(seen[0]!.round)];
      if (asFound) return [];
      const within = guessOf(rounds, at, corners[side]!, id);
      return [{ side, id, found, event: `${s}/${side}/${id}/${event}`, ...(within !== undefined && { within }) }];
    });
    const isLost = ({ side, id }: { readonly side: number; readonly id: string }): boolean =>
      (sight.round.unknown ?? []).some((one) => one.corner === corners[side] && one.adjuster === id);
    const lost = places.filter(isLost).map((one) => ({ ...one, place: `${s}/${one.side}/${one.id}` }));
    return { ...sight, set, lost };
  });
}

/** Where each adjuster of each side stood, those that were not given at their reference. */
export const standing = ({ corners, sides }: Assembly, { settings }: Round): readonly Settings[] =>
  sides.map(({ adjusters }, side) =>
    Object.fromEntries(adjusters.map(({ id, reference }) => [id, settings[corners[side]!]?.[id] ?? reference])),
  );

/** Round by round how an adjuster had come to stand there: another number or place each time that it was set. */
function eventsOf(rounds: readonly Round[], corner: Corner, id: string, inOrder: boolean): readonly string[] {
  const at = ({ settings }: Round): Position | undefined => settings[corner]?.[id];
  if (!inOrder) return rounds.map((round) => String(at(round)));
  let event = 0;
  return rounds.map((round, i) => {
    const before = rounds[i - 1];
    if (before && wasSet(before, round, corner, id)) event++;
    return String(event);
  });
}

/**
 * How well a place is known that was last left at a guess, as the rack led it there; nothing of one that was not. The figure that
 * it was turned to is a reading of its own and says what there is to say: the guess itself says little more.
 */
function guessOf(rounds: readonly Round[], at: number, corner: Corner, id: string): number | undefined {
  const moves = rounds.slice(0, at).flatMap(({ moved = [] }) => moved);
  const last = moves.findLast(
    ({ corner: of, adjuster, outcome }) => of === corner && adjuster === id && outcome !== 'wont-move',
  );
  const stands = rounds[at]!.settings[corner]?.[id];
  const isThere = last && stands !== undefined && samePosition(last.to, stands);
  return isThere && last.setBy?.within ? LOOSE * last.setBy.within : undefined;
}
/** How much wider a guess is taken than it is said to be, so that it does not outweigh what the rack showed. */
export const LOOSE = 3;

function wasSet(before: Round, after: Round, corner: Corner, id: string): boolean {
  const [was, is] = [before, after].map(({ settings }) => settings[corner]?.[id]);
  if (was !== undefined && is !== undefined && !samePosition(was, is)) return true;
  return (before.moved ?? []).some(
    (one) => one.corner === corner && one.adjuster === id && one.outcome !== 'wont-move',
  );
}

/** What was read of an assembly, as its mechanism numbers it. */
export function numbersRead({ corners, sides }: Assembly, reading: Reading): Float64Array {
  const numbers = new Float64Array(numbersOf(sides)).fill(Number.NaN);
  const put = (corner: Corner, angle: number, value: number | undefined): void => {
    if (value !== undefined) numbers[placeAmong(corners, corner, angle)] = value;
  };
  for (const corner of corners) {
    const { camber, caster, toe } = reading[corner] ?? {};
    put(corner, CAMBER, camber);
    put(corner, CASTER, caster);
    put(corner, TOE, toe);
  }
  if (hasBody(sides)) {
    const { pinionAngle, lateral } = reading[axleOf(corners[0]!)] ?? {};
    put(corners[0]!, PITCH, pinionAngle);
    put(corners[0]!, LATERAL, lateral);
  }
  return numbers;
}

/** One standard deviation of each of an assembly's numbers. */
export function gaugeNumbers({ corners, sides }: Assembly, gauge: Required<Gauge>): Float64Array {
  const { camber, caster, toe, pinionAngle, lateral } = gauge;
  const sigmas = corners.flatMap(() => {
    const own = new Float64Array(3);
    own[CAMBER] = camber;
    own[CASTER] = caster;
    own[TOE] = toe;
    return [...own];
  });
  return Float64Array.from(hasBody(sides) ? [...sigmas, pinionAngle, lateral] : sigmas);
}

/** The axle that an assembly is of. */
export const axleNamed = ({ corners }: Pick<Assembly, 'corners'>): AxleName => axleOf(corners[0]!);
