import { beamCrossRod } from './beam-cross-rod.ts';
import { beamFront } from './beam-front.ts';
import { beamLinked } from './beam-linked.ts';
import { beamRear } from './beam-rear.ts';
import { byKind } from './by-kind.ts';
import { doubleWishbone } from './double-wishbone.ts';
import { fiveLink } from './five-link.ts';
import type { SuspensionKind } from './kind.ts';
import { strut } from './strut.ts';
import { trailingArm } from './trailing-arm.ts';
import { unknown } from './unknown.ts';

/** Every suspension kind: adding one is its file and a line here. */
export const suspensionKinds: Readonly<Record<string, SuspensionKind>> = byKind([
  ...[doubleWishbone, strut, fiveLink, trailingArm],
  ...[beamFront, beamRear, beamLinked, beamCrossRod, unknown],
]);
