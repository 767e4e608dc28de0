/**
 * What camber, SAI and their sum point to. The included angle belongs to the knuckle; camber and SAI that are wrong by
 * equal and opposite amounts leave it right, and mean that a pivot has moved. The table below is trade practice, from
 * memory: it has no published source, and says where to look, not what to replace.
 */
import type { AxleName, Corner, Reading, WheelReading } from '../contract.ts';
import { AXLES } from '../corners.ts';
import { includedAngle } from './axle-angles.ts';

export interface Hint {
  readonly where: Corner | AxleName;
  readonly kind: 'pattern' | 'setback';
  readonly text: string;
}

/** Side-to-side difference, degrees, from which it means something. Trade practice, no source. */
const NOTICEABLE = 0.75;
const CASTER_DIFFERENCE = 1;

type Level = 'low' | 'ok' | 'high';
interface Pattern {
  readonly sai: Level;
  readonly camber: Level;
  readonly included: Level;
}
interface Row extends Partial<Pattern> {
  readonly look: string;
}

const KNUCKLE: readonly Row[] = [
  { included: 'low', look: 'the knuckle or spindle' },
  { included: 'high', look: 'the knuckle or spindle' },
];
const PIVOT: readonly Row[] = [
  { sai: 'low', camber: 'high', included: 'ok', look: 'a pivot that has moved: an arm or the crossmember' },
  { sai: 'high', camber: 'low', included: 'ok', look: 'a pivot that has moved: an arm or the crossmember' },
];
/** First row that fits. */
const TABLE: Readonly<Record<string, readonly Row[]>> = {
  'double-wishbone': [
    { sai: 'low', camber: 'high', included: 'ok', look: 'the lower arm' },
    { sai: 'high', camber: 'low', included: 'ok', look: 'the upper arm' },
    ...KNUCKLE,
  ],
  strut: [
    { sai: 'high', camber: 'high', included: 'high', look: 'the tower, in at the top, and the knuckle or strut' },
    { sai: 'low', camber: 'high', included: 'ok', look: 'the lower arm, or the tower, out at the top' },
    { sai: 'high', camber: 'low', included: 'ok', look: 'the tower, in at the top' },
    { included: 'low', look: 'the knuckle or strut' },
    { included: 'high', look: 'the knuckle or strut' },
  ],
  'beam-front': [
    { included: 'low', look: 'the spindle' },
    { included: 'high', look: 'the spindle' },
    { sai: 'low', camber: 'high', included: 'ok', look: 'the axle beam' },
    { sai: 'high', camber: 'low', included: 'ok', look: 'the axle beam' },
  ],
};
const NEUTRAL: readonly Row[] = [...PIVOT, ...KNUCKLE];

interface Judged {
  readonly where: Corner | AxleName;
  readonly angle: string;
  readonly state: string;
  readonly by: number;
}

/** Hints of a reading. A side is judged against the other: the one whose camber is further out of its window. */
export function hints(
  reading: Reading,
  judged: readonly Judged[],
  kinds: Readonly<Partial<Record<AxleName, string>>>,
): readonly Hint[] {
  return (['front', 'rear'] as const).flatMap((axle) => {
    const [left, right] = AXLES[axle];
    const out = (corner: Corner) =>
      Math.abs(judged.find(({ where, angle }) => where === corner && angle === 'camber')?.by ?? 0);
    const suspect = out(left) === out(right) ? undefined : out(left) > out(right) ? left : right;
    return [
      ...pattern(axle, suspect, reading[left], reading[right], kinds[axle] ?? ''),
      ...setback(axle, reading[left], reading[right]),
    ];
  });
}

function pattern(
  axle: AxleName,
  suspect: Corner | undefined,
  left: WheelReading = {},
  right: WheelReading = {},
  kind: string,
): Hint[] {
  const [a, b] = suspect === AXLES[axle][1] ? [right, left] : [left, right];
  const [own, other] = [includedAngle(a), includedAngle(b)];
  if (own === undefined || other === undefined) return [];
  if (!suspect) {
    if (level(own - other) === 'ok') return [];
    const text = `Included angles differ by ${Math.abs(own - other).toFixed(2)}°: compare the two knuckles.`;
    return [{ where: axle, kind: 'pattern', text }];
  }
  const found: Pattern = {
    sai: level(a.sai! - b.sai!),
    camber: level(a.camber! - b.camber!),
    included: level(own - other),
  };
  const row = (TABLE[kind] ?? NEUTRAL).find(fits(found));
  if (!row) return [];
  const text = `SAI ${found.sai}, camber ${found.camber}, included angle ${found.included} against the other side: look at ${row.look}.`;
  return [{ where: suspect, kind: 'pattern', text }];
}

const level = (difference: number): Level =>
  difference > NOTICEABLE ? 'high' : difference < -NOTICEABLE ? 'low' : 'ok';

const fits = (found: Pattern) => (row: Row) =>
  (['sai', 'camber', 'included'] as const).every((angle) => row[angle] === undefined || row[angle] === found[angle]);

function setback(axle: AxleName, left: WheelReading = {}, right: WheelReading = {}): Hint[] {
  if (left.caster === undefined || right.caster === undefined) return [];
  const difference = Math.abs(left.caster - right.caster);
  if (difference <= CASTER_DIFFERENCE) return [];
  const text = `Caster differs by ${difference.toFixed(2)}° side to side: check for setback, a wheel moved back.`;
  return [{ where: axle, kind: 'setback', text }];
}
