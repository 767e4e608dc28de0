import type { Vec3 } from '../../../core/contract.ts';

/** What the drawing of a suspension kind is made from. The corner frame is the core's: x forward, y outboard, z up, mm. */
export interface SuspensionPicture {
  readonly name: string;
  /** A made-up corner of this kind, drawn until there are measured points. */
  readonly points: Readonly<Record<string, Vec3>>;
  /** Each point as a technician calls it. */
  readonly labels: Readonly<Record<string, string>>;
  readonly links: readonly (readonly [string, string])[];
  /** Points of the upright, each joined to the wheel centre by a soft line. */
  readonly upright: readonly string[];
}
