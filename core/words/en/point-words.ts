/**
 * The points of suspensions as a technician calls them, on drawings, forms and in refusals, and the links that a tape takes.
 * Five links are named as most are built: a car may have its own elsewhere, under the same numbers.
 */
export const POINT_WORDS: Readonly<Record<string, string>> = {
  upperFront: 'upper arm, front pivot',
  upperRear: 'upper arm, rear pivot',
  upperBall: 'upper ball joint',
  lowerFront: 'lower arm, front pivot',
  lowerRear: 'lower arm, rear pivot',
  lowerBall: 'lower ball joint',
  tieInner: 'tie rod, inner joint',
  tieOuter: 'tie rod, outer joint',
  strutTop: 'strut top mount',
  strutLower: 'strut, at its clamp on the knuckle',
  pivotInner: 'arm, inner bush',
  pivotOuter: 'arm, outer bush',
  lowerBody: 'lower link, at the body',
  lowerAxle: 'lower link, at the axle',
  upperBody: 'upper link, at the body',
  upperAxle: 'upper link, at the axle',
  rodBody: 'lateral rod, at the body',
  rodAxle: 'lateral rod, at the axle',
  dragBody: 'drag link, at the steering box',
  dragKnuckle: 'drag link, at the knuckle',
  crossNear: 'cross rod, at the same knuckle',
  crossFar: 'cross rod, at the other knuckle',
  wheelCentre: 'wheel centre',
  ...Object.fromEntries(
    ['upper front', 'upper rear', 'lower front', 'lower rear', 'toe'].flatMap((name, i) => [
      [`inner${i + 1}`, `${name} link, inner end`],
      [`outer${i + 1}`, `${name} link, outer end`],
      [`link${i + 1}Length`, `${name} link, joint to joint`],
      [`inner${i + 1}Ahead`, `${name} link, body pivot, ahead of the hub`],
      [`inner${i + 1}Height`, `${name} link, body pivot, height`],
      [`outer${i + 1}Ahead`, `${name} link, joint at the hub, ahead`],
      [`outer${i + 1}Height`, `${name} link, joint at the hub, height`],
      [`outer${i + 1}Inset`, `${name} link, joint at the hub, inboard of its face`],
    ]),
  ),
};

/** What a cam moves, to who lies under it: which end of a link, or where the arm is held. */
export function endWord(point: string): string {
  if (/^inner\d/.test(point)) return 'the link’s inner end';
  if (/^outer\d/.test(point)) return 'the link’s outer end';
  if (/(Body|Axle)$/.test(point)) return `the link’s end at the ${point.endsWith('Body') ? 'body' : 'axle'}`;
  return 'its end of the arm';
}
