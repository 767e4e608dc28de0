/**
 * What camber, SAI and their sum point to. The included angle belongs to the knuckle; camber and SAI that are wrong by
 * equal and opposite amounts leave it right, and mean that a pivot has moved. Which part it is hangs on the suspension:
 * each kind has its own patterns. Where it is known what the adjusters do, what is left without them is what counts.
 */
import type { AxleName, Corner, Reading, WheelReading } from '../contract.ts';
import { AXLES } from '../corners.ts';
import type { Hint, Level } from '../said.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { type BendPattern, KNUCKLE } from '../suspension/kind.ts';
import { type AdjustersShare, evenedOut, type HeldAngle, type Unsure } from './adjusters-share.ts';
import { includedAngle } from './axle-angles.ts';

/** Side-to-side difference, degrees, from which it means something. Trade practice, no source. */
const NOTICEABLE = 0.75;
const CASTER_DIFFERENCE = 1;
/** Degrees by which one wheel must be further out than the other to be the suspect, where adjusters had to be taken off. */
const FURTHER = 0.1;

/** Of a kind that says nothing of its own. */
const ANY: readonly BendPattern[] = [
  { sai: 'low', camber: 'high', included: 'ok', look: 'moved-pivot' },
  { sai: 'high', camber: 'low', included: 'ok', look: 'moved-pivot' },
  ...KNUCKLE,
];

/** How one side stands to the other. */
type Found = Required<Omit<BendPattern, 'look'>>;

/** Degrees that each wheel's camber is out of its window; absent where it was not measured or has none. */
type CamberOut = (reading: Reading, corner: Corner) => number | undefined;

/**
 * Hints of a reading. A side is judged against the other: the one whose camber is further out of its window.
 * @param share what the adjusters have in the angles; absent where nothing is known of them
 */
export function hints(
  reading: Reading,
  camberOut: CamberOut,
  kinds: Readonly<Partial<Record<AxleName, string>>>,
  share?: AdjustersShare,
): readonly Hint[] {
  const even = share ? evenedOut(reading, share) : reading;
  return (['front', 'rear'] as const).flatMap((axle) => {
    const [left, right] = AXLES[axle];
    const further = Math.abs(camberOut(even, left) ?? 0) - Math.abs(camberOut(even, right) ?? 0);
    const suspect = Math.abs(further) <= (share ? FURTHER : 0) ? undefined : further > 0 ? left : right;
    const pair = pairOf(axle, suspect, even, share?.unsure ?? []);
    const found = [...pattern(axle, suspect, pair, kinds[axle] ?? ''), ...setback(axle, pair)];
    return onePlacesFirst(found);
  });
}

/** Two wheels of an axle, the suspect first. */
interface Pair {
  readonly own: WheelReading;
  readonly other: WheelReading;
  /** The least and the most that a difference may be, own − other, with what is not known of the adjusters. */
  readonly range: (angle: HeldAngle, difference: number) => readonly [number, number];
  /** What is not known that makes any difference there. */
  readonly unknown: readonly Unsure[];
}

function pairOf(axle: AxleName, suspect: Corner | undefined, reading: Reading, all: readonly Unsure[]): Pair {
  const [left, right] = AXLES[axle];
  const [a, b] = suspect === right ? [right, left] : [left, right];
  const unknown = all.filter(({ spans }) => spans[a] || spans[b]);
  return {
    own: reading[a] ?? {},
    other: reading[b] ?? {},
    range: (angle, difference) =>
      unknown.reduce(
        ([low, high], { spans }) => {
          const [[least, most], [least2, most2]] = [spans[a]?.[angle] ?? NOTHING, spans[b]?.[angle] ?? NOTHING];
          // What an adjuster has in the angle is not the wheel's own.
          return [low - most + least2, high - least + most2];
        },
        [difference, difference] as const,
      ),
    unknown,
  };
}
const NOTHING = [0, 0] as const;

/** The hint, or that the places of the adjusters come first, where they may be why the sides differ. */
const unless = (unsure: boolean, axle: AxleName, { unknown }: Pair, hint: Hint): Hint[] => {
  if (!unsure) return [hint];
  const names = unknown.flatMap(({ named }) => named ?? []);
  return names.length > 0 ? [{ where: axle, kind: 'places-first', unknown: names }] : [];
};

const onePlacesFirst = (found: readonly Hint[]): readonly Hint[] =>
  found.filter(({ kind }, i) => kind !== 'places-first' || found.findIndex((one) => one.kind === kind) === i);

function pattern(axle: AxleName, suspect: Corner | undefined, pair: Pair, kind: string): Hint[] {
  const { own: a, other: b, range } = pair;
  const [own, other] = [includedAngle(a), includedAngle(b)];
  if (own === undefined || other === undefined) return [];
  const difference = { sai: a.sai! - b.sai!, camber: a.camber! - b.camber!, included: own - other };
  const moves = (angle: keyof typeof difference) => {
    const [low, high] = range(angle, difference[angle]);
    return level(low) !== level(high);
  };
  if (!suspect) {
    if (level(own - other) === 'ok') return [];
    return unless(moves('included'), axle, pair, {
      where: axle,
      kind: 'included',
      difference: Math.abs(own - other),
    });
  }
  const found: Found = {
    sai: level(difference.sai),
    camber: level(difference.camber),
    included: level(difference.included),
  };
  const row = (suspensionKinds[kind]?.patterns ?? ANY).find(fits(found));
  if (!row) return [];
  const unsure = (['sai', 'camber', 'included'] as const).some(moves);
  return unless(unsure, axle, pair, { where: suspect, kind: 'pattern', ...found, look: row.look });
}

const level = (difference: number): Level =>
  difference > NOTICEABLE ? 'high' : difference < -NOTICEABLE ? 'low' : 'ok';

const fits = (found: Found) => (row: BendPattern) =>
  (['sai', 'camber', 'included'] as const).every((angle) => row[angle] === undefined || row[angle] === found[angle]);

function setback(axle: AxleName, pair: Pair): Hint[] {
  const { own, other, range } = pair;
  if (own.caster === undefined || other.caster === undefined) return [];
  const by = own.caster - other.caster;
  const difference = Math.abs(by);
  if (difference <= CASTER_DIFFERENCE) return [];
  const unsure = range('caster', by).some((end) => end * Math.sign(by) <= CASTER_DIFFERENCE);
  return unless(unsure, axle, pair, { where: axle, kind: 'setback', difference });
}
