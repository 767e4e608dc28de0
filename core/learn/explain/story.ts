/** One account of how the second reading came about, to be weighed against the others. */
import type { Correction } from '../../contract.ts';
import type { Explained } from '../../said.ts';
import type { Compared, Told } from './compared.ts';

export interface Story {
  readonly said: Explained;
  /** Its share of what its cause is likely before. */
  readonly weight: number;
  /** What it tells otherwise, of those that it touches. */
  readonly told: ReadonlyMap<Compared, Told>;
  /** Of a car that is built otherwise: those that stand in the place of the ones that it touches. */
  readonly instead?: ReadonlyMap<Compared, Compared>;
  readonly correction?: Correction;
}
