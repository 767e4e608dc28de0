import { eccentricCam } from './eccentric-cam.ts';
import { indexedCam } from './indexed-cam.ts';
import type { AdjusterKind } from './kind.ts';
import { shimPack } from './shim-pack.ts';
import { threadedRod } from './threaded-rod.ts';

/** Every adjuster kind: adding one is its file and a line here. */
export const adjusterKinds: Readonly<Record<string, AdjusterKind>> = Object.fromEntries(
  [shimPack, indexedCam, eccentricCam, threadedRod].map((kind) => [kind.kind, kind]),
);
