/** One corner of an assembly: what was read, where its adjusters stand, which of them may be moved, which tie it. */
import type { Adjuster, Position, Settings, WheelReading } from '../../contract.ts';

export interface CornerStand {
  readonly measured: WheelReading;
  readonly current: Settings;
  readonly movable: readonly Adjuster[];
  readonly ties: readonly Adjuster[];
  /** Positions, by adjuster, that are to be tried instead of its own. */
  readonly instead?: Instead;
  /** Whether there are the parts for a position; absent: for all. Where it stands it may always stay. */
  readonly allows?: (adjuster: Adjuster, position: Position) => boolean;
}
export type Instead = ReadonlyMap<string, readonly Position[]>;
