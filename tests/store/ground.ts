/** What a restore and its undo stand on, with what lies beside the database in memory. */
import { createCanary } from '../../app/store/canary.ts';
import type { Connection } from '../../app/store/connection.ts';
import type { Ground } from '../../app/store/ground.ts';
import type { Beside } from '../../app/store/kept-beside.ts';
import { outsideOf, type UnderWay } from '../../app/store/outside.ts';
import { type WayBack, wayBack } from '../../app/store/way-back.ts';
import { freshName } from './records.ts';

export const NOW = '2026-03-02T08:00:00.000Z';

export function inMemory() {
  const files = new Map<string, Blob>();
  const beside: Beside = {
    keep: async (name, content) => void files.set(name, content),
    read: async (name) => files.get(name),
    names: async () => [...files.keys()].sort(),
    forget: async (name) => void files.delete(name),
    close: () => undefined,
  };
  return { files, beside };
}

/** @param change what of the way back is another's */
export function groundOn(connection: Connection, change: (way: WayBack) => Partial<WayBack> = () => ({})) {
  const { beside } = inMemory();
  let flag: UnderWay | undefined;
  const way = wayBack(beside, {
    read: () => flag,
    keep(value) {
      flag = value;
    },
  });
  const told: string[] = [];
  const ground: Ground = {
    ...{ connection, beside, canary: createCanary(outsideOf(freshName())) },
    way: { ...way, ...change(way) },
    settle: async () => undefined,
    now: () => NOW,
    progress: (through, all) => told.push(`${through} of ${all}`),
  };
  return { ground, way, told };
}
