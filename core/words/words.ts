/** What a language has to say: one function for everything that core returns as data (core/said.ts). */
import type { Angle } from '../contract.ts';
import type { Names, Refused, Rule } from '../rule.ts';
import type {
  Act,
  Explained,
  Hint,
  JobSaid,
  Limit,
  LiveSaid,
  Note,
  Place,
  PreferenceId,
  Remedy,
  SetByFigure,
  StandsAt,
  Step,
} from '../said.ts';
import type { ShopUnits } from '../units/shop.ts';

/** How a shop writes: core/units/shop.ts. Default mm, decimal degrees, a point. */
export type Units = ShopUnits;

export interface Words {
  /** What to do, from → to: one sentence. */
  readonly act: (act: Act, units?: Units) => string;
  /** What to do where a move goes by the rack, and when to stop: a sentence or two. */
  readonly setBy: (act: Act, by: SetByFigure, units?: Units) => string;
  /** What stands about such a move. */
  readonly live: (said: LiveSaid) => string;
  /** What to do where several moves are one job, in working order: one sentence; of the arm that it is done to, if it is one. */
  readonly job: (moves: JobSaid, arm?: string, units?: Units) => string;
  /** A position, with its unit. */
  readonly place: (place: Place, units?: Units) => string;
  /** A point of a suspension by its name in the car file: `lowerBall` is the lower ball joint. */
  readonly point: (name: string) => string;
  /** What one step of an adjuster is called. */
  readonly step: (step: Step, units?: Units) => string;
  /** The parts or work that would let an adjuster go further, in a few words. */
  readonly remedy: (remedy: Remedy) => string;
  readonly note: (note: Note, units?: Units) => string;
  /** How far an axle has gone: degrees that its pinion's nose is up, mm to the left. */
  readonly axleGone: (pinion: number, aside: number, units?: Units) => string;
  readonly hint: (hint: Hint, units?: Units) => string;
  /** What limits a plan, a sentence. */
  readonly limit: (limit: Limit) => string;
  /** Why a reading is not as predicted, and what to look at: a sentence. @param show a figure as it was typed; default degrees */
  readonly explanation: (one: Explained, units?: Units, show?: (angle: string, degrees: number) => string) => string;
  /** Why a careful hand prefers it, a sentence. */
  readonly preference: (id: PreferenceId) => string;
  /** A question about a value, degrees, that is mostly within `usual`. */
  readonly unusual: (angle: Angle, value: number, usual: readonly [number, number], units?: Units) => string;
  /** That no pose of the wheel exists with the adjusters standing there. */
  readonly noPose: (at: readonly StandsAt[], units?: Units) => string;
  /** What a field may be: what stands behind "not this but". */
  readonly allowed: (rule: Rule, units?: Units) => string;
  /**
   * Why an input is refused, a sentence: the field by its name (left out where the refusal names none), what was entered,
   * what is allowed.
   * @param names of adjusters and of a form's fields, where they are known
   */
  readonly refusal: (refused: Refused, names?: Names, units?: Units) => string;
}
