import type { Canary } from './canary.ts';
import type { Connection } from './connection.ts';
import type { Beside } from './kept-beside.ts';
import type { WayBack } from './way-back.ts';

/** What restoring stands on. */
export interface Ground {
  readonly connection: Connection;
  readonly canary: Canary;
  readonly beside: Beside;
  readonly way: WayBack;
  /** Writes what still waits: a restore builds on it. */
  readonly settle: () => Promise<void>;
  readonly now: () => string;
  readonly progress: (through: number, all: number) => void;
}
