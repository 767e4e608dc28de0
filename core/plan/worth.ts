/**
 * What it would be worth to measure a length of a car of which only a usual layout is known: the chance of the plan were
 * it known to a tape's tolerance. Where it would come out is not known, so the car stays the likeliest and the plan as it is;
 * what is not known of it shrinks as the length's own measurement has it (adjuster/measured.ts).
 */
import { type Sighted, sighted } from '../adjuster/measured.ts';
import { DEFAULT_TOLERANCE } from '../adjuster/unknowns.ts';
import type { AxleName, PlanRequest, Suspension } from '../contract.ts';
import { AXLES, axleOf, isAxle } from '../corners.ts';
import { lengthsOf } from '../suspension/tape/measure.ts';
import { TAPE_TOLERANCE, type TapeDimension } from '../suspension/tape/tape.ts';
import { Choices } from './choose.ts';
import { chanceAt, type Problem, problemOf, valuesAt } from './problem.ts';
import { isIn } from './terms.ts';

/** One length that nobody has measured. */
export interface LengthWorth {
  /** Its name among the kind's tape dimensions. */
  readonly name: string;
  /** 0…1: what the chance would be with it. */
  readonly chance: number;
}
/** How sure an axle is, and what a tape would bring. */
export interface Worth {
  /** 0…1: the chance, as things are, that the re-measure of this axle is in all its windows that the plan meets. */
  readonly now: number;
  /** What helps most first; what helps alike in the order of the table. */
  readonly lengths: readonly LengthWorth[];
  /** The chance with all of them. */
  readonly all: number;
}

/** Whether nobody has measured the car's own points. */
export const isUsual = ({ tape, tolerance = DEFAULT_TOLERANCE }: Suspension): boolean =>
  tape === undefined && tolerance > TAPE_TOLERANCE;

/** Lengths of a layout that are still to be measured: from where a hand reaches, which the front axle is not at the rear. */
export const lengthsLeft = (suspension: Suspension): readonly TapeDimension[] =>
  isUsual(suspension)
    ? lengthsOf(suspension.kind).filter(
        ({ name, measure }) => measure !== 'behind' && suspension.measured?.[name] === undefined,
      )
    : [];

/**
 * Of every axle that is known as a usual layout.
 * @param request validated
 */
export function worthOf(request: PlanRequest): Readonly<Partial<Record<AxleName, Worth>>> {
  const problem = problemOf({ ...request, style: 'practical' });
  const positions = new Choices(problem).best('practical');
  const { values } = valuesAt(problem, positions);
  const met = problem.terms.filter((term) => isIn(term, values.get(term)!));
  const found = (Object.keys(AXLES) as AxleName[]).map((axle) => {
    const left = lengthsLeft(problem.request.car[axle].suspension);
    const own = met.filter(({ where }) => (isAxle(where) ? where : axleOf(where)) === axle);
    if (left.length === 0 || own.length === 0) return [axle, undefined] as const;
    const lengths = left.map(
      (one): LengthWorth => ({ name: one.name, chance: chanceAt(knowing(problem, axle, [one]), positions, own) }),
    );
    const now = chanceAt(problem, positions, own);
    const all = chanceAt(knowing(problem, axle, left), positions, own);
    return [axle, { now, lengths: lengths.sort((a, b) => b.chance - a.chance), all }] as const;
  });
  return Object.fromEntries(found.filter(([, worth]) => worth));
}

/** The problem with lengths of an axle known, on both of its sides. */
function knowing(problem: Problem, axle: AxleName, known: readonly TapeDimension[]): Problem {
  const uncertainty = new Map(problem.uncertainty);
  for (const [assembly, own] of problem.uncertainty) {
    if (axleOf(assembly.corners[0]!) !== axle) continue;
    uncertainty.set(
      assembly,
      own.knowing((unknowns) =>
        assembly.sides.flatMap((side, i): readonly Sighted[] =>
          lengthsOf(side.suspension.kind)
            .filter((one) => known.includes(one))
            .map((one) => sighted(one, TAPED, side, i, unknowns)),
        ),
      ),
    );
  }
  return { ...problem, uncertainty };
}

/** Measured to a tape's tolerance, whatever it is. */
const TAPED = { value: 0, tolerance: TAPE_TOLERANCE };
