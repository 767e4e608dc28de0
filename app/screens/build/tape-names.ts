/** Tape dimensions as a technician reads them, and which points of the drawing each one lies between. */

const WORDS: Readonly<Record<string, string>> = {
  sai: 'SAI',
  ballSpacing: 'Ball joint to ball joint',
  track: 'Track',
  axleBehindFront: 'Behind the front axle',
  lowerBallInset: 'Lower ball joint inboard of the wheel centre',
  lowerBallAhead: 'Lower ball joint ahead of the wheel centre',
  axisAhead: 'what the caster gives',
  tieOuterHeight: 'Rod outer joint, height',
  tieInnerHeight: 'Rod inner joint, height',
  tieRodLength: 'Tie rod, joint to joint',
  tieRodSweep: 'Tie rod, sweep in plan',
  steeringArmLength: 'Steering arm, ball joint to rod joint',
  steeringArmAngle: 'Steering arm, angle in plan',
  wheelCentreHeight: 'Wheel centre, height',
  lowerBallHeight: 'Lower ball joint, height',
  upperBallHeight: 'upper ball joint, height',
  strutLength: 'Strut, clamp to top mount',
  strutLowerHeight: 'Strut at its clamp, height',
  strutLowerInset: 'Strut at its clamp, inboard of the wheel centre',
  strutLowerAhead: 'Strut at its clamp, ahead of the wheel centre',
  axisAheadAtClamp: 'what the caster gives',
};

/** `upperFrontLength` → `Upper arm, front pivot to ball joint`. */
export function dimensionName(name: string): string {
  const known = WORDS[name];
  if (known) return known;
  const [, arm, part] = /^(upper|lower)(.+)$/.exec(name) ?? [];
  if (!arm || !part) return name.charAt(0).toUpperCase() + name.slice(1);
  const side = `${arm === 'upper' ? 'Upper' : 'Lower'} arm`;
  const parts: Readonly<Record<string, string>> = {
    FrontLength: 'front pivot to ball joint',
    RearLength: 'rear pivot to ball joint',
    PivotSpacing: 'pivot to pivot',
    FrontHeight: 'front pivot, height',
    RearHeight: 'rear pivot, height',
    PivotSkew: 'pivot line, skew in plan',
  };
  return `${side}, ${parts[part] ?? part}`;
}

const BETWEEN: Readonly<Record<string, readonly string[]>> = {
  ballSpacing: ['lowerBall', 'upperBall'],
  caster: ['lowerBall', 'upperBall'],
  sai: ['lowerBall', 'upperBall'],
  lowerBallInset: ['lowerBall', 'wheelCentre'],
  lowerBallAhead: ['lowerBall', 'wheelCentre'],
  lowerBallHeight: ['lowerBall'],
  steeringArmLength: ['lowerBall', 'tieOuter'],
  steeringArmAngle: ['lowerBall', 'tieOuter'],
  tieRodLength: ['tieInner', 'tieOuter'],
  tieRodSweep: ['tieInner', 'tieOuter'],
  tieOuterHeight: ['tieOuter'],
  tieInnerHeight: ['tieInner'],
  strutLength: ['strutLower', 'strutTop'],
  strutLowerHeight: ['strutLower'],
  strutLowerInset: ['strutLower', 'wheelCentre'],
  strutLowerAhead: ['strutLower', 'wheelCentre'],
};

/** One point, or the two ends of the length. */
export function dimensionPoints(name: string): readonly string[] {
  const known = BETWEEN[name];
  if (known) return known;
  const [, arm, part] = /^(upper|lower)(.+)$/.exec(name) ?? [];
  if (!arm || !part) return ['wheelCentre'];
  if (part.startsWith('Pivot')) return [`${arm}Front`, `${arm}Rear`];
  const pivot = `${arm}${part.startsWith('Front') ? 'Front' : 'Rear'}`;
  return part.endsWith('Length') ? [pivot, `${arm}Ball`] : [pivot];
}
