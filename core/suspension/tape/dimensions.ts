/** The tape dimensions that several suspensions share. Defaults are those of a middling passenger car. */
import { deg, mm } from './tape.ts';

/** @param top the upper end of the steering axis */
export const measuredAngles = (top: string) => [
  deg('caster', {
    label: 'Caster',
    between: ['lowerBall', top],
    limit: 30,
    why: 'as measured, with the adjusters where they stand',
  }),
  deg('camber', {
    label: 'Camber',
    between: ['wheelCentre'],
    limit: 20,
    why: 'as measured, with the adjusters where they stand',
  }),
  deg('toe', {
    label: 'Toe',
    between: ['wheelCentre'],
    limit: 20,
    why: 'as measured, one wheel, + for toe-in',
  }),
];
export const LOWER_ARM_LENGTHS = [
  mm('lowerFrontLength', {
    label: 'Lower arm, front pivot to ball joint',
    between: ['lowerFront', 'lowerBall'],
    low: 60,
    high: 1500,
    otherwise: 380,
    tolerance: 60,
    why: 'a middling lower arm',
  }),
  mm('lowerRearLength', {
    label: 'Lower arm, rear pivot to ball joint',
    between: ['lowerRear', 'lowerBall'],
    low: 60,
    high: 1500,
    otherwise: 'lowerFrontLength',
    tolerance: 40,
    why: 'an even triangle',
  }),
  mm('lowerPivotSpacing', {
    label: 'Lower arm, pivot to pivot',
    between: ['lowerFront', 'lowerRear'],
    low: 30,
    high: 1200,
    otherwise: 320,
    tolerance: 60,
    why: 'a middling lower arm',
  }),
];
export const LOWER_ARM_HEIGHTS = [
  mm('lowerFrontHeight', {
    label: 'Lower arm, front pivot, height',
    between: ['lowerFront'],
    low: 50,
    high: 1500,
    otherwise: 'lowerBallHeight',
    tolerance: 30,
    why: 'a level lower arm',
  }),
  mm('lowerRearHeight', {
    label: 'Lower arm, rear pivot, height',
    between: ['lowerRear'],
    low: 50,
    high: 1500,
    otherwise: 'lowerFrontHeight',
    tolerance: 20,
    why: 'a level pivot line',
  }),
];
export const WHEEL_HEIGHTS = [
  mm('wheelCentreHeight', {
    label: 'Wheel centre, height',
    between: ['wheelCentre'],
    low: 150,
    high: 700,
    otherwise: 310,
    tolerance: 20,
    why: 'a middling tyre',
  }),
  mm('lowerBallHeight', {
    label: 'Lower ball joint, height',
    between: ['lowerBall'],
    low: 50,
    high: 700,
    otherwise: 210,
    tolerance: 30,
    why: 'about {100 mm} below the wheel centre',
  }),
];
export const STANCE = [
  mm('track', {
    label: 'Track',
    between: ['wheelCentre'],
    measure: 'track',
    low: 600,
    high: 3000,
    otherwise: 1500,
    tolerance: 50,
    why: 'a middling car, between the wheel centres',
  }),
  mm('axleBehindFront', {
    label: 'Behind the front axle',
    between: ['wheelCentre'],
    measure: 'behind',
    low: -100,
    high: 8000,
    otherwise: 0,
    tolerance: 0,
    why: 'a front axle; for a rear one it is the wheelbase',
  }),
  mm('lowerBallInset', {
    label: 'Lower ball joint inboard of the wheel centre',
    between: ['lowerBall', 'wheelCentre'],
    measure: 'inboard',
    low: 0,
    high: 400,
    otherwise: 70,
    tolerance: 20,
    why: 'a ball joint inside the rim',
  }),
  mm('lowerBallAhead', {
    label: 'Lower ball joint ahead of the wheel centre',
    between: ['lowerBall', 'wheelCentre'],
    measure: 'ahead',
    low: -400,
    high: 400,
    otherwise: 'axisAhead',
    tolerance: 20,
    why: 'the steering axis passes the wheel centre in side view',
  }),
];
export const STEERING = [
  mm('steeringArmLength', {
    label: 'Steering arm, ball joint to rod joint',
    between: ['lowerBall', 'tieOuter'],
    low: 40,
    high: 500,
    otherwise: 130,
    tolerance: 25,
    why: 'a middling arm, from the lower ball joint to the rod end',
  }),
  mm('tieOuterHeight', {
    label: 'Rod outer joint, height',
    between: ['tieOuter'],
    low: 50,
    high: 900,
    otherwise: 'lowerBallHeight',
    tolerance: 20,
    why: 'level with the lower ball joint',
  }),
  mm('tieRodLength', {
    label: 'Tie rod, joint to joint',
    between: ['tieInner', 'tieOuter'],
    low: 60,
    high: 1200,
    otherwise: 350,
    tolerance: 40,
    why: 'a middling rod, joint to joint',
  }),
  mm('tieInnerHeight', {
    label: 'Rod inner joint, height',
    between: ['tieInner'],
    low: 50,
    high: 1200,
    otherwise: 'tieOuterHeight',
    tolerance: 20,
    why: 'a level rod',
  }),
];
export const skewOf = (which: 'upper' | 'lower') =>
  deg(`${which}PivotSkew`, {
    label: `${which === 'upper' ? 'Upper' : 'Lower'} arm, pivot line, skew in plan`,
    between: [`${which}Front`, `${which}Rear`],
    limit: 60,
    otherwise: 0,
    why: 'a pivot line along the car; + turns its front end outboard, in plan',
  });
export const STEERING_ANGLES = [
  deg('steeringArmAngle', {
    label: 'Steering arm, angle in plan',
    between: ['lowerBall', 'tieOuter'],
    limit: 60,
    otherwise: 0,
    why: 'a steering arm along the car; + turns the rod end inboard, in plan',
  }),
  deg('tieRodSweep', {
    label: 'Tie rod, sweep in plan',
    between: ['tieInner', 'tieOuter'],
    limit: 60,
    otherwise: 0,
    why: 'a rod square to the car; + puts its inner end further forward, in plan',
  }),
];
