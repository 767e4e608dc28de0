/**
 * What the driver feels beside the angles that the rack shows: bump steer, camber gain, scrub radius, caster trail,
 * toe-out on turns. ISO 8855:2011 calls the two offsets steering-axis offset at ground and castor offset at ground.
 */
import type { CornerPose, Settings, Vec3 } from '../contract.ts';
import { dot, normalised, scale, sub } from '../geometry/vector.ts';
import { spinAxis } from '../geometry/wheel-angles.ts';
import type { CornerModel } from './mechanism.ts';

/** mm of bump and of droop over which bump steer and camber gain are told. */
export const TRAVEL = 25;
/** Degrees that the inner wheel is turned for toe-out on turns. */
export const TURN = 20;

/** What the driver feels of a corner's geometry; what it does not know is absent. */
export interface SideEffects {
  /** Toe, degrees, gained at 25 mm of bump, and at 25 mm of droop. */
  readonly bumpSteer?: readonly [number, number];
  /** Camber, degrees, gained at 25 mm of bump, and at 25 mm of droop. */
  readonly camberGain?: readonly [number, number];
  readonly sai?: number;
  /** mm at the ground from the steering axis to the contact, + where the contact is outboard. */
  readonly scrubRadius?: number;
  /** mm at the ground from the contact forward to the steering axis. */
  readonly casterTrail?: number;
  /** Degrees that the outer wheel turns less than the inner one when that is turned by 20°. */
  readonly toeOutOnTurns?: number;
}

/** Side effects of one compiled corner at these positions; what the geometry does not know is absent. */
export function sideEffectsOf(model: CornerModel, settings: Settings): SideEffects {
  const still = model.pose(settings);
  if (!still.reachable) return {};
  return { ...throughTravel(model, settings, still), ...atGround(model, still), ...throughTurn(model, settings) };
}

function throughTravel(model: CornerModel, settings: Settings, still: CornerPose): SideEffects {
  // A drag link steers as the axle goes up and down under its box.
  if (!model.kind.height && !model.kind.rigidAxle?.knuckles) return {};
  const bump = model.pose(settings, { travel: TRAVEL });
  const droop = model.pose(settings, { travel: -TRAVEL });
  if (!bump.reachable || !droop.reachable) return {};
  return {
    bumpSteer: [bump.toe - still.toe, droop.toe - still.toe],
    camberGain: [bump.camber - still.camber, droop.camber - still.camber],
  };
}

/** Points are counted from the ground; a wheel centre lower than this was measured from somewhere else. */
const LOWEST_CENTRE = 100;

function atGround(model: CornerModel, { points, wheelCentre, camber, toe, sai }: CornerPose): SideEffects {
  const ends = model.kind.steeringAxis;
  if (!ends || !wheelCentre || sai === undefined) return {};
  if (wheelCentre[2] < LOWEST_CENTRE) return { sai };
  const lower = points[ends[0]]!;
  const axis = sub(points[ends[1]]!, lower);
  const pierces = sub(lower, scale(axis, lower[2] / axis[2]));
  const spin = spinAxis(camber, toe);
  const down = normalised(sub(scale(spin, spin[2]), [0, 0, 1]));
  const contact = sub(wheelCentre, scale(down, wheelCentre[2] / down[2]));
  const outboard = normalised([spin[0], spin[1], 0]);
  const ahead: Vec3 = [outboard[1], -outboard[0], 0];
  const offset = sub(contact, pierces);
  return { sai, scrubRadius: dot(offset, outboard), casterTrail: -dot(offset, ahead) };
}

/** Both wheels of a symmetric axle by one corner: what the rack pushes out of one it pulls into the other. */
function throughTurn(model: CornerModel, settings: Settings): SideEffects {
  if (!model.kind.rack) return {};
  const toeAt = (rack: number): number => {
    const pose = model.pose(settings, { rack });
    return pose.reachable ? pose.toe : Number.NaN;
  };
  const straight = toeAt(0);
  let last = 0;
  let rack = 5;
  let lastToe = straight;
  // Secant steps to the rack travel that turns the inner wheel's front outboard by TURN.
  for (let i = 0; i < 30; i++) {
    const toe = toeAt(rack);
    if (Math.abs(toe - (straight - TURN)) < 1e-9) break;
    const next = rack + ((straight - TURN - toe) * (rack - last)) / (toe - lastToe);
    if (!Number.isFinite(next) || Math.abs(next) > 400) return {};
    last = rack;
    lastToe = toe;
    rack = next;
  }
  const outer = toeAt(-rack) - straight;
  return Number.isFinite(outer) ? { toeOutOnTurns: TURN - outer } : {};
}
