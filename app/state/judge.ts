/** First load. How readings stand to the windows on file: the core's judgement, for the marks on the screens. */
import type { Angle, AxleName, Corner, Reading, Spec, Window } from '../../core/contract.ts';
import { type AssessedAngle, assess, judge } from '../../core/reading/assess.ts';
import { windowFor } from '../../core/reading/spec-terms.ts';
import type { VerdictState } from '../parts/verdict.tsx';

/** The window of one wheel's angle; SAI has none. */
export function windowOf(spec: Spec, corner: Corner, angle: Angle): Window | undefined {
  return angle === 'sai' ? undefined : windowFor(spec, corner, angle);
}

export const verdictOf = (value: number, window: Pick<Window, 'low' | 'high'>): VerdictState =>
  markOf(judge(value, { low: window.low, high: window.high }).state);

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
};

/** `LF camber`, `front total toe`, `thrust angle`. */
export function placeWord(where: Corner | AxleName, angle: string): string {
  if (angle === 'thrustAngle') return where === 'front' ? 'steer-ahead' : 'thrust angle';
  return `${where} ${ANGLE_WORDS[angle] ?? angle}`;
}
