/** Where a rigid axle stands, with a tape and an inclinometer; and the frame that caster of it is held against. */
import { atan2, degrees } from '../geometry/angle.ts';
import { USUAL_SCATTER } from './instruments.ts';
import { type Measured, spreadOf } from './spread.ts';
import { given, within } from './within.ts';

/**
 * mm that the middle of an axle is to the left of the car's: half of what the gap from the frame to the left wheel has more
 * than that on the right. Both to like places: rim, drum or tyre, and frame rails alike.
 * @param tape one standard deviation of a gap, mm
 * @throws InputError naming the field
 */
export function asideFromGaps(
  gaps: Readonly<Record<'left' | 'right', number>>,
  tape: number = USUAL_SCATTER.tape,
): Measured {
  const { left, right } = given('gaps', gaps);
  for (const [field, value] of Object.entries({ left, right })) within(field, value, 0, 2000, 'mm');
  return spreadOf({ left: { value: left, sd: tape }, right: { value: right, sd: tape } }, (read) => ({
    aside: (read.left - read.right) / 2,
  })).aside;
}

/** Heights of a frame rail above a level floor, and how far apart along it they were taken, mm. */
export interface FrameHeights {
  readonly front: number;
  readonly rear: number;
  readonly between: number;
}

/**
 * How a frame stands, degrees, + its front end is down: as `casterAgainstFrame` takes it.
 * @param tape one standard deviation of a height, mm
 * @throws InputError naming the field
 */
export function frameAngleFrom(heights: FrameHeights, tape: number = USUAL_SCATTER.tape): Measured {
  const { front, rear, between } = given('heights', heights);
  for (const [field, value] of Object.entries({ front, rear })) within(field, value, 0, 3000, 'mm');
  within('between', between, 200, 10000, 'mm');
  return spreadOf(
    { front: { value: front, sd: tape }, rear: { value: rear, sd: tape }, between: { value: between, sd: tape } },
    (read) => ({ down: degrees(atan2(read.rear - read.front, read.between)) }),
  ).down;
}
