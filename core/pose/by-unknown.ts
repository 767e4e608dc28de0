/**
 * What each unknown of an assembly (adjuster/unknowns.ts) adds to its numbers at a pose: where it stands in the parameters is
 * known in closed form for coordinates, by a small difference for what an adjuster does, and the pose's gradient says the rest.
 */

import type { Side } from '../adjuster/of-corner.ts';
import { movedBy, type Unknown } from '../adjuster/unknowns.ts';
import type { Position, Settings } from '../contract.ts';
import { changeByPoint } from './by-point.ts';
import { type Change, changeBetween, changeOf, gainBy, scaled } from './change.ts';
import type { Mechanism } from './mechanism.ts';

/** Where the difference is taken of what an adjuster does: mm, or a share. */
const STEP = 1e-4;
const NOTHING: Change = { at: [], by: [] };

export class ByUnknown {
  readonly #coordinates: readonly Change[];
  /** What adjusters do else at a position, by each unknown that this hangs on; worked out once. */
  readonly #moves = new Map<string, readonly Change[]>();

  /**
   * @param entered the sides as they were entered, of which the model's are so much off
   * @param by unknown by unknown; absent: not at all
   */
  constructor(
    private readonly model: Mechanism,
    private readonly unknowns: readonly Unknown[],
    private readonly entered: readonly Side[] = model.sides,
    private readonly by: Float64Array = new Float64Array(unknowns.length),
  ) {
    this.#coordinates = unknowns.map((one) =>
      'point' in one ? changeByPoint(model.linkage, one.side, one.point, one.axis) : NOTHING,
    );
  }

  /**
   * Unknown by unknown what each number gains for one mm of it, or as much as all of its share.
   * @param gradient of the model's pose there
   * @param settings side by side
   */
  slopes(gradient: Float64Array, settings: readonly Settings[]): Float64Array {
    const { numbers } = this.model;
    const out = new Float64Array(this.unknowns.length * numbers);
    const add = (changes: readonly Change[]): void => {
      for (let k = 0; k < changes.length; k++) {
        if (changes[k] !== NOTHING) gainBy(gradient, numbers, changes[k]!, out, k * numbers);
      }
    };
    add(this.#coordinates);
    for (const [side, own] of settings.entries()) {
      for (const id in own) add(this.#byMove(side, id, own[id]!));
    }
    return out;
  }

  /** Unknown by unknown; none where what it does hangs on no unknown. */
  #byMove(side: number, id: string, position: Position): readonly Change[] {
    const key = `${side} ${id} ${position}`;
    const known = this.#moves.get(key);
    if (known) return known;
    const all = this.unknowns.map((one, unknown) =>
      this.#hangs(one, side, id) ? this.#changeBy(unknown, side, id, position) : NOTHING,
    );
    const changes = all.every((one) => one === NOTHING) ? [] : all;
    this.#moves.set(key, changes);
    return changes;
  }

  /** Whether what an adjuster does hangs on an unknown. */
  #hangs(one: Unknown, side: number, id: string): boolean {
    if (one.side !== side) return false;
    return 'point' in one ? this.model.fitted[side]!.get(id)!.kind.byPoints === true : one.adjuster === id;
  }

  /** What an adjuster does else at a position, for one more of an unknown. */
  #changeBy(unknown: number, side: number, id: string, position: Position): Change {
    const { kind } = this.model.fitted[side]!.get(id)!;
    const by = this.by.slice();
    by[unknown]! += STEP;
    const { suspension, adjusters } = movedBy(this.entered, this.unknowns, by)[side]!;
    const adjuster = adjusters.find((own) => own.id === id)!;
    const [there, zero] = [position, adjuster.reference].map((at) => kind.effect(adjuster, at, suspension));
    const moved = changeOf(this.model.linkage.wheels[side]!, there!, zero!);
    return scaled(changeBetween(moved, this.model.change(side, id, position)), 1 / STEP);
  }
}
