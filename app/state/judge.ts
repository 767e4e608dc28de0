/** First load. How readings stand to the windows on file: the core's judgement, for the marks on the screens. */
import type { AxleName, Car, Corner, Reading, Spec, WheelSpec, Window } from '../../core/contract.ts';
import { AXLES, isAxle } from '../../core/corners.ts';
import { type AssessedAngle, assess, stateIn } from '../../core/reading/assess.ts';
import { windowFor } from '../../core/reading/spec-terms.ts';
import type { VerdictState } from '../parts/verdict.tsx';
import type { Field } from './fields.ts';

/** The window of a field; SAI and a ride height have none. A total without one has what its wheels' windows add up to. */
export function windowOf(spec: Spec, { where, angle }: Pick<Field, 'where' | 'angle'>): Window | undefined {
  if (angle === 'totalToe') return isAxle(where) ? (spec[where]?.totalToe ?? ofBoth(spec, where)) : undefined;
  return isAxle(where) || !isWindowed(angle) ? undefined : windowFor(spec, where, angle);
}

const isWindowed = (angle: string): angle is keyof WheelSpec => angle !== 'sai' && angle !== 'rideHeight';

function ofBoth(spec: Spec, axle: AxleName): Window | undefined {
  const [left, right] = AXLES[axle].map((corner) => windowFor(spec, corner, 'toe'));
  if (!left || !right) return undefined;
  const aim = ({ low, aim, high }: Window): number => aim ?? (low + high) / 2;
  return { low: left.low + right.low, aim: aim(left) + aim(right), high: left.high + right.high };
}

export const verdictOf = (value: number, window: Pick<Window, 'low' | 'high'>): VerdictState =>
  markOf(stateIn(value, { low: window.low, high: window.high }).state);

export const markOf = (state: AssessedAngle['state']): VerdictState => (state === 'unmeasured' ? 'unknown' : state);

/** The whole reading in one mark: the first angle that is out, else one near its edge. */
export function judged(reading: Reading, spec: Spec): { verdict: VerdictState; worst?: AssessedAngle } {
  const measured = assess(reading, spec).angles.filter(({ state }) => state !== 'unmeasured');
  const out = measured.find(({ by }) => by !== 0) ?? measured.find(({ state }) => state === 'edge');
  if (out) return { verdict: markOf(out.state), worst: out };
  return { verdict: measured.length > 0 ? 'in' : 'unknown' };
}

const ANGLE_WORDS: Readonly<Record<string, string>> = {
  caster: 'caster',
  camber: 'camber',
  toe: 'toe',
  sai: 'SAI',
  totalToe: 'total toe',
  crossCamber: 'cross camber',
  crossCaster: 'cross caster',
  rideHeight: 'ride height',
  crossHeight: 'ride height, left less right',
};

/** `LF camber`, `front total toe`, `thrust angle`; of an axle that steers that is where the wheel stands straight. */
export function placeWord(car: Car, where: Corner | AxleName, angle: string): string {
  if (angle === 'thrustAngle') return isAxle(where) && car[where].steered ? 'steer-ahead' : 'thrust angle';
  return `${where} ${ANGLE_WORDS[angle] ?? angle}`;
}
