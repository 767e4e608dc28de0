/** What a language has to say: one function for everything that core returns as data (core/said.ts). */
import type { Angle } from '../contract.ts';
import type { Names, Refused, Rule } from '../rule.ts';
import type { Act, Hint, JobSaid, Limit, Note, Place, PreferenceId, Remedy, StandsAt, Step } from '../said.ts';

/** How a shop writes lengths. Default mm. */
export interface Units {
  readonly length?: 'mm' | 'inch';
}

export interface Words {
  /** What to do, from → to: one sentence. */
  readonly act: (act: Act, units?: Units) => string;
  /** What to do where several moves are one job, in working order: one sentence; of the arm that it is done to, if it is one. */
  readonly job: (moves: JobSaid, arm?: string, units?: Units) => string;
  /** A position, with its unit. */
  readonly place: (place: Place, units?: Units) => string;
  /** What one step of an adjuster is called. */
  readonly step: (step: Step, units?: Units) => string;
  /** The parts or work that would let an adjuster go further, in a few words. */
  readonly remedy: (remedy: Remedy) => string;
  readonly note: (note: Note) => string;
  /** How far an axle has gone: degrees that its pinion's nose is up, mm to the left. */
  readonly axleGone: (pinion: number, aside: number) => string;
  readonly hint: (hint: Hint) => string;
  /** What limits a plan, a sentence. */
  readonly limit: (limit: Limit) => string;
  /** Why a careful hand prefers it, a sentence. */
  readonly preference: (id: PreferenceId) => string;
  /** A question about a value, degrees, that is mostly within `usual`. */
  readonly unusual: (angle: Angle, value: number, usual: readonly [number, number]) => string;
  /** That no pose of the wheel exists with the adjusters standing there. */
  readonly noPose: (at: readonly StandsAt[]) => string;
  /** What a field may be: what stands behind "not this but". */
  readonly allowed: (rule: Rule) => string;
  /**
   * Why an input is refused, a sentence: the field by its name (left out where the refusal names none), what was entered,
   * what is allowed.
   * @param names of adjusters and of a form's fields, where they are known
   */
  readonly refusal: (refused: Refused, names?: Names) => string;
}
