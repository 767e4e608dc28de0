import type { AxleName } from '../contract.ts';
import { beamCrossRod } from './beam-cross-rod.ts';
import { beamFront } from './beam-front.ts';
import { beamLinked } from './beam-linked.ts';
import { beamRear } from './beam-rear.ts';
import { doubleWishboneFront, doubleWishboneRear } from './double-wishbone.ts';
import { fiveLink } from './five-link.ts';
import type { Starter } from './starter.ts';
import { strut } from './strut.ts';
import { trailingArm } from './trailing-arm.ts';

/** Every starter: a kind that has a common layout adds its file and a line here. */
export const starters: readonly Starter[] = [
  doubleWishboneFront,
  doubleWishboneRear,
  strut,
  fiveLink,
  trailingArm,
  beamFront,
  beamCrossRod,
  beamLinked,
  beamRear,
];

/** Starters of a kind, those laid out for this axle first. */
export const startersFor = (kind: string, axle: AxleName): readonly Starter[] =>
  starters.filter((one) => one.kind === kind).sort((a, b) => Number(b.axle === axle) - Number(a.axle === axle));
