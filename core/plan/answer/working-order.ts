/**
 * In which order the moves are made. Trade practice, seen in makers' manuals: the rear before the front, since it sets
 * the thrust line; caster, then camber, then toe, since each changes those after it more than those before it. Cams of
 * a lower arm are set for camber first: there the cam that is there for caster shifts camber as much. Data, as cars
 * differ.
 */
import { adjusterKinds } from '../../adjuster/catalogue.ts';
import type { Side } from '../../adjuster/of-corner.ts';
import { type Adjuster, type AxleName, CORNERS, type Corner } from '../../contract.ts';
import { axleOf } from '../../corners.ts';
import type { CornerModel } from '../../pose/mechanism.ts';
import { suspensionKinds } from '../../suspension/catalogue.ts';

/** The angle that an adjuster is there for. */
export type Role = 'caster' | 'camber' | 'toe';

export const WORKING_ORDER = {
  axles: ['rear', 'front'] as readonly AxleName[],
  roles: ['caster', 'camber', 'toe'] as readonly Role[],
  /** On a side that has cams at a lower arm. */
  lowerCams: ['camber', 'caster', 'toe'] as readonly Role[],
};

/** An adjuster whose step turns the wheel at least this many times as much as it leans it is there for toe. */
const MOSTLY_TOE = 2;

export function roleOf(model: CornerModel, adjuster: Adjuster): Role {
  const kind = adjusterKinds[adjuster.kind];
  if (!kind) return 'camber';
  const { from, to } = kind.step(adjuster);
  const a = model.all({ [adjuster.id]: from });
  const b = model.all({ [adjuster.id]: to });
  if (!a.reachable || !b.reachable) return 'camber';
  // A cross rod may leave alone the wheel that it is listed with.
  const change = (angle: Role): number =>
    Math.max(...b.corners.map((corner, i) => Math.abs((corner[angle] ?? 0) - (a.corners[i]?.[angle] ?? 0))));
  if (change('toe') > MOSTLY_TOE * Math.max(change('camber'), change('caster'))) return 'toe';
  return change('caster') > change('camber') ? 'caster' : 'camber';
}

/** Whether it turns two knuckles alike: the drag link, which sets the steering wheel straight once total toe is right. */
export function steersBoth(model: CornerModel, adjuster: Adjuster): boolean {
  const step = model.kind.rigidAxle?.knuckles && adjusterKinds[adjuster.kind]?.step(adjuster);
  const [a, b] = step ? [step.from, step.to].map((at) => model.all({ [adjuster.id]: at })) : [];
  if (!a?.reachable || !b?.reachable) return false;
  const [left, right] = b.corners.map(({ toe }, i) => toe - (a.corners[i]?.toe ?? toe)) as [number, number];
  return Math.abs(left - right) / 2 > Math.abs(left + right);
}

/** Whether a side has a cam, numbered or eccentric, at a lower arm. */
export function hasLowerCams({ suspension, adjusters }: Side): boolean {
  const { lowerArm = [] } = suspensionKinds[suspension.kind] ?? {};
  return adjusters.some((adjuster) => {
    const kind = adjusterKinds[adjuster.kind];
    return kind?.cam === true && kind.touches(adjuster).points?.some((name) => lowerArm.includes(name));
  });
}

/** Behind all of its axle that go by their marks: what cannot be watched comes first, and what is watched makes up for it. */
export const BY_RACK = WORKING_ORDER.roles.length * CORNERS.length;

/** Behind its corner's others of the same role, before the next corner's. */
export const AFTERWARDS = 0.5;

/**
 * Where a move stands in the working order: less is earlier.
 * @param lowerCams whether the side has cams at a lower arm
 */
export function rankOf(corner: Corner, role: Role, lowerCams: boolean): number {
  const { axles, roles, lowerCams: withLowerCams } = WORKING_ORDER;
  const axle = axles.indexOf(axleOf(corner)) * 2 * BY_RACK;
  return axle + (lowerCams ? withLowerCams : roles).indexOf(role) * CORNERS.length + CORNERS.indexOf(corner);
}
