/**
 * What each unknown of an assembly (adjuster/unknowns.ts) adds to its numbers at a pose: where it stands in the parameters is
 * known in closed form for coordinates, by a small difference for what an adjuster does, and the pose's gradient says the rest.
 */

import type { Side } from '../adjuster/of-corner.ts';
import { movedBy, type Unknown } from '../adjuster/unknowns.ts';
import type { Position, Settings } from '../contract.ts';
import { changeByPoint } from './by-point.ts';
import { type Change, changeBetween, changeOf, gainBy, scaled, without } from './change.ts';
import type { Mechanism } from './mechanism.ts';

/** Where the difference is taken of what an adjuster does: mm, or a share. */
const STEP = 1e-4;
const NOTHING: Change = { at: [], by: [] };

export class ByUnknown {
  readonly #coordinates: readonly Change[];
  /** What each does by what an adjuster does at a position, worked out once. */
  readonly #moves = new Map<string, readonly (Change | undefined)[]>();

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
    const add = (change: Change | undefined, unknown: number): void => {
      if (change) gainBy(gradient, change, out.subarray(unknown * numbers, (unknown + 1) * numbers));
    };
    this.#coordinates.forEach(add);
    settings.forEach((own, side) => {
      for (const [id, position] of Object.entries(own)) this.#byMove(side, id, position).forEach(add);
    });
    return out;
  }

  #byMove(side: number, id: string, position: Position): readonly (Change | undefined)[] {
    const key = `${side} ${id} ${position}`;
    const changes =
      this.#moves.get(key) ?? this.unknowns.map((_, unknown) => this.#changeBy(unknown, side, id, position));
    this.#moves.set(key, changes);
    return changes;
  }

  /** What an adjuster then does else at a position; nothing where what it does does not hang on the unknown. */
  #changeBy(unknown: number, side: number, id: string, position: Position): Change | undefined {
    const { kind } = this.model.fitted[side]!.get(id)!;
    const one = this.unknowns[unknown]!;
    const hangs = one.side === side && ('point' in one ? kind.byPoints : one.adjuster === id);
    if (!hangs) return undefined;
    const by = this.by.slice();
    by[unknown]! += STEP;
    const { suspension, adjusters } = movedBy(this.entered, this.unknowns, by)[side]!;
    const adjuster = adjusters.find((own) => own.id === id)!;
    const [there, zero] = [position, adjuster.reference].map((at) => kind.effect(adjuster, at, suspension));
    const moved = changeOf(this.model.linkage.wheels[side]!, without(there!, zero!));
    return scaled(changeBetween(moved, this.model.change(side, id, position)), 1 / STEP);
  }
}
