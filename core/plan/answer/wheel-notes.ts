/**
 * How the steering wheel will stand. A car rolls to where its rear wheels point, and the front ones roll along: the
 * steering wheel has to turn them to the thrust line from where they point with it level. As far as they point to the left
 * of that line, times the steering ratio, it stands to the right.
 */
import type { Reading } from '../../contract.ts';
import { angleOf } from '../../reading/axle-angles.ts';
import { HARDLY_SEEN } from '../../reading/steering-wheel.ts';
import { angleAgainst, referenceOf } from '../../reading/toe-reference.ts';
import type { Note } from '../../said.ts';
import { predictWith } from '../predict.ts';
import type { Positions, Problem } from '../problem.ts';

/**
 * What a steering ratio mostly is. Trade practice, no source: it decides what is worth a word where the car's own is not
 * on file, and no figure that is told.
 */
const USUAL_RATIO = 16;

export function wheelNotes(problem: Problem, then: Positions): Note[] {
  const { request, model, now, stoodOff } = problem;
  const { car, reading } = request;
  if (!car.front.steered) return [];
  // How far the road wheels stood off for it nobody knows, nor how it will stand.
  if (stoodOff && !car.steeringRatio) return [{ note: 'wheel-stood-off', degrees: stoodOff }];
  const after = predictWith(model, reading, now, then);
  return [...stoodOffNote(problem, after), ...thrustNote(after, car.steeringRatio)];
}

function stoodOffNote({ request: { car }, stoodOff, wishes }: Problem, after: Reading): Note[] {
  const { steeringRatio: ratio } = car;
  if (!stoodOff || !ratio) return [];
  const wish = wishes.find(
    ({ where, angle, window }) => where === 'front' && angle === 'thrustAngle' && window.assumed,
  );
  const ahead = angleOf(after, 'front', 'thrustAngle');
  const stays = wish && ahead !== undefined ? (wish.window.aim - ahead) * ratio : 0;
  return [
    {
      ...{ note: 'wheel-stood-off', degrees: stoodOff, road: stoodOff / ratio },
      ...(Math.abs(stays) > HARDLY_SEEN && { stays }),
    },
  ];
}

/** Thrust that is left, where the front was set to the centre line. */
function thrustNote(after: Reading, ratio: number | undefined): Note[] {
  const thrust = angleOf(after, 'rear', 'thrustAngle');
  const ahead = angleAgainst(after, 'front', 'thrustAngle', 'thrust-line');
  if (referenceOf(after) !== 'centreline' || thrust === undefined || ahead === undefined) return [];
  const least = HARDLY_SEEN / (ratio ?? USUAL_RATIO);
  if (Math.abs(thrust) < least || Math.abs(ahead) < least) return [];
  const goes = ahead < 0 ? 'right' : 'left';
  return [{ note: 'thrust-left', thrust, goes, ...(ratio && { degrees: Math.abs(ahead) * ratio }) }];
}
