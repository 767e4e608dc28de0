/** What a move that is not made exactly changes: each cause of it for itself. */
import type { Unsure } from '../../adjuster/kind.ts';
import { madeWithin } from '../../adjuster/unknowns.ts';
import type { Position, Settings } from '../../contract.ts';
import { type Change, changeBetween, changeOf } from '../../pose/change.ts';
import type { Mechanism } from '../../pose/mechanism.ts';

/** What each adjuster's error is: all of it, or what stays where the rest is learned. */
export type ErrorOf = 'all' | keyof Pick<Unsure, 'left'>;

/** What a move changes beside what it should, of the parameters, where it is so many standard deviations off. */
export type Off = (sigmas: number) => Change;

/**
 * Each way in which a move of one adjuster may be off, independent of one another.
 * @param stood where it was moved from
 * @param within how exactly, one standard deviation in its kind's unit, where it is not set as its kind is
 */
export function waysOff(
  model: Mechanism,
  side: number,
  id: string,
  stood: Position,
  position: Position,
  of: ErrorOf = 'all',
  within?: number,
): readonly Off[] {
  const { adjuster, kind } = model.fitted[side]!.get(id)!;
  const { tolerance, unsure } = kind;
  const by = within ?? madeWithin(adjuster);
  if (by === 0) return [];
  const error = (of === 'left' ? unsure?.left : undefined) ?? tolerance.error;
  if (error) {
    const wheel = model.linkage.wheels[side]!;
    return error(adjuster, stood, position, by).map((effect): Off => {
      const one = changeOf(wheel, effect);
      return (sigmas) => ({ at: one.at, by: one.by.map((x) => sigmas * x) });
    });
  }
  const beyond = (sigmas: number): Position =>
    tolerance.off?.(position, sigmas * by) ?? (position as number) + sigmas * by;
  const asked = model.change(side, id, position);
  return [(sigmas) => changeBetween(model.change(side, id, beyond(sigmas)), asked)];
}

/** An assembly's angles at these positions; nothing where there is no pose. */
export function anglesAt(model: Mechanism, at: readonly Settings[]): Float64Array | undefined {
  const params = model.parameters(at);
  const angles = new Float64Array(model.numbers);
  return model.angles(params, angles) ? angles : undefined;
}
