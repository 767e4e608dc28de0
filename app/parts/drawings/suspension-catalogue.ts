import { ownNames } from '../../../core/suspension/by-kind.ts';
import { beamCrossRod } from './beam-cross-rod.ts';
import { beamFront } from './beam-front.ts';
import { beamLinked } from './beam-linked.ts';
import { beamRear } from './beam-rear.ts';
import { doubleWishbone } from './double-wishbone.ts';
import { fiveLink } from './five-link.ts';
import { strut } from './strut.ts';
import type { SuspensionPicture } from './suspension-picture.ts';
import { trailingArm } from './trailing-arm.ts';
import { unknown } from './unknown.tsx';

/** The drawing of each suspension kind. A new kind is one more file and one more line. */
export const suspensionPictures: Readonly<Record<string, SuspensionPicture | undefined>> = ownNames<
  SuspensionPicture | undefined
>({
  'double-wishbone': doubleWishbone,
  strut,
  'five-link': fiveLink,
  'trailing-arm': trailingArm,
  'beam-front': beamFront,
  'beam-cross-rod': beamCrossRod,
  'beam-rear': beamRear,
  'beam-linked': beamLinked,
  unknown,
});
