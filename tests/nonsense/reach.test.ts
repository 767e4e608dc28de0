import { expect, test } from 'vitest';
import { planRequest } from '../../core/ask/plan-request.ts';
import { reachOf } from '../../core/ask/reach-of.ts';
import { InputError } from '../../core/input-error.ts';
import { validateCarFile } from '../../core/records/car-file.ts';
import { carFile } from '../core/records/fixture.ts';

const good = planRequest(validateCarFile(carFile('tarn-gt.json')));
const call = (request: unknown, corner: unknown, to?: unknown) => () =>
  reachOf(request as typeof good, corner as 'LF', to as typeof good.settings);

test.each<[string, () => unknown, string]>([
  ['no request', call(undefined, 'LF'), 'request: nothing is not allowed; allowed: an object, { car, spec,'],
  ['no such corner', call(good, 'FL'), 'corner: "FL" is not allowed; allowed: LF, RF, LR or RR'],
  ['no corner', call(good, undefined), 'corner: nothing is not allowed; allowed: LF, RF, LR or RR'],
  ['a wheel that was not read', call({ ...good, reading: {} }, 'LR'), 'reading.LR.toe: nothing is not allowed'],
  [
    'a wheel without camber',
    call({ ...good, reading: { LF: { caster: 4 } } }, 'LF'),
    'reading.LF.camber: nothing is not allowed; allowed: an angle that was measured, degrees',
  ],
  ['NaN', call({ ...good, reading: { LF: { camber: Number.NaN } } }, 'LF'), 'reading.LF.camber: NaN is not allowed'],
  [
    'nowhere',
    call(good, 'LF', { LF: { 'upper-front': 60 } }),
    'to.LF.upper-front: 60 is not allowed; allowed: a thick',
  ],
  [
    'an unknown adjuster',
    call(good, 'LF', { RR: { x: 1 } }),
    'to.RR.x: 1 is not allowed; allowed: one of the adjusters',
  ],
])('%s', (_, work, message) => {
  expect(work).toThrow(InputError);
  expect(work).toThrow(message);
});
