import { ownNames } from '../../../core/suspension/by-kind.ts';
import { axleWedge } from './axle-wedge.tsx';
import { clampBolt } from './clamp-bolt.tsx';
import { eccentricCam } from './eccentric-cam.tsx';
import { effectTable } from './effect-table.tsx';
import { clockFace } from './faces/clock.tsx';
import { numberFace } from './faces/numbers.tsx';
import { rodFace } from './faces/rod.tsx';
import { leanFace, slideFace, unsidedFace, wedgeFace } from './faces/scale.tsx';
import { shimFace, sleeveFace } from './faces/tapers.tsx';
import { indexedCam } from './indexed-cam.tsx';
import { offsetSleeve } from './offset-sleeve.tsx';
import type { AdjusterPicture } from './picture.tsx';
import { shimPack } from './shim-pack.tsx';
import { slide } from './slide.tsx';
import { threadedRod } from './threaded-rod.tsx';
import { wedgeShim } from './wedge-shim.tsx';

/** The drawing of each adjuster kind, and what is touched where it stands. A new kind is one more file and one more line. */
export const adjusterPictures: Readonly<Record<string, AdjusterPicture | undefined>> = ownNames<
  AdjusterPicture | undefined
>({
  'shim-pack': shimPack,
  'indexed-cam': { ...indexedCam, face: () => numberFace },
  'eccentric-cam': { ...eccentricCam, face: (adjuster) => (adjuster.turns ? clockFace : unsidedFace) },
  'threaded-rod': { ...threadedRod, face: () => rodFace },
  slide: { ...slide, face: () => slideFace },
  'clamp-bolt': { ...clampBolt, face: () => leanFace },
  'offset-sleeve': { ...offsetSleeve, face: () => sleeveFace },
  'wedge-shim': { ...wedgeShim, face: () => shimFace },
  'axle-wedge': { ...axleWedge, face: () => wedgeFace },
  'effect-table': effectTable,
});
