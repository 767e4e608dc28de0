/**
 * What camber, SAI and their sum point to. The included angle belongs to the knuckle; camber and SAI that are wrong by
 * equal and opposite amounts leave it right, and mean that a pivot has moved. Which part it is hangs on the suspension:
 * each kind has its own patterns.
 */
import type { AxleName, Corner, Reading, WheelReading } from '../contract.ts';
import { AXLES } from '../corners.ts';
import type { Hint, Level } from '../said.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { type BendPattern, KNUCKLE } from '../suspension/kind.ts';
import { includedAngle } from './axle-angles.ts';

/** Side-to-side difference, degrees, from which it means something. Trade practice, no source. */
const NOTICEABLE = 0.75;
const CASTER_DIFFERENCE = 1;

/** Of a kind that says nothing of its own. */
const ANY: readonly BendPattern[] = [
  { sai: 'low', camber: 'high', included: 'ok', look: 'moved-pivot' },
  { sai: 'high', camber: 'low', included: 'ok', look: 'moved-pivot' },
  ...KNUCKLE,
];

/** How one side stands to the other. */
type Found = Required<Omit<BendPattern, 'look'>>;

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
    return [{ where: axle, kind: 'included', difference: Math.abs(own - other) }];
  }
  const found: Found = {
    sai: level(a.sai! - b.sai!),
    camber: level(a.camber! - b.camber!),
    included: level(own - other),
  };
  const row = (suspensionKinds[kind]?.patterns ?? ANY).find(fits(found));
  if (!row) return [];
  return [{ where: suspect, kind: 'pattern', ...found, look: row.look }];
}

const level = (difference: number): Level =>
  difference > NOTICEABLE ? 'high' : difference < -NOTICEABLE ? 'low' : 'ok';

const fits = (found: Found) => (row: BendPattern) =>
  (['sai', 'camber', 'included'] as const).every((angle) => row[angle] === undefined || row[angle] === found[angle]);

function setback(axle: AxleName, left: WheelReading = {}, right: WheelReading = {}): Hint[] {
  if (left.caster === undefined || right.caster === undefined) return [];
  const difference = Math.abs(left.caster - right.caster);
  if (difference <= CASTER_DIFFERENCE) return [];
  return [{ where: axle, kind: 'setback', difference }];
}
