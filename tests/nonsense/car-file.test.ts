/** A good car file, spoilt in one place at a time: the message names the place, the value and what is allowed. */
import { describe, expect, it, test } from 'vitest';
import { InputError } from '../../core/input-error.ts';
import { parseCarFile, validateCarFile } from '../../core/records/car-file.ts';
import { carFile, DROP, spoilt } from '../core/records/fixture.ts';

const ROD = {
  id: 'r',
  kind: 'threaded-rod',
  links: ['tieInner'],
  lead: 1.5,
  stepTurns: 9,
  range: [1, 2],
  reference: 1,
};
const FRONT = 'car.front';
const POINTS = 'upperFront, upperRear, upperBall, lowerFront, lowerRear, lowerBall, tieInner, tieOuter';

describe('a car file', () => {
  test.each<[string, unknown, string]>([
    ['format', 'other', 'file.format: "other" is not allowed; allowed: cornerwright'],
    ['format', DROP, 'file.format: nothing is not allowed; allowed: cornerwright'],
    ['version', 2, 'version: 2 is not allowed; allowed: 1 to 1: a newer app made this file'],
    ['version', '1', 'version: "1" is not allowed; allowed: 1 to 1'],
    ['extra', 1, 'extra: 1 is not allowed; allowed: nothing: the fields here are format, version, car, spec, visits'],
    ['car.id', DROP, 'car.id: nothing is not allowed; allowed: text of 1 to 400 characters'],
    [
      'car.id',
      '__proto__',
      'car.id: "__proto__" is not allowed; allowed: an id that is not a name of the language itself',
    ],
    ['car.id', '\udfff\ud800', 'is not allowed; allowed: an id of whole characters'],
    ['car.label', '', 'car.label: "" is not allowed; allowed: text of 1 to 400 characters'],
    [
      'car.wheel.rimDiameter',
      '400',
      'car.wheel.rimDiameter: "400" is not allowed; allowed: a number from 100 to 2000 mm',
    ],
    [
      'car.wheel.rimDiameter',
      1e9,
      'car.wheel.rimDiameter: 1000000000 is not allowed; allowed: a number from 100 to 2000 mm',
    ],
    ['car.wheelbase', 'long', 'car.wheelbase: "long" is not allowed; allowed: a number from 500 to 10000 mm'],
    ['car.wheelbase', 10, 'car.wheelbase: 10 is not allowed; allowed: a number from 500 to 10000 mm'],
    [`${FRONT}.steered`, 'yes', 'car.front.steered: "yes" is not allowed; allowed: true or false'],
    [
      `${FRONT}.suspension.kind`,
      'cart-spring',
      'car.front.suspension.kind: "cart-spring" is not allowed; allowed: one of ',
    ],
    [`${FRONT}.suspension.kind`, 'toString', 'car.front.suspension.kind: "toString" is not allowed; allowed: one of '],
    [
      `${FRONT}.suspension.points.upperBall`,
      DROP,
      'car.front.suspension.points.upperBall: nothing is not allowed; allowed: three numbers, [x, y, z], mm',
    ],
    [`${FRONT}.suspension.points.upperBall`, [1, 2], 'car.front.suspension.points.upperBall'],
    [
      `${FRONT}.suspension.points.upperBall.1`,
      1e9,
      'car.front.suspension.points.upperBall[1]: 1000000000 is not allowed; allowed: a number from -10000 to 10000 mm',
    ],
    [
      `${FRONT}.suspension.points.upperBall.1`,
      null,
      'car.front.suspension.points.upperBall[1]: null is not allowed; allowed: a number from -10000 to 10000 mm',
    ],
    [
      `${FRONT}.suspension.points.inner1`,
      [0, 0, 0],
      'car.front.suspension.points.inner1: [0,0,0] is not allowed; allowed: nothing: the points are upperFront,',
    ],
    [
      'car.rear.suspension.points.outer2',
      [-2640, 650, 470],
      'car.rear.suspension.points.outer2: [-2640,650,470] is not allowed; allowed: a point apart from outer1: no two',
    ],
    [
      'car.rear.suspension.points.outer3',
      [-2430, 470, 240],
      'car.rear.suspension.points.outer3: [-2430,470,240] is not allowed; allowed: a point apart from inner3: no two joints share a place',
    ],
    [
      `${FRONT}.suspension.camber`,
      DROP,
      'car.front.suspension.camber: nothing is not allowed; allowed: a number from -45 to 45 degrees',
    ],
    [
      `${FRONT}.suspension.toe`,
      'in',
      'car.front.suspension.toe: "in" is not allowed; allowed: a number from -45 to 45 degrees',
    ],
    [`${FRONT}.adjusters`, {}, 'car.front.adjusters: {} is not allowed; allowed: a list'],
    [`${FRONT}.adjusters`, Array(17).fill({}), 'allowed: up to 16 adjusters a corner'],
    [`${FRONT}.rightAdjusters`, {}, 'car.front.rightAdjusters: {} is not allowed; allowed: a list'],
    [`${FRONT}.rightAdjusters`, null, 'car.front.rightAdjusters: null is not allowed; allowed: a list'],
    [
      `${FRONT}.rightAdjusters`,
      [{ ...ROD, links: ['tieOuter'] }],
      'car.front.rightAdjusters[0].links[0]: "tieOuter" is not allowed; allowed: one of upperFront,',
    ],
    [
      `${FRONT}.rightAdjusters`,
      [{ id: 's', kind: 'shim-pack', at: 'inner1', direction: [0, 1, 0], sizes: [1], max: 3, reference: 0 }],
      `car.front.rightAdjusters[0].at: "inner1" is not allowed; allowed: one of ${POINTS}`,
    ],
    [`${FRONT}.rightAdjusters`, [ROD], 'car.front.rightAdjusters[0].range: [1,2] is not allowed'],
    [`${FRONT}.adjusters.0.kind`, 'magic', 'car.front.adjusters[0].kind: "magic" is not allowed; allowed: one of '],
    [
      `${FRONT}.adjusters.0.kind`,
      DROP,
      'car.front.adjusters[0].kind: nothing is not allowed; allowed: the name of an adjuster kind',
    ],
    [
      `${FRONT}.adjusters.0.at`,
      'inner1',
      `car.front.adjusters[0].at: "inner1" is not allowed; allowed: one of ${POINTS}`,
    ],
    [
      `${FRONT}.adjusters.0.at`,
      DROP,
      'car.front.adjusters[0].at: nothing is not allowed; allowed: the name of a point',
    ],
    [
      `${FRONT}.adjusters.0.at`,
      'wheelCentre',
      `car.front.adjusters[0].at: "wheelCentre" is not allowed; allowed: one of ${POINTS}`,
    ],
    [
      `${FRONT}.adjusters.0.direction`,
      [0, 0, 0],
      'car.front.adjusters[0].direction: [0,0,0] is not allowed; allowed: a direction',
    ],
    [
      `${FRONT}.adjusters.0.reference`,
      7,
      'car.front.adjusters[0].reference: 7 is not allowed; allowed: a thickness from 0 to 6 mm',
    ],
    [
      `${FRONT}.adjusters.0.sizes`,
      [0.010001, 0.010003],
      'car.front.adjusters[0].sizes: [0.010001,0.010003] is not allowed',
    ],
    [
      `${FRONT}.adjusters.1.id`,
      'upper-front',
      'car.front.adjusters[1].id: "upper-front" is not allowed; allowed: an id that no other',
    ],
    [
      `${FRONT}.adjusters.2.links`,
      ['tieOuter'],
      'car.front.adjusters[2].links[0]: "tieOuter" is not allowed; allowed: one of upperFront,',
    ],
    [`${FRONT}.adjusters.2.range`, [1, -1], 'car.front.adjusters[2].range'],
    [
      `${FRONT}.adjusters.2`,
      ROD,
      'car.front.adjusters[2].range: [1,2] is not allowed; allowed: a range that holds at least one step',
    ],
    [`${FRONT}`, [], 'car.front: [] is not allowed; allowed: an object, { suspension, adjusters, steered }'],
    ['visits.0.rounds.0.reading', [], 'visits[0].rounds[0].reading: [] is not allowed; allowed: an object, { … }'],
    [
      'visits.0.rounds.0.settings.LF',
      [1],
      'visits[0].rounds[0].settings.LF: [1] is not allowed; allowed: an object, { … }',
    ],
    ['spec.front.camber.low', 1, 'spec.front.camber.low: 1 is not allowed; allowed: a number below high, 0.25'],
    ['spec.front.camber.low', 0.25, 'spec.front.camber.low: 0.25 is not allowed; allowed: a number below high, 0.25'],
    [
      'spec.front.camber.aim',
      1,
      'spec.front.camber.aim: 1 is not allowed; allowed: a number from low to high, -0.75 to 0.25',
    ],
    [
      'spec.front.camber.high',
      DROP,
      'spec.front.camber.high: nothing is not allowed; allowed: a number from -90 to 90 degrees',
    ],
    [
      'spec.front.chamber',
      {},
      'spec.front.chamber: {} is not allowed; allowed: nothing: the fields here are camber, caster, toe,',
    ],
    [
      'spec.front.left',
      { camber: { low: 2, high: 1 } },
      'spec.front.left.camber.low: 2 is not allowed; allowed: a number below high, 1',
    ],
    [
      'visits.0.carId',
      'other',
      'visits[0].carId: "other" is not allowed; allowed: the id of this car, fixture-tarn-gt',
    ],
    ['visits.0.opened', 'Monday', 'visits[0].opened: "Monday" is not allowed; allowed: a time, ISO 8601'],
    [
      'visits.0.rounds.0.reading.LF.camber',
      '0.3',
      'visits[0].rounds[0].reading.LF.camber: "0.3" is not allowed; allowed: a number from -90 to 90 degrees',
    ],
    [
      'visits.0.rounds.0.reading.LF.camber',
      null,
      'visits[0].rounds[0].reading.LF.camber: null is not allowed; allowed: a number from -90 to 90 degrees',
    ],
    [
      'visits.0.rounds.0.reading.FL',
      {},
      'visits[0].rounds[0].reading.FL: {} is not allowed; allowed: nothing: the fields here are LF, RF, LR, RR, toeReference',
    ],
    [
      'visits.0.rounds.0.settings.LF.tie-rod',
      Number.NEGATIVE_INFINITY,
      'visits[0].rounds[0].settings.LF.tie-rod: -Infinity is not allowed; allowed: a number or a label',
    ],
    [
      'visits.0.rounds.0.settings.LF.tie-rod',
      [],
      'visits[0].rounds[0].settings.LF.tie-rod: [] is not allowed; allowed: a number or a label',
    ],
  ])('%s = %j', (path, value, message) => {
    const work = () => validateCarFile(spoilt(path, value));
    expect(work).toThrow(InputError);
    expect(work).toThrow(message);
  });

  test.each([
    ['', 'file: "" is not allowed; allowed: JSON text ('],
    ['{"format": ', 'file: "{\\"format\\": " is not allowed; allowed: JSON text ('],
    ['[]', 'file: [] is not allowed; allowed: a car file, { format, version, car, … }'],
    ['null', 'file: null is not allowed; allowed: a car file, { format, version, car, … }'],
    ['{}', 'file.format: nothing is not allowed; allowed: cornerwright'],
    [
      '['.repeat(100_000) + ']'.repeat(100_000),
      'file: "deeply nested data" is not allowed; allowed: at most 24 levels',
    ],
  ])('the text %.20j', (text, message) => {
    expect(() => parseCarFile(text)).toThrow(InputError);
    expect(() => parseCarFile(text)).toThrow(message);
  });

  it('with a byte order mark is read all the same', () => {
    expect(parseCarFile(`\ufeff${JSON.stringify(carFile('tarn-gt.json'))}`).car.label).toBe('Tarn GT, blue');
  });

  it('by tape for a trailing arm is refused', () => {
    const data = spoilt('car.rear.suspension', { kind: 'trailing-arm', tape: { caster: 1 } });
    expect(() => validateCarFile(data)).toThrow(
      'car.rear.suspension.tape: {"caster":1} is not allowed; allowed: absent: Trailing arm is given by points',
    );
  });
});
