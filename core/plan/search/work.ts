/**
 * How much a plan may search. Core has no clock, so that work is counted: what a search of its boxes of states costs, as
 * near as it can be told. The same request always gives the same plan, on whatever phone.
 */

/** What is counted beside each state that a box is made of: a choice of boxes that is looked at. */
export const LOOK = 200;
/** A few seconds of a desk computer; the fixtures and the benchmark, in any style, take less than a tenth of it. */
export const MOST_WORK = 1e8;

export class Work {
  #left: number;
  #isCut = false;

  constructor(most = MOST_WORK) {
    this.#left = most;
  }

  spend(work: number): void {
    this.#left -= work;
  }

  /** Whether there is no more, so that something is left undone now. */
  isSpent(): boolean {
    this.#isCut ||= this.#left < 0;
    return this.#left < 0;
  }

  /** Something was left undone. */
  get isCut(): boolean {
    return this.#isCut;
  }
}
