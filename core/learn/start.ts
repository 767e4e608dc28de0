/**
 * What was learned of one car as what is known of another of the same build before anything was read of it: an axle's points
 * and charts as they were found, and how well they are known. Cars of a build differ by what bushes, brackets and bodies do.
 */
import { movedBy, unknownsOf } from '../adjuster/unknowns.ts';
import type { AxleName, AxleStart, Car, CarModel, LearnedPart } from '../contract.ts';
import { axleOf } from '../corners.ts';
import { learnedAbout, learnedName, learnedUnknowns } from '../plan/chance/learned-part.ts';
import { type Assembly, compileCar } from '../pose/car-model.ts';
import { built } from './built.ts';

/** One standard deviation of what two cars of a build differ by: mm of a point, a share of a chart. Trade practice, no source. */
const APART = { point: 2, share: 0.03 } as const;

/** Figures that are kept: more say nothing. */
const rounded = (x: number): number => Number(x.toPrecision(6));

/** @param car as it was entered; @param model as it was learned; @param readings how many have taught */
export function startOf(car: Car, model: CarModel, readings: number): Readonly<Partial<Record<AxleName, AxleStart>>> {
  const found: Partial<Record<AxleName, AxleStart>> = {};
  for (const assembly of compileCar(car)) {
    const learned = learnedAbout(model.learned?.parts, assembly);
    if (!learned) continue;
    const { by: _, ...part } = learned;
    const axle = axleOf(assembly.corners[0]!);
    const before = found[axle] ?? { of: car.label.slice(0, 120), readings, parts: [] };
    found[axle] = {
      ...before,
      parts: [...before.parts, { ...widened(part, assembly), at: placesOf(learned, assembly) }],
    };
  }
  return found;
}

/** Never less known than before anything was read. */
function widened(part: LearnedPart, assembly: Assembly): LearnedPart {
  const unknowns = learnedUnknowns(part, assembly);
  let at = 0;
  const covariance = unknowns.flatMap((one, i) =>
    Array.from({ length: i + 1 }, (_, j) => {
      const value = part.covariance[at++]!;
      if (j < i) return rounded(value);
      const apart = 'point' in one ? APART.point : APART.share;
      return rounded(value + apart ** 2 * Math.max(0, 1 - value / one.sigma ** 2));
    }),
  );
  return { ...part, covariance };
}

/** Where each coordinate was found, mm, and by what share each chart is off. */
const placesOf = (part: LearnedPart, assembly: Assembly): readonly number[] =>
  learnedUnknowns(part, assembly).map((one, i) => {
    const by = part.by?.[i] ?? 0;
    return rounded('point' in one ? assembly.sides[one.side]!.suspension.points[one.point]![one.axis]! + by : by);
  });

/** The car with what it starts from, as a car that has learned; the same car where it starts from nothing. */
export function started(car: Car): CarModel {
  if (!car.front.start && !car.rear.start) return car;
  const { start: _, ...front } = car.front;
  const { start: __, ...rear } = car.rear;
  const bare: Car = { ...car, front, rear };
  const parts: LearnedPart[] = [];
  return compileCar(bare).reduce<Car>((now, assembly) => {
    const start = car[axleOf(assembly.corners[0]!)].start;
    const own = start?.parts.find(({ corners }) => corners.join() === assembly.corners.join());
    if (!own) return now;
    const { at, ...part } = own;
    const unknowns = unknownsOf(assembly.sides).filter((one) => part.unknowns.includes(learnedName(assembly, one)));
    const by = unknowns.map((one) => {
      const value = at[part.unknowns.indexOf(learnedName(assembly, one))]!;
      return 'point' in one ? value - assembly.sides[one.side]!.suspension.points[one.point]![one.axis]! : value;
    });
    parts.push(part);
    return { ...built(now, assembly, movedBy(assembly.sides, unknowns, by)), learned: { parts, leftOut: [] } };
  }, bare);
}
