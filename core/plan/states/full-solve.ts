/** Angles of an assembly as the rack would read them, by a full solve: measured + (model there − model now). */
import { InputError } from '../../input-error.ts';
import type { Assembly } from '../../pose/car-model.ts';
import { applyChange, type Change, changeBetween } from '../../pose/change.ts';
import { ANGLES_A_WHEEL, CAMBER, CASTER, type Mechanism, TOE } from '../../pose/mechanism.ts';
import type { Axis } from './axis.ts';
import type { CornerStand } from './corner-stand.ts';

export class FullSolve {
  /** How many angles the assembly has, and how its body stands where that counts. */
  readonly angles: number;
  readonly #model: Mechanism;
  /** What each position of each axis changes. */
  readonly #changes: readonly (readonly Change[])[];
  /** Parameters at the present positions, and those of the present solve. */
  readonly #base: Float64Array;
  readonly #params: Float64Array;
  /** measured − model at the present positions. */
  readonly #offset: Float64Array;
  readonly #solved: Float64Array;

  /** @throws InputError where the adjusters stand so that no pose exists */
  constructor({ corners, model }: Assembly, stands: readonly CornerStand[], axes: readonly Axis[]) {
    this.angles = model.numbers;
    this.#model = model;
    this.#base = model.parameters(stands.map(({ current }) => current));
    this.#params = new Float64Array(this.#base.length);
    this.#solved = new Float64Array(this.angles);
    if (!model.angles(this.#base, this.#solved)) {
      throw new InputError(`settings.${corners[0]}`, stands[0]?.current, { is: 'can-reach' });
    }
    this.#offset = measuredBy(stands, this.angles).map((angle, k) => angle - this.#solved[k]!);
    this.#changes = axes.map(({ side, adjuster, positions, current }) => {
      const here = model.change(side, adjuster.id, positions[current]!);
      return positions.map((position) => changeBetween(model.change(side, adjuster.id, position), here));
    });
  }

  /**
   * Writes the angles to `out`, from `at` on; NaN where no pose exists.
   * @param digits which of its positions each axis has; those that are left out stay as they stand
   * @param extra a change beside
   */
  write(out: Float64Array, at: number, digits: readonly number[], extra?: Change): void {
    const params = this.#params;
    params.set(this.#base);
    for (let i = 0; i < digits.length; i++) applyChange(params, this.#changes[i]![digits[i]!]!);
    if (extra) applyChange(params, extra);
    const angles = this.#solved;
    const solved = this.#model.angles(params, angles);
    for (let k = 0; k < angles.length; k++) out[at + k] = solved ? angles[k]! + this.#offset[k]! : Number.NaN;
  }
}

/**
 * An angle that was not measured counts from 0: no window is judged by it, only its change may matter. So does how the
 * body stands, of which only the change has a window.
 */
function measuredBy(stands: readonly CornerStand[], numbers: number): Float64Array {
  const measured = new Float64Array(numbers);
  stands.forEach(({ measured: { camber = 0, caster = 0, toe = 0 } }, side) => {
    measured[ANGLES_A_WHEEL * side + CAMBER] = camber;
    measured[ANGLES_A_WHEEL * side + CASTER] = caster;
    measured[ANGLES_A_WHEEL * side + TOE] = toe;
  });
  return measured;
}
