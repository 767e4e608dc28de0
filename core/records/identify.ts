/** Ids and times for what a file written by hand leaves out, so that the same file is the same records each time. */
import type { CarFile, Moved, Round, Visit } from '../contract.ts';
import { canonical } from './canonical.ts';
import { hash, under } from './made-id.ts';

/** Every round and move with an id (made from its content where it has none), its time and its outcome. */
export const identified = ({ visits = [], ...file }: CarFile): CarFile => ({ ...file, visits: visits.map(whole) });

function whole(visit: Visit): Visit {
  const seen = new Map<string, number>();
  return {
    ...visit,
    rounds: visit.rounds.map((round) => wholeRound(round, visit, seen)),
  };
}

function wholeRound({ moved, ...round }: Round, visit: Visit, seen: Map<string, number>): Round {
  const id = round.id ?? made(visit.id, { ...round, moved }, seen);
  const at = round.at ?? visit.opened;
  const moves = moved?.map((move): Moved => {
    return { ...move, id: move.id ?? made(id, move, seen), at: move.at ?? at, outcome: move.outcome ?? 'done' };
  });
  return { ...round, id, at, ...(moves ? { moved: moves } : {}) };
}

/** Two of the same content are two all the same. */
function made(parent: string, content: unknown, seen: Map<string, number>): string {
  const key = under(parent, hash(canonical(content)));
  const count = (seen.get(key) ?? 0) + 1;
  seen.set(key, count);
  return count === 1 ? key : `${key}.${count}`;
}
