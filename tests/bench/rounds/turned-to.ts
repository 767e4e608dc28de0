/** What a hand reaches that turns two cams back and forth while it watches the rack; the planner has no part in it. */
import type { AxleSpec } from '../../../core/contract.ts';
import type { Family } from './families.ts';
import { isIn } from './play.ts';
import type { TrueCorner } from './truth.ts';

const STEP = 1;
const MOST_TURNS = 12;

/** Whether two cams without a rod bring camber and toe into their windows, turned as finely as a hand can: by Newton's method. */
export function windowsTurnedTo({ adjusters, corners, aim }: Family, spec: AxleSpec, truth: TrueCorner): boolean {
  const [first, second] = adjusters;
  const at = (a: number, b: number) => truth.angles({ [first.id]: a, [second.id]: b });
  const held = (x: number): number => Math.max(-90, Math.min(90, x));
  let [a, b] = [0, 0];
  for (let i = 0; i < MOST_TURNS; i++) {
    const [now, right, down] = [at(a, b), at(a + STEP, b), at(a, b + STEP)];
    if (isIn(spec, { [corners[0]]: now }, [corners[0]], ['camber', 'toe'])) return true;
    const [p, q] = [right.camber - now.camber, down.camber - now.camber];
    const [r, s] = [right.toe - now.toe, down.toe - now.toe];
    const [x, y] = [aim.camber - now.camber, aim.toe - now.toe];
    const by = STEP / (p * s - q * r);
    // Near the ends a cam does little: no more than a third of the way at a time.
    const short = (step: number): number => Math.max(-30, Math.min(30, step));
    a = held(a + short(by * (s * x - q * y)));
    b = held(b + short(by * (p * y - r * x)));
  }
  return false;
}
