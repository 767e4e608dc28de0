import { eccentricCam } from './eccentric-cam.tsx';
import { indexedCam } from './indexed-cam.tsx';
import type { AdjusterPicture } from './picture.tsx';
import { shimPack } from './shim-pack.tsx';
import { threadedRod } from './threaded-rod.tsx';

/** The drawing of each adjuster kind. A new kind is one more file and one more line. */
export const adjusterPictures: Readonly<Record<string, AdjusterPicture | undefined>> = {
  'shim-pack': shimPack,
  'indexed-cam': indexedCam,
  'eccentric-cam': eccentricCam,
  'threaded-rod': threadedRod,
};
