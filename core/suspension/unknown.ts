import type { SuspensionKind } from './kind.ts';

/** No geometry: each adjuster carries its own effect, from the kit's printed chart or as so many degrees a step. */
export const unknown: SuspensionKind = {
  kind: 'unknown',
  name: 'No geometry, the chart only',
  points: [],
  height: false,
};
