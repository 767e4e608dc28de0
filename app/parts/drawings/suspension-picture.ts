import type { FunctionComponent } from 'preact';
import type { Vec3 } from '../../../core/contract.ts';

/** A point by its name, or a place that nobody measures, such as an axle's middle. */
export type Place = string | Vec3;

/** What the drawing of a suspension kind is made from. The corner frame is the core's: x forward, y outboard, z up, mm. */
export interface SuspensionPicture {
  readonly name: string;
  /** A made-up corner of this kind, drawn until there are measured points. */
  readonly points: Readonly<Record<string, Vec3>>;
  readonly links: readonly (readonly [string, string])[];
  /** What is rigid and no link: a strut, an arm, an axle; each from place to place. */
  readonly solid?: readonly (readonly Place[])[];
  /** Points of the upright, each joined to the wheel centre by a soft line. */
  readonly upright: readonly string[];
  /** Both wheels are drawn, the whole axle wide: the two views one above the other. */
  readonly wholeAxle?: true;
  /** Drawn in place of the corner where there is none to draw. */
  readonly Sheet?: FunctionComponent;
}
