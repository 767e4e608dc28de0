/**
 * Each wheel's own angles at some positions: measured + (model there − model now). As `predictWith` has them, without the
 * rest of a pose: who turns and looks again asks for them thousands of times, mostly with one assembly moved.
 */
import { CORNERS, type Corner, type Reading, type Settings } from '../contract.ts';
import { axleOf } from '../corners.ts';
import type { Assembly, CarModel } from '../pose/car-model.ts';
import { ANGLES_A_WHEEL, CAMBER, CASTER, LATERAL, PITCH, TOE } from '../pose/numbers.ts';
import { anglesAt } from './chance/move-error.ts';

/** Angles of an assembly at some settings of its corners, the last that were asked for. */
interface Last {
  readonly settings: readonly Settings[];
  readonly angles: Float64Array | undefined;
}
type Positions = Readonly<Record<Corner, Settings>>;

const PLACES = [
  ['camber', CAMBER],
  ['caster', CASTER],
  ['toe', TOE],
] as const;

export class OwnAngles {
  readonly #now = new Map<Assembly, Float64Array | undefined>();
  readonly #last = new Map<Assembly, Last>();

  /** @param reading front toe against the centre line: terms carry the thrust angle's share themselves */
  constructor(
    private readonly model: CarModel,
    private readonly reading: Reading,
    private readonly now: Positions,
  ) {}

  /**
   * Camber, caster and toe of each corner, and how far the body that carries it has gone from where it stands now; 0 of what
   * was not measured.
   */
  at(positions: Positions): readonly Float64Array[] {
    const all = CORNERS.map(() => new Float64Array(LATERAL + 1));
    for (const assembly of this.model) this.#write(assembly, positions, all);
    return all;
  }

  #write(assembly: Assembly, positions: Positions, all: readonly Float64Array[]): void {
    const { corners } = assembly;
    if (!corners.some((corner) => this.reading[corner] || this.reading[axleOf(corner)])) return;
    const [before, after] = [this.#standing(assembly), this.#goes(assembly, positions)];
    if (!before || !after) return;
    const body = ANGLES_A_WHEEL * corners.length;
    for (const [i, corner] of corners.entries()) {
      const own = all[CORNERS.indexOf(corner)]!;
      for (const [angle, place] of PLACES) {
        const value = this.reading[corner]?.[angle];
        const at = ANGLES_A_WHEEL * i + place;
        if (value !== undefined) own[place] = value + after[at]! - before[at]!;
      }
      for (const at of after.length > body ? [PITCH, LATERAL] : []) {
        own[at] = after[body + at - PITCH]! - before[body + at - PITCH]!;
      }
    }
  }

  #standing(assembly: Assembly): Float64Array | undefined {
    if (!this.#now.has(assembly)) {
      const angles = anglesAt(
        assembly.model,
        assembly.corners.map((corner) => this.now[corner]),
      );
      this.#now.set(assembly, angles);
    }
    return this.#now.get(assembly);
  }

  #goes(assembly: Assembly, positions: Positions): Float64Array | undefined {
    const settings = assembly.corners.map((corner) => positions[corner]);
    const last = this.#last.get(assembly);
    if (last?.settings.every((own, i) => own === settings[i])) return last.angles;
    const angles = anglesAt(assembly.model, settings);
    this.#last.set(assembly, { settings, angles });
    return angles;
  }
}
