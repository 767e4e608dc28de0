/** Causes that lie with a move: not made, made otherwise, slipped, or made with an adjuster that works the other way. */
import { adjusterKinds } from '../../adjuster/catalogue.ts';
import type { AdjusterKind } from '../../adjuster/kind.ts';
import { adjusterName } from '../../adjuster/names.ts';
import type { Adjuster, Corner, Position } from '../../contract.ts';
import { AXLES, axleOf } from '../../corners.ts';
import type { Cause } from '../../said.ts';
import type { Compared, Told } from './compared.ts';
import { SLIP } from './guesses.ts';
import type { Story } from './story.ts';

/** A move, and what is known of its adjuster. */
interface OfMove {
  readonly compared: Compared;
  readonly side: number;
  readonly corner: Corner;
  readonly adjuster: Adjuster;
  readonly kind: AdjusterKind;
  readonly from: Position;
  readonly to: Position;
}

export function storiesOfMoves(all: readonly Compared[]): readonly Story[] {
  const moves = all.flatMap((compared) =>
    compared.moved.map(({ side, id, from, to }): OfMove => {
      const corner = compared.assembly.corners[side]!;
      const adjuster = compared.assembly.sides[side]!.adjusters.find((one) => one.id === id)!;
      return { compared, side, corner, adjuster, kind: adjusterKinds[adjuster.kind]!, from, to };
    }),
  );
  return moves.flatMap((move) => [
    ...madeOtherwise(move),
    ...onOtherSide(move, all),
    ...exchanged(move, moves),
    ...slipped(move),
  ]);
}

function madeOtherwise(move: OfMove): readonly Story[] {
  const { from, to } = move;
  const stories = [standingAt(move, 'not-made', from)];
  if (typeof from === 'number' && typeof to === 'number') {
    stories.push(standingAt(move, 'half-made', (from + to) / 2));
    stories.push(standingAt(move, 'twice-made', 2 * to - from));
    stories.push(standingAt(move, 'wrong-way', 2 * from - to));
  }
  return stories.flatMap((story) => story ?? []);
}

/** That the adjuster stands elsewhere than on record. */
function standingAt(move: OfMove, cause: Cause, at: Position, weight = 1): Story | undefined {
  const { compared, side, corner, adjuster, kind } = move;
  const { id } = adjuster;
  if (!kind.accepts(adjuster, at)) return undefined;
  const told: Told = {
    to: compared.with([side, id, at]),
    ...(cause === 'slipped' && { knownAs: compared.to }),
    // Whoever says at a touch that the rack shows the figure, and has not turned anything, has not looked.
    ...(cause === 'not-made' && compared.isGuessed(side, id) && { unseen: { side, id } }),
  };
  return {
    said: saidOf(move, cause, at),
    weight,
    told: new Map([[compared, told]]),
    correction: { of: 'moves', stand: [{ corner, adjuster: id, at }] },
  };
}

const saidOf = ({ corner, adjuster, kind, to }: OfMove, cause: Cause, at: Position): Story['said'] => ({
  cause,
  corner,
  adjuster: { corner, adjuster: adjuster.id, name: adjusterName(adjuster) },
  asked: kind.place(adjuster, to),
  stands: kind.place(adjuster, at),
});

/** The same adjuster on the other side has had it, on top of what it had to have. */
function onOtherSide(move: OfMove, all: readonly Compared[]): readonly Story[] {
  const { corner, adjuster, from, to, compared, side } = move;
  const there = otherOf(corner, adjuster, all);
  if (!there) return [];
  const asked = there.compared.to[there.side]![adjuster.id]!;
  const numeric = [asked, from, to].every((one) => typeof one === 'number');
  const at = numeric ? (asked as number) + ((to as number) - (from as number)) : to;
  if (!move.kind.accepts(there.adjuster, at)) return [];
  return [elsewhere(move, 'other-side', [compared, side, from], [there.compared, there.side, at])];
}

/** Each side has had what was meant for the other. */
function exchanged(move: OfMove, moves: readonly OfMove[]): readonly Story[] {
  const { corner, adjuster, from, to, compared, side } = move;
  const [left, right] = AXLES[axleOf(corner)];
  const other = moves.find((one) => one.corner === right && one.adjuster.id === adjuster.id);
  if (corner !== left || !other || other.adjuster.kind !== adjuster.kind) return [];
  const all = [from, to, other.from, other.to];
  if (!all.every((one) => typeof one === 'number')) return [];
  const [a, b, c, d] = all as [number, number, number, number];
  const [here, there] = [a + (d - c), c + (b - a)];
  if (here === b || !move.kind.accepts(adjuster, here) || !move.kind.accepts(other.adjuster, there)) return [];
  return [elsewhere(move, 'sides-exchanged', [compared, side, here], [other.compared, other.side, there])];
}

type PlaceIn = readonly [compared: Compared, side: number, at: Position];

function elsewhere(move: OfMove, cause: Cause, here: PlaceIn, there: PlaceIn): Story {
  const { id } = move.adjuster;
  const same = here[0] === there[0];
  const told = same
    ? new Map([[here[0], { to: here[0].with([here[1], id, here[2]], [there[1], id, there[2]]) }]])
    : new Map([here, there].map(([compared, side, at]) => [compared, { to: compared.with([side, id, at]) }] as const));
  const stand = [here, there].map(([compared, side, at]) => ({
    corner: compared.assembly.corners[side]!,
    adjuster: id,
    at,
  }));
  return { said: saidOf(move, cause, here[2]), weight: 1, told, correction: { of: 'moves', stand } };
}

function otherOf(corner: Corner, { id, kind }: Adjuster, all: readonly Compared[]) {
  const other = AXLES[axleOf(corner)].find((one) => one !== corner)!;
  const compared = all.find(({ assembly }) => assembly.corners.includes(other))!;
  const side = compared.sideOf(other);
  const adjuster = compared.assembly.sides[side]!.adjusters.find((one) => one.id === id && one.kind === kind);
  return adjuster && { compared, side, adjuster };
}

/** Places on either side, in shares of what slips mostly go. */
const SLIPS = [-2.5, -2, -1.5, -1, -0.5, 0.5, 1, 1.5, 2, 2.5];

/** It stands somewhere near where it was set: more steps together are one cause. Of labels those beside. */
function slipped(move: OfMove): readonly Story[] {
  const { adjuster, kind, to } = move;
  const all = kind.positions(adjuster);
  if (typeof to !== 'number' || typeof all[0] !== 'number') {
    const at = all.findIndex((one) => String(one) === String(to));
    const beside = [all[at - 1], all[at + 1]].filter((one) => one !== undefined);
    return beside.flatMap((one) => standingAt(move, 'slipped', one, 1 / beside.length) ?? []);
  }
  const spread = SLIP * ((all.at(-1) as number) - (all[0] as number));
  const total = SLIPS.reduce((sum, x) => sum + Math.exp((-x * x) / 2), 0);
  return SLIPS.flatMap((x) => standingAt(move, 'slipped', to + x * spread, Math.exp((-x * x) / 2) / total) ?? []);
}

/** Adjusters that may be fitted the other way round: each asks for a car of its own. */
export const reversible = (all: readonly Compared[]) =>
  all.flatMap(({ moved, assembly }) =>
    moved.flatMap(({ side, id, from, to }) => {
      const adjuster = assembly.sides[side]!.adjusters.find((one) => one.id === id)!;
      const kind = adjusterKinds[adjuster.kind]!;
      const reversed = kind.reversed?.(adjuster);
      if (!reversed || reversed === adjuster) return [];
      const corner = assembly.corners[side]!;
      const said: Story['said'] = {
        cause: 'reversed',
        corner,
        adjuster: { corner, adjuster: id, name: adjusterName(adjuster) },
        asked: kind.place(adjuster, to),
        stands: kind.place(adjuster, from),
      };
      return [{ corner, reversed, said }];
    }),
  );
