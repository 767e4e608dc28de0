/**
 * How a phone leans, from the angles of a DeviceOrientationEvent: turned by α about the vertical, then by β about its own
 * x axis (across), then by γ about its y axis (along); W3C Device Orientation and Motion. The screen's outward normal then
 * has the vertical part cos β cos γ, which holds whichever way it is turned about the vertical, also where it stands upright
 * and α and γ alone mean nothing.
 */
import { asin, cos, degrees, radians } from '../geometry/angle.ts';

/** Degrees, as the event has them. */
export interface Orientation {
  readonly beta: number;
  readonly gamma: number;
}

/** Degrees that the top of an upright phone leans towards whoever looks at its screen. */
export const leanOf = ({ beta, gamma }: Orientation): number =>
  -degrees(asin(cos(radians(beta)) * cos(radians(gamma))));
