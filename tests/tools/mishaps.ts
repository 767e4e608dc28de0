/**
 * Simulated re-measures after a mishap of every kind, and what is made of them. The true cars are those of tests/bench/rounds:
 * points that differ from what was entered, moves that are made to a hand's tolerance, a gauge that does not repeat.
 *
 * A mishap can be told at all where the reading that is to be expected of it, without any noise, would give it four chances in
 * five: by the car as it was entered, with what is not known of it. What cannot be told by that is too small, or looks
 * like another one.
 */
import type {
  Car,
  CarSettings,
  Corner,
  Explanation,
  Reading,
  Round,
  Settings,
  WheelReading,
} from '../../core/contract.ts';
import { expectReading, explain } from '../../core/index.ts';
import type { Cause } from '../../core/said.ts';
import { carOf, FAMILIES, type Family } from '../bench/rounds/families.ts';
import { GAUGE, normal, scattered, TrueCorner } from '../bench/rounds/truth.ts';
import { between, oneOf, type Random, stream } from './random-cars.ts';

export const CAUSES: readonly Cause[] = [
  ...([
    'noise',
    'not-made',
    'half-made',
    'twice-made',
    'wrong-way',
    'other-side',
    'sides-exchanged',
    'slipped',
  ] as const),
  ...(['reversed', 'sign', 'digits', 'decimal', 'swapped', 'misread', 'bent'] as const),
];
/** Of a truth that gets it in a reading without noise. */
export const TOLD = 0.8;

type Places = Record<string, Record<string, number>>;

/** What happened: where the adjusters really stood, what was noted otherwise than shown. */
interface Mishap {
  readonly corner?: Corner;
  readonly adjuster?: string;
  /** At the first reading, where the records say something else of what an adjuster does. */
  readonly from?: Places;
  readonly to: Places;
  readonly noted: (before: Reading, after: Reading) => readonly [Reading, Reading];
}

export interface Outcome {
  readonly first: Explanation;
  /** Whether it is the cause, and of the right place. */
  readonly right: boolean;
  /** Whether it can be told at all. */
  readonly canBeTold: boolean;
}

const AS_SHOWN: Mishap['noted'] = (before, after) => [before, after];

/** One car, its moves and a mishap of some kind; nothing where that kind has none here. */
export function mishap(cause: Cause, familyNumber: number, seed: number): Outcome | undefined {
  const family = FAMILIES[familyNumber] as Family;
  const random = stream(7 * seed + 1000 * familyNumber + 100_000);
  const entered = [0, 1].map(() => scattered(family.suspension, random, 15));
  const [l, r] = entered as [(typeof entered)[0], (typeof entered)[0]];
  const car = carOf(family, l, r);
  const stood = placesOf(family, random, 0.3);
  const asked = movedFrom(family, stood, random);
  const made = makeOf(cause, family, stood, asked, random);
  if (!made) return undefined;
  const truth = {
    [family.corners[0]]: new TrueCorner(family, l, random),
    [family.corners[1]]: new TrueCorner(family, r, random),
  };
  const shown = (at: Places): Reading =>
    Object.fromEntries(family.corners.map((corner) => [corner, rounded(truth[corner]!.read(at[corner] as Settings))]));
  const [before, after] = [shown(made.from ?? stood), shown(made.to)];
  const [first] = explained(car, ...pair(made.noted(before, after), stood, asked)) as [Explanation];
  const outcome = { first, right: isOf(cause, made, first) };
  if (cause === 'noise') return { ...outcome, canBeTold: true };
  const expected = rounded2(expectReading(car, before, made.from ?? stood, made.to), family);
  const [noiseless] = explained(car, ...pair(made.noted(before, expected), stood, asked)) as [Explanation];
  return { ...outcome, canBeTold: noiseless.probability >= TOLD && isOf(cause, made, noiseless) };
}

const pair = ([first, last]: readonly [Reading, Reading], stood: Places, asked: Places) =>
  [first, stood, last, asked] as const;

function explained(car: Car, first: Reading, stood: CarSettings, last: Reading, asked: CarSettings): Explanation[] {
  const before: Round = { reading: first, settings: stood };
  return explain(car, { reading: last, settings: asked }, { before, gauge: GAUGE });
}

const isOf = (cause: Cause, { corner, adjuster }: Mishap, told: Explanation): boolean =>
  told.cause === cause &&
  (corner === undefined || told.corner === corner) &&
  (adjuster === undefined || told.adjuster?.adjuster === adjuster);

/** As a rack shows it. */
const rounded = (wheel: WheelReading): WheelReading =>
  Object.fromEntries(Object.entries(wheel).map(([angle, value]) => [angle, Math.round(value * 100) / 100]));
const rounded2 = (reading: Reading, { corners }: Family): Reading =>
  Object.fromEntries(corners.map((corner) => [corner, rounded(reading[corner] ?? {})]));

const travel = ({ range, max }: Family['adjusters'][number]): readonly [number, number] => range ?? [0, max];

/** Where adjusters stand: somewhere about the middle of their travel. */
function placesOf({ corners, adjusters }: Family, random: Random, share: number): Places {
  return Object.fromEntries(
    corners.map((corner) => [
      corner,
      Object.fromEntries(
        adjusters.map((one) => {
          const [low, high] = travel(one);
          return [one.id, onStep(one, (low + high) / 2 + between(random, -share, share) * (high - low) * 0.5)];
        }),
      ),
    ]),
  );
}

/** A plan's worth of moves: two adjusters of each wheel, between a tenth and a third of their travel. */
function movedFrom({ corners, adjusters }: Family, stood: Places, random: Random): Places {
  return Object.fromEntries(
    corners.map((corner) => {
      const stays = oneOf(random, adjusters).id;
      const own = adjusters.map((one) => {
        const [low, high] = travel(one);
        const now = stood[corner]![one.id]!;
        if (one.id === stays) return [one.id, now];
        const by = between(random, 0.1, 0.33) * (high - low) * (one.kind === 'threaded-rod' ? 0.4 : 1);
        const way = random() < 0.5 ? 1 : -1;
        const to = now + way * by > high || now + way * by < low ? now - way * by : now + way * by;
        return [one.id, onStep(one, to)];
      });
      return [corner, Object.fromEntries(own)];
    }),
  );
}

const stepOf = ({ sizes, step, marks, stepTurns }: Family['adjusters'][number]): number =>
  sizes?.[0] ?? step ?? (marks ? 360 / marks : stepTurns);
const onStep = (one: Family['adjusters'][number], at: number): number => Math.round(at / stepOf(one)) * stepOf(one);

function makeOf(cause: Cause, family: Family, stood: Places, asked: Places, random: Random): Mishap | undefined {
  const corner = oneOf(random, family.corners);
  const other = family.corners.find((one) => one !== corner) as Corner;
  const moved = family.adjusters.filter(({ id }) => asked[corner]![id] !== stood[corner]![id]);
  const one = oneOf(random, moved);
  if (!one) return undefined;
  const [a, b] = [stood[corner]![one.id]!, asked[corner]![one.id]!];
  const [low, high] = travel(one);
  const can = (at: number): boolean => at >= low && at <= high;
  const at = (places: Places, ...list: readonly (readonly [Corner, number])[]): Places => {
    const next = structuredClone(places);
    for (const [where, place] of list) next[where]![one.id] = place;
    return next;
  };
  const move = (to: number): Mishap | undefined =>
    can(to) ? { corner, adjuster: one.id, to: at(asked, [corner, to]), noted: AS_SHOWN } : undefined;
  switch (cause) {
    case 'noise':
      return { to: asked, noted: AS_SHOWN };
    case 'not-made':
      return move(a);
    case 'half-made':
      return move((a + b) / 2);
    case 'twice-made':
      return move(2 * b - a);
    case 'wrong-way':
      return move(2 * a - b);
    case 'slipped':
      return move(b + 0.1 * (high - low) * normal(random));
    case 'other-side': {
      const there = asked[other]![one.id]! + b - a;
      return can(there)
        ? { corner, adjuster: one.id, to: at(asked, [corner, a], [other, there]), noted: AS_SHOWN }
        : undefined;
    }
    case 'sides-exchanged': {
      const [c, d] = [stood[other]![one.id]!, asked[other]![one.id]!];
      const [here, there] = [a + d - c, c + b - a];
      if (c === d || d - c === b - a || !can(here) || !can(there)) return undefined;
      return { adjuster: one.id, to: at(asked, [corner, here], [other, there]), noted: AS_SHOWN };
    }
    case 'reversed': {
      if (one.kind === 'shim-pack' || one.kind === 'slide') return undefined;
      const turned = (places: Places) => at(places, [corner, 2 * (one.reference as number) - places[corner]![one.id]!]);
      return { corner, adjuster: one.id, from: turned(stood), to: turned(asked), noted: AS_SHOWN };
    }
    default:
      return { ...(cause === 'swapped' ? {} : { corner }), to: asked, noted: notedAs(cause, corner, other, random) };
  }
}

/** What a hand or a bent part does to a reading. */
function notedAs(cause: Cause, corner: Corner, other: Corner, random: Random): Mishap['noted'] {
  const draw = [random(), random(), random(), random()] as const;
  const wild = [normal(random), normal(random), normal(random)] as const;
  return (before, after) => {
    const isAfter = cause === 'misread' || cause === 'bent' || draw[0] < 0.5;
    const reading = isAfter ? after : before;
    const angles = (['camber', 'caster', 'toe'] as const).filter((angle) => reading[corner]?.[angle] !== undefined);
    const angle = angles[Math.floor(draw[1] * angles.length)]!;
    const value = reading[corner]![angle]!;
    const put = (wheel: WheelReading): Reading => ({ ...reading, [corner]: { ...reading[corner], ...wheel } });
    const noted = (): Reading => {
      if (cause === 'sign') return put({ [angle]: -value });
      if (cause === 'decimal') return put({ [angle]: draw[2] < 0.5 ? value * 10 : value / 10 });
      if (cause === 'digits') return put({ [angle]: transposed(value, draw[2]) });
      if (cause === 'misread') return put({ [angle]: value + wild[0] * (angle === 'toe' ? 1 : 1.5) });
      if (cause === 'swapped') return { ...reading, [corner]: reading[other], [other]: reading[corner] } as Reading;
      const bent = { camber: 0.7, caster: 1, toe: 0.5 };
      return put(Object.fromEntries(angles.map((one, i) => [one, reading[corner]![one]! + bent[one] * wild[i]!])));
    };
    return isAfter ? [before, noted()] : [noted(), after];
  };
}

/** Two neighbouring digits the other way round. */
function transposed(value: number, draw: number): number {
  const digits = [...String(Math.round(Math.abs(value) * 100)).padStart(3, '0')];
  const at = Math.floor(draw * (digits.length - 1));
  [digits[at], digits[at + 1]] = [digits[at + 1]!, digits[at]!];
  return (Math.sign(value) * Number(digits.join(''))) / 100;
}
