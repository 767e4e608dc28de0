/**
 * What cannot be reached and must not change the plan for the rest: windows of angles that nothing moves are left out, and
 * what such an angle ties is tied no longer. For the practical plan; the other styles go by all that they were given.
 */
import type { Assembly } from '../pose/car-model.ts';
import { outside } from '../reading/spec-terms.ts';
import type { StateSpace } from './states/state-space.ts';
import type { Term, TermPart } from './terms.ts';

/** Degrees that no rack shows. */
const NOTHING = 1e-3;

type StatesOf = (assembly: Assembly) => StateSpace;

/** What every angle of the assemblies can be. */
export class Reachable {
  constructor(
    private readonly assemblies: readonly Assembly[],
    private readonly statesOf: StatesOf,
  ) {}

  /** Whether no adjuster that may be moved changes a term. */
  isFixed(term: Term): boolean {
    return term.parts.every((part) => this.#width(part) <= NOTHING);
  }

  /** Least and most of a term, each of its parts for itself. */
  range({ parts, constant }: Term): readonly [low: number, high: number] {
    let [low, high] = [constant, constant];
    for (const part of parts) {
      const ends = this.#ends(part).map((end) => part.factor * end);
      low += Math.min(...ends);
      high += Math.max(...ends);
    }
    return [low, high];
  }

  /** The terms that something can be done about or that are met as it is. */
  worthIt(terms: readonly Term[]): Term[] {
    return terms.filter(
      (term) => term.hard || term.wish || !this.isFixed(term) || outside(this.range(term)[0], term.window) === 0,
    );
  }

  /** A term without the parts that nothing changes on an assembly that is moved: they tie nothing. */
  untied(term: Term): Term {
    if (term.hard) return term;
    const stays = (part: TermPart): boolean => {
      const { count } = this.statesOf(this.#assemblyOf(part));
      const [low, high] = this.#ends(part);
      return count > 1 && high === low;
    };
    const parts = term.parts.filter((part) => !stays(part));
    if (parts.length === 0 || parts.length === term.parts.length) return term;
    const still = term.parts.filter(stays);
    const constant = still.reduce((sum, part) => sum + part.factor * this.#ends(part)[0], term.constant);
    return { ...term, parts, constant };
  }

  /** The nearest that a term comes to a window that it cannot meet, whatever the others do; nothing where it can. */
  missed(term: Term): number | undefined {
    if (term.hard || term.wish) return undefined;
    const [low, high] = this.range(term);
    if (low > term.window.high) return low;
    return high < term.window.low ? high : undefined;
  }

  #width(part: TermPart): number {
    const [low, high] = this.#ends(part);
    return Math.abs(part.factor) * (high - low);
  }

  #ends(part: TermPart): readonly [number, number] {
    const states = this.statesOf(this.#assemblyOf(part));
    return states.ranges[states.placeOf(part.corner, part.angle)]!;
  }

  #assemblyOf({ corner }: TermPart): Assembly {
    return this.assemblies.find(({ corners }) => corners.includes(corner))!;
  }
}
