import type { Adjuster, Axle } from '../contract.ts';
import { adjusterKinds } from './catalogue.ts';

/** Whether it changes the length of a link: a chart is about those that lean the wheel. */
const isRod = (adjuster: Adjuster): boolean => Boolean(adjusterKinds[adjuster.kind]?.touches(adjuster).links?.length);

/**
 * Ids of the two adjusters that a chart of one side is about: those that are no rods, the first two where there are
 * more. Nothing where there are fewer than two.
 * @param adjusters those of one side, or of an axle whose sides are alike
 */
export function chartPair({ adjusters }: Pick<Axle, 'adjusters'>): readonly [string, string] | undefined {
  const leaning = adjusters.filter((one) => !isRod(one));
  const [first, second] = leaning.length >= 2 ? leaning : adjusters;
  return first && second ? [first.id, second.id] : undefined;
}
