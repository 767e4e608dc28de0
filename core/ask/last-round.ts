/** The last round of a car file that holds: the car as it was known then, where its adjusters stand, and what nobody knows. */
import { adjusterKinds } from '../adjuster/catalogue.ts';
import { adjustersOf } from '../adjuster/of-corner.ts';
import { validatePacks } from '../check/packs.ts';
import type {
  AdjusterRef,
  Car,
  CarFile,
  CarPacks,
  CarSettings,
  Corner,
  Gauge,
  Learned,
  Reading,
  Round,
  Visit,
} from '../contract.ts';
import { CORNERS } from '../contract.ts';
import { AXLES, axleOf } from '../corners.ts';
import { InputError } from '../input-error.ts';
import { latestRound, latestVisit, movedOn, packsAfter, stillUnknown } from '../records/rounds.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { knownCar } from './known-car.ts';
import { placed, settingsOf } from './settled.ts';

export interface LastRound {
  /** As all rounds up to this one have shown it. */
  readonly car: Car;
  readonly visit: Visit;
  readonly round: Round;
  /** Where the adjusters stood at its reading, and where they stand after its moves. */
  readonly from: CarSettings;
  readonly settings: CarSettings;
  /** What is in packs after its moves, as far as it is known. */
  readonly packs: CarPacks;
  /** Adjusters of which nothing has told yet where they stand, and of which that counts. */
  readonly lost: readonly AdjusterRef[];
  /** Those of unknown place of which something has, where that was counted from elsewhere: by how much it is on. */
  readonly found: readonly (AdjusterRef & { readonly on: number })[];
}

/** @param file validated */
export function lastRound(file: CarFile, gauge?: Gauge): LastRound {
  const { visits = [] } = file;
  const visit = latestVisit(visits);
  const round = visit && latestRound(visit);
  if (!visit || !round) throw new InputError('visits', visits, { is: 'round' });
  const field = `visits[${visits.indexOf(visit)}].rounds[${visit.rounds.indexOf(round)}]`;
  const car = knownCar(file, gauge);
  const { moved = [], unknown = [] } = round;
  const stood = settingsOf(round, car, `${field}.settings`);
  const left = stillUnknown(unknown, moved);
  const goes = settingsOf({ settings: movedOn(stood, moved, unknown), unknown: left }, car, `${field}.moved`);
  const found = foundAmong(car, round.unknown ?? []);
  const [from, settings] = [atFound(stood, found, stood), atFound(goes, found, stood, left)];
  const packs = validatePacks(round.packs ?? {}, car, from, `${field}.packs`);
  const built = validatePacks(packsAfter(packs, moved), car, settings, `${field}.moved`);
  const lost = left.filter((ref) => !isEven(car, ref) && !found.some((one) => isSame(one, ref)));
  const on = found.map(({ corner, adjuster }) => {
    const [is, was] = [from, stood].map((own) => Number(own[corner]?.[adjuster]));
    return { corner, adjuster, on: is! - was! };
  });
  return { car, visit, round, from, settings, packs: built, lost, found: on };
}

type Place = NonNullable<Learned['places']>[number];
const isSame = (a: AdjusterRef, b: AdjusterRef): boolean => a.corner === b.corner && a.adjuster === b.adjuster;

/** Of adjusters of unknown place those of which readings have told since where they stand. */
const foundAmong = (car: Car, unknown: readonly AdjusterRef[]): readonly Place[] =>
  (car.learned?.places ?? []).filter((one) => unknown.some((ref) => isSame(one, ref)));

/** Positions on their own scale of those that were counted from anywhere: as far on as they were turned. @param stood at the reading */
const atFound = (
  settings: CarSettings,
  found: readonly Place[],
  stood: CarSettings,
  of: readonly AdjusterRef[] = found,
): CarSettings =>
  found
    .filter((one) => of.some((ref) => isSame(one, ref)))
    .reduce((all, one) => {
      const [counted, was] = [settings, stood].map((own) => own[one.corner]?.[one.adjuster]);
      return placed(all, one, one.at + (Number(counted) - Number(was) || 0));
    }, settings);

function isEven(car: Car, { corner, adjuster }: AdjusterRef): boolean {
  const own = adjustersOf(car, corner).find(({ id }) => id === adjuster);
  return !own || adjusterKinds[own.kind]?.even?.(own) === true;
}

/** A reading without the wheels on which an adjuster of unknown place was moved: nothing is to be expected of them. */
export function withoutLost(
  reading: Reading,
  { car, lost, from, settings }: LastRound,
  goes: CarSettings = settings,
): Reading {
  const isMoved = ({ corner, adjuster }: AdjusterRef) => from[corner]?.[adjuster] !== goes[corner]?.[adjuster];
  const gone = new Set(
    lost.filter(isMoved).flatMap(({ corner }): readonly Corner[] => {
      const axle = axleOf(corner);
      return suspensionKinds[car[axle].suspension.kind]?.rigidAxle ? AXLES[axle] : [corner];
    }),
  );
  const kept = CORNERS.filter((corner) => gone.has(corner)).map((corner) => [corner, {}] as const);
  return { ...reading, ...Object.fromEntries(kept) };
}

/** Positions of a later round of the visit, those of place unknown to it too on the scale that the last round has them on. */
export const sameScale = (
  { found }: LastRound,
  settings: CarSettings,
  unknown: readonly AdjusterRef[] = [],
): CarSettings =>
  found
    .filter((one) => unknown.some((ref) => isSame(one, ref)))
    .reduce((all, { corner, adjuster, on }) => {
      const at = all[corner]?.[adjuster];
      return typeof at === 'number' ? placed(all, { corner, adjuster }, at + on) : all;
    }, settings);
