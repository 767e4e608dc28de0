import { byKind } from '../suspension/by-kind.ts';
import { axleWedge } from './axle-wedge.ts';
import { clampBolt } from './clamp-bolt.ts';
import { eccentricCam } from './eccentric-cam.ts';
import { effectTable } from './effect-table.ts';
import { indexedCam } from './indexed-cam.ts';
import type { AdjusterKind } from './kind.ts';
import { offsetSleeve } from './offset-sleeve.ts';
import { shimPack } from './shim-pack.ts';
import { slide } from './slide.ts';
import { threadedRod } from './threaded-rod.ts';
import { wedgeShim } from './wedge-shim.ts';

/** Every adjuster kind: adding one is its file and a line here. It has its own names and no others. */
export const adjusterKinds: Readonly<Record<string, AdjusterKind>> = byKind([
  ...[shimPack, indexedCam, eccentricCam, threadedRod, slide, clampBolt],
  ...[offsetSleeve, wedgeShim, axleWedge, effectTable],
]);
