/** What a request lets go by the rack: adjusters that can be turned while it shows an angle that was measured. */
import { isLive } from '../adjuster/live.ts';
import { adjustersOf, sideOf } from '../adjuster/of-corner.ts';
import type { AdjusterRef, Corner, LiveAngle, PlanRequest, Settings } from '../contract.ts';
import { type Assembly, type CarModel, cornerOf } from '../pose/car-model.ts';
import { ANGLES_A_WHEEL, CAMBER, CASTER, numbersOf, TOE } from '../pose/numbers.ts';
import { inJobs } from './answer/jobs.ts';
import { AFTERWARDS, BY_RACK, hasLowerCams, rankOf, roleOf, steersBoth } from './answer/working-order.ts';
import type { Live, Turned } from './chance/by-rack.ts';
import { placeAmong } from './states/state-space.ts';
import type { Term } from './terms.ts';

const PLACE: Readonly<Record<LiveAngle, number>> = { camber: CAMBER, caster: CASTER, toe: TOE };
const ANGLE: Readonly<Record<number, LiveAngle>> = { [CAMBER]: 'camber', [CASTER]: 'caster', [TOE]: 'toe' };

type Asked = Pick<PlanRequest, 'car' | 'reading' | 'live'>;
type Positions = Readonly<Record<Corner, Settings>>;

/** In which order moves are made, worked out once for each adjuster. */
export class Order {
  readonly #ranks = new Map<string, number>();

  constructor(
    private readonly car: PlanRequest['car'],
    private readonly model: CarModel,
    private readonly now: Positions,
  ) {}

  /** Less is earlier. @param byRack its move goes by the rack */
  rank({ corner, adjuster }: AdjusterRef, byRack = false): number {
    const key = `${corner}/${adjuster}`;
    const rank = this.#ranks.get(key) ?? this.#rank(corner, adjuster);
    this.#ranks.set(key, rank);
    return rank + (byRack ? BY_RACK : 0);
  }

  #rank(corner: Corner, id: string): number {
    const own = cornerOf(this.model, corner, this.now);
    const adjuster = adjustersOf(this.car, corner).find((one) => one.id === id)!;
    const rank = rankOf(corner, roleOf(own, adjuster), hasLowerCams(sideOf(this.car, corner)));
    return rank + (steersBoth(own, adjuster) ? AFTERWARDS : 0);
  }
}

/** @param terms windows that count for the chance */
export function liveOf(
  { car, reading, live = [] }: Asked,
  assembly: Assembly,
  terms: readonly Term[],
  order: Order,
): Live {
  const { corners, sides } = assembly;
  const adjusterAt = ({ side, id }: Turned) => sides[side]!.adjusters.find((one) => one.id === id)!;
  return {
    shown: (one) =>
      isLive(adjusterAt(one))
        ? live
            .filter((angle) => reading[corners[one.side]!]?.[angle] !== undefined)
            .map((angle) => placeAmong(corners, corners[one.side]!, PLACE[angle]))
        : [],
    order: (moves, byRack) => {
      const steps = moves.map((one, i) => {
        const ref = { corner: corners[one.side]!, adjuster: one.id };
        return {
          i,
          corner: ref.corner,
          adjuster: adjusterAt(one),
          rank: order.rank(ref, byRack[i]),
          byRack: byRack[i]!,
        };
      });
      return inJobs(car, steps).flatMap((job) => job.map(({ i }) => i));
    },
    windows: terms.flatMap((term) => {
      const factors = new Float64Array(numbersOf(sides));
      for (const { corner, angle, factor } of term.parts) {
        if (corners.includes(corner)) factors[placeAmong(corners, corner, angle)]! += factor / term.window.half;
      }
      return factors.some((factor) => factor !== 0) ? [factors] : [];
    }),
  };
}

/** Which number of an assembly an angle of one of its corners is. */
export const numberAt = ({ corners }: Pick<Assembly, 'corners'>, corner: Corner, angle: LiveAngle): number =>
  placeAmong(corners, corner, PLACE[angle]);
/** Which angle of its corner a number of an assembly is. */
export const angleAt = (at: number): LiveAngle => ANGLE[at % ANGLES_A_WHEEL]!;
