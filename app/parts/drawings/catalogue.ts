import { ownNames } from '../../../core/suspension/by-kind.ts';
import { axleWedge } from './axle-wedge.tsx';
import { clampBolt } from './clamp-bolt.tsx';
import { eccentricCam } from './eccentric-cam.tsx';
import { effectTable } from './effect-table.tsx';
import { indexedCam } from './indexed-cam.tsx';
import { offsetSleeve } from './offset-sleeve.tsx';
import type { AdjusterPicture } from './picture.tsx';
import { shimPack } from './shim-pack.tsx';
import { slide } from './slide.tsx';
import { threadedRod } from './threaded-rod.tsx';
import { wedgeShim } from './wedge-shim.tsx';

/** The drawing of each adjuster kind. A new kind is one more file and one more line. */
export const adjusterPictures: Readonly<Record<string, AdjusterPicture | undefined>> = ownNames<
  AdjusterPicture | undefined
>({
  'shim-pack': shimPack,
  'indexed-cam': indexedCam,
  'eccentric-cam': eccentricCam,
  'threaded-rod': threadedRod,
  slide,
  'clamp-bolt': clampBolt,
  'offset-sleeve': offsetSleeve,
  'wedge-shim': wedgeShim,
  'axle-wedge': axleWedge,
  'effect-table': effectTable,
});
