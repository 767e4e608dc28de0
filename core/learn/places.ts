/**
 * Adjusters of unknown place: where they stand is one more number to be learned, anywhere on their travel before anything was
 * read. What a cam does hangs on it as a sine does, so that the search begins from several places.
 */
import type { Off } from '../plan/chance/move-error.ts';
import { changeBetween } from '../pose/change.ts';
import type { Mechanism } from '../pose/mechanism.ts';
import type { Sight } from './evidence.ts';

/** Sigmas from the middle of the travel at which a search begins. */
const STARTS = [0, -1.2, 1.2] as const;
/** Of more than so many the search begins in the middle alone. */
const MOST_LOST = 2;

/** Its ends and one standard deviation of a place anywhere between, as its scale counts; nothing of labels: those are not turned on from a place. */
export function travelOf(model: Mechanism, side: number, id: string) {
  const { adjuster, kind } = model.fitted[side]!.get(id)!;
  const all = kind.positions(adjuster);
  const [low, high] = [all[0], all.at(-1)];
  if (typeof low !== 'number' || typeof high !== 'number') return undefined;
  return { low, high, sigma: (high - low) / Math.sqrt(12) };
}

/** What standing elsewhere than counted does at a sight, of each adjuster whose place is not known. */
export function waysLost(
  model: Mechanism,
  { settings, lost }: Sight,
): readonly { readonly off: Off; readonly place: string }[] {
  return lost.flatMap(({ side, id, place }) => {
    const travel = travelOf(model, side, id);
    const said = settings[side]![id]!;
    if (!travel || typeof said !== 'number') return [];
    const counted = model.change(side, id, said);
    const off: Off = (sigmas) => changeBetween(model.change(side, id, said + sigmas * travel.sigma), counted);
    return [{ off, place }];
  });
}

/** Where a search begins: the places of so many adjusters, in sigmas. */
export function startsOf(lost: number): readonly (readonly number[])[] {
  if (lost > MOST_LOST) return [new Array<number>(lost).fill(0)];
  let all: number[][] = [[]];
  for (let i = 0; i < lost; i++) all = all.flatMap((one) => STARTS.map((at) => [...one, at]));
  return all;
}

/** Where an adjuster of unknown place was found, in sigmas of its travel from where it was counted. */
export interface FoundPlace {
  readonly place: string;
  readonly at: number;
  readonly deviation: number;
}

/** What a search has ended at. */
interface End {
  readonly places: readonly FoundPlace[];
  /** −2 ln of how likely it is. */
  readonly cost: number;
}

/** Sigmas within which two ends are one. */
const SAME = 0.05;

/**
 * The best end's places with how well they are known: a cam that does as much from one place as from another may have stood
 * at either, and one move does not tell. Another end counts as it is likely.
 */
export function asSure(best: End, ends: readonly End[]): readonly FoundPlace[] {
  const isSame = (a: End, b: End) => a.places.every(({ at }, i) => Math.abs(at - b.places[i]!.at) < SAME);
  const others = ends.filter((one, i) => !isSame(one, best) && !ends.slice(0, i).some((other) => isSame(one, other)));
  return best.places.map((one, i) => {
    let [weights, variance] = [1, one.deviation ** 2];
    for (const { places, cost } of others) {
      const weight = Math.exp((best.cost - cost) / 2);
      const { at, deviation } = places[i]!;
      weights += weight;
      variance += weight * (deviation ** 2 + (at - one.at) ** 2);
    }
    return { ...one, deviation: Math.sqrt(variance / weights) };
  });
}
