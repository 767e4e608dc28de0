/** What was learned of a car, adjuster by adjuster: what a step of each does by what was entered and by what was read. */
import { adjusterKinds } from '../adjuster/catalogue.ts';
import { adjusterName } from '../adjuster/names.ts';
import { unknownsOf } from '../adjuster/unknowns.ts';
import type { Car, CarModel, Corner, LearnedPart, LiveAngle, Settings } from '../contract.ts';
import { Uncertainty } from '../plan/chance/covariance.ts';
import { learnedAbout, learnedName } from '../plan/chance/learned-part.ts';
import { anglesAt } from '../plan/chance/move-error.ts';
import { placeAmong } from '../plan/states/state-space.ts';
import { type Assembly, compileCar } from '../pose/car-model.ts';
import { CAMBER, CASTER, TOE } from '../pose/numbers.ts';
import { DEFAULT_AXLE_GAUGE, DEFAULT_GAUGE } from '../reading/gauge.ts';
import type { Named, Step } from '../said.ts';

/** What a step does to an angle of its wheel, degrees, and one standard deviation of that. */
export interface Effect {
  readonly by: number;
  readonly deviation: number;
}
/** One angle that a step of an adjuster moves. */
export interface TaughtAngle {
  readonly angle: LiveAngle;
  /** As it was entered, and as readings have shown it. */
  readonly entered: Effect;
  readonly learned: Effect;
}
/** One adjuster of a corner of which readings have told something. */
export interface Taught {
  readonly corner: Corner;
  readonly adjuster: Named;
  readonly said: Step;
  /** Those that it moves, the most first. */
  readonly angles: readonly TaughtAngle[];
}

const ANGLES = [
  ['camber', CAMBER],
  ['caster', CASTER],
  ['toe', TOE],
] as const;
/** Of the most that a step moves an angle, below which another is not worth a line. */
const LEAST_SHARE = 0.1;
/** Share of what was not known that has to be known now for something to have been learned. */
const LEARNED = 0.9;

/** @param car as it was entered; @param model as it was learned: the same car */
export function taughtIn(car: Car, model: CarModel): readonly Taught[] {
  const learned = compileCar(model);
  return compileCar(car).flatMap((entered, i) => {
    const part = learnedAbout(model.learned?.parts, entered);
    return part ? ofAssembly(entered, learned[i]!, part) : [];
  });
}

function ofAssembly(entered: Assembly, learned: Assembly, part: LearnedPart): readonly Taught[] {
  const { corners, sides } = entered;
  return sides.flatMap(({ adjusters }, side) =>
    adjusters.flatMap((adjuster): Taught[] => {
      const { from, to, said } = adjusterKinds[adjuster.kind]!.step(adjuster);
      const at = (position: typeof from): readonly Settings[] =>
        sides.map((_, i) => (i === side ? { [adjuster.id]: position } : {}));
      const before = stepOf(entered, at(from), at(to), priorOf(entered));
      const after = stepOf(learned, at(from), at(to), part);
      if (!before || !after) return [];
      const corner = corners[side]!;
      const all = ANGLES.flatMap(([angle, number]): TaughtAngle[] => {
        const place = placeAmong(corners, corner, number);
        const [e, l] = [before[place]!, after[place]!];
        return Number.isFinite(e.by) && Number.isFinite(l.by) ? [{ angle, entered: e, learned: l }] : [];
      });
      const most = Math.max(...all.map((one) => sizeOf(one)));
      const angles = all.filter((one) => sizeOf(one) > LEAST_SHARE * most).sort((a, b) => sizeOf(b) - sizeOf(a));
      const isTaught = angles.some((one) => one.learned.deviation < LEARNED * one.entered.deviation);
      const named = { corner, adjuster: adjuster.id, name: adjusterName(adjuster) };
      return isTaught ? [{ corner, adjuster: named, said, angles }] : [];
    }),
  );
}

const sizeOf = ({ entered, learned }: TaughtAngle): number => Math.max(Math.abs(entered.by), Math.abs(learned.by));

/** Number by number what a step does; the hand and the gauge are none of it. */
function stepOf(assembly: Assembly, from: readonly Settings[], to: readonly Settings[], known: LearnedPart) {
  const [stood, goes] = [anglesAt(assembly.model, from), anglesAt(assembly.model, to)];
  if (!stood || !goes) return undefined;
  const unknown = new Uncertainty(assembly, from, { ...DEFAULT_AXLE_GAUGE, ...DEFAULT_GAUGE }, { learned: known });
  const slopes = unknown.slopes(to) ?? new Float64Array();
  return Array.from(goes, (angle, k): Effect => {
    let variance = 0;
    for (let at = k; at < slopes.length; at += unknown.size) variance += slopes[at]! ** 2;
    return { by: angle - stood[k]!, deviation: Math.sqrt(variance) };
  });
}

/** What was known before anything was read, in the same form. */
export function priorOf(assembly: Assembly): LearnedPart {
  const unknowns = unknownsOf(assembly.sides);
  return {
    corners: assembly.corners,
    unknowns: unknowns.map((one) => learnedName(assembly, one)),
    covariance: unknowns.flatMap(({ sigma }, i) => [...new Array<number>(i).fill(0), sigma * sigma]),
  };
}
