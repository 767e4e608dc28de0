/** Adjusters of which nobody knows where they stand: a turn of each that will tell, once it is measured. */
import { adjusterKinds } from '../adjuster/catalogue.ts';
import { adjustersOf } from '../adjuster/of-corner.ts';
import type { AdjusterRef, Car, CarFile, Moved, Position } from '../contract.ts';
import { validateCarFile } from '../records/car-file.ts';
import type { Step } from '../said.ts';
import { lastRound } from './last-round.ts';
import type { PlanRequestOptions } from './plan-request.ts';

/** A move that shows where an adjuster of unknown place stands: so far one way, or the other where its stop comes first. */
export interface WatchedTurn extends Pick<Moved, 'corner' | 'adjuster'> {
  readonly from: Position;
  /** As it is counted, one way and the other. */
  readonly to: readonly [more: number, less: number];
  /** How far, one way. */
  readonly said: Step;
}

/** What there is to do about adjusters of unknown place before the plan is made as a whole. */
export interface TurnsThatTell {
  readonly watch: readonly WatchedTurn[];
  /** Those that no turn can tell of. */
  readonly lost: readonly AdjusterRef[];
}

/**
 * What to turn to see where adjusters of unknown place stand, as of a car file's last round.
 * @throws InputError naming the field, the value and what is allowed
 */
export function turnsThatTell(file: CarFile, { gauge }: Pick<PlanRequestOptions, 'gauge'> = {}): TurnsThatTell {
  const { car, settings, lost } = lastRound(validateCarFile(file), gauge);
  const turns = lost.map((ref) => [ref, watchedTurn(car, ref, settings[ref.corner]?.[ref.adjuster])] as const);
  return {
    watch: turns.flatMap(([, turn]) => turn ?? []),
    lost: turns.flatMap(([ref, turn]) => (turn ? [] : [ref])),
  };
}

/** Of its travel: enough to be seen wherever it stands, and mostly to be had one way or the other. */
const SHARE = 0.25;

function watchedTurn(
  car: Car,
  { corner, adjuster: id }: AdjusterRef,
  at: Position | undefined,
): WatchedTurn | undefined {
  const adjuster = adjustersOf(car, corner).find((one) => one.id === id)!;
  const kind = adjusterKinds[adjuster.kind]!;
  const from = at ?? adjuster.reference;
  const { from: one, to: other, said } = kind.step(adjuster);
  const all = kind.positions(adjuster);
  const [low, high] = [all[0], all.at(-1)];
  const isCounted = [from, one, other, low, high].every((position) => typeof position === 'number');
  if (!isCounted || !('by' in said)) return undefined;
  const step = (other as number) - (one as number);
  const steps = Math.max(1, Math.round((SHARE * ((high as number) - (low as number))) / step));
  const by = steps * step;
  return {
    ...{ corner, adjuster: id, from, to: [(from as number) + by, (from as number) - by] },
    said: { ...said, by: said.by * steps } as Step,
  };
}
