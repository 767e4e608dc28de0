/** That not every setting was tried, and what is known of the plan all the same. */
import type { Note } from '../../said.ts';
import type { Proof } from '../choose.ts';
import type { FineSpace } from '../fine/fine-space.ts';
import type { Evaluation } from '../problem.ts';
import type { Work } from '../search/work.ts';

/** Half windows all together: more off the aims than this is not worth telling. */
const ON_AIM = 0.05;

/**
 * @param fine assemblies of which not all states were gone through
 * @param judged the plan
 * @param work that the searches have done
 */
export function bestFoundNotes(
  fine: readonly FineSpace[],
  { proven, around, bound }: Proof,
  { distance, inWindow }: Pick<Evaluation, 'distance' | 'inWindow'>,
  { isCut }: Work,
): Note[] {
  if (isCut) return [{ note: 'not-proven', inWindow }];
  if (proven || fine.length === 0) return [];
  const settings = Math.max(...fine.map(({ all }) => all));
  const offAim = Math.sqrt(distance);
  return [
    {
      ...{ note: 'best-found', settings },
      ...(around !== undefined && { around: howFar(fine, around) }),
      ...(bound !== undefined && offAim < ON_AIM && { offAim }),
    },
  ];
}

/** In turns where all that has so many positions are rods that are set alike. */
function howFar(fine: readonly FineSpace[], positions: number) {
  const moved = fine.flatMap(({ axes }) => axes).filter((axis) => axis.positions.length > 2 * positions);
  const [first] = moved;
  const step: unknown = first?.adjuster.stepTurns;
  const isHalves = typeof step === 'number' && Number.isInteger(Math.round(positions * step * 2e6) / 1e6);
  if (isHalves && moved.every(({ adjuster }) => adjuster.stepTurns === step)) {
    return { by: positions * step, unit: 'turns' } as const;
  }
  return { by: positions, unit: 'positions' } as const;
}
