/** A car of which one assembly is as it was learned. */
import type { Side } from '../adjuster/of-corner.ts';
import type { Axle, Car, Corner } from '../contract.ts';
import { axleOf, isLeft } from '../corners.ts';
import type { Assembly } from '../pose/car-model.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';

/** The car with an assembly's sides as they were learned. */
export function built(car: Car, { corners }: Assembly, sides: readonly Side[]): Car {
  const name = axleOf(corners[0]!);
  return { ...car, [name]: corners.reduce((axle, corner, i) => withSide(axle, corner, sides[i]!), car[name]) };
}

function withSide(axle: Axle, corner: Corner, { suspension, adjusters }: Side): Axle {
  const right = axle.rightSuspension ?? asRight(axle.suspension);
  const own = adjusters.some((one) => !axle.adjusters.includes(one));
  const inOwn = (list: Axle['adjusters']) => list.map((one) => adjusters.find(({ id }) => id === one.id) ?? one);
  const lists = axle.rightAdjusters ?? axle.adjusters;
  if (isLeft(corner)) {
    const changed = own ? { adjusters: inOwn(axle.adjusters), rightAdjusters: lists } : {};
    return { ...axle, suspension, rightSuspension: right, ...changed };
  }
  const changed = own && adjusters.some((one) => !lists.includes(one)) ? { rightAdjusters: inOwn(lists) } : {};
  return { ...axle, rightSuspension: asRight(suspension), ...changed };
}

/** As the right side of an axle has it: what a rigid axle has once stands with the left. */
function asRight(suspension: Axle['suspension']): Axle['suspension'] {
  const once = suspensionKinds[suspension.kind]?.rigidAxle?.once ?? [];
  const points = Object.entries(suspension.points).filter(([point]) => !once.includes(point));
  return { ...suspension, points: Object.fromEntries(points) };
}
