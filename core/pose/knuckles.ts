/**
 * Two knuckles that hang together. The drag link holds one of them, so that it is solved alone; then the cross rod's near
 * end is where that knuckle has taken it, and the other knuckle is solved by it. Two bodies, one after the other, by the
 * solver that serves every kind.
 */
import type { Suspension } from '../contract.ts';
import { distance, sub } from '../geometry/vector.ts';
import type { SuspensionKind } from '../suspension/kind.ts';
import { DISTANCE, type HeldRow } from './rows.ts';
import type { PoseSolver } from './solver.ts';
import type { Draft, HeldWheel } from './wheel-rows.ts';

/** How the second knuckle hangs on the first. */
export interface CrossRod {
  /** The body that the drag link holds: 0 on the left, 1 on the right. */
  readonly first: 0 | 1;
  /** Parameters of the drag link's end at the steering box. */
  readonly box: number;
  /** Parameters of the rod's near end: in the first body, and as the second body's row has it. */
  readonly arm: number;
  readonly end: number;
  /** The name of that end. */
  readonly near: string;
}

/**
 * Writes the rows of both links; the left wheel, with which they are given, has their points and lengths.
 * @param left the left side's suspension, whose frame the bodies have
 * @param drafts of the left and of the right knuckle
 */
export function joinKnuckles(
  { links = [] }: SuspensionKind,
  { points }: Suspension,
  drafts: readonly Draft[],
  wheel: HeldWheel,
): { readonly crossRod: CrossRod; readonly wheel: HeldWheel } {
  const names = links.flat();
  const [drag, knuckle, near, far] = names as [string, string, string, string];
  const first = points[knuckle]![1] < 0 ? 1 : 0;
  const [holds, hangs] = [drafts[first]!, drafts[1 - first]!];
  const { params } = holds;
  const link = (draft: Draft, ends: HeldRow['ends']): number => {
    const at = params.length;
    const [body, knuckle] = [points[ends[0]]!, points[ends[1]]!];
    params.push(...body, ...sub(knuckle, draft.home), distance(body, knuckle));
    draft.rows.push({ type: DISTANCE, at, side: 0, ends });
    return at;
  };
  const dragAt = link(holds, links[0]!);
  const arm = params.length;
  params.push(...sub(points[near]!, holds.home));
  const end = link(hangs, links[1]!);
  const slots = [dragAt, dragAt + 3, arm, end + 3].map((slot, i) => [names[i]!, [slot]] as const);
  return {
    crossRod: { first, box: dragAt, arm, end, near },
    wheel: {
      ...wheel,
      slots: new Map([...wheel.slots, ...slots]),
      onUpright: new Set([...wheel.onUpright, ...names.slice(1)]),
      lengths: new Map([...wheel.lengths, [drag, dragAt + LENGTH], [near, end + LENGTH]]),
      elsewhere: new Map(names.slice(1).map((name) => [name, name === far ? 1 - first : first])),
    },
  };
}
/** Where a distance row has its length. */
const LENGTH = 6;

/** Takes the rod's near end to where the first knuckle, as it is now solved, has it. */
export function carryEnd({ arm, end }: CrossRod, { pose, rotation: r }: PoseSolver, params: Float64Array): void {
  const [x, y, z] = [params[arm]!, params[arm + 1]!, params[arm + 2]!];
  for (let i = 0; i < 3; i++) {
    params[end + i] = pose[i]! + r[3 * i]! * x + r[3 * i + 1]! * y + r[3 * i + 2]! * z;
  }
}
