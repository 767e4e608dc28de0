import { expect, test } from 'vitest';
import { planRequest } from '../../core/ask/plan-request.ts';
import { whatWouldFree } from '../../core/ask/what-would-free.ts';
import { InputError } from '../../core/input-error.ts';
import { validateCarFile } from '../../core/records/car-file.ts';
import { carFile } from '../core/records/fixture.ts';

const good = planRequest(validateCarFile(carFile('tarn-gt.json')));
const call = (request: unknown) => () => whatWouldFree(request as typeof good);

test.each<[string, () => unknown, string]>([
  ['no request', call(undefined), 'request: nothing is not allowed; allowed: an object, { car, spec,'],
  ['NaN', call({ ...good, reading: { LF: { camber: Number.NaN } } }), 'reading.LF.camber: NaN is not allowed'],
  [
    'nowhere',
    call({ ...good, settings: { LF: { 'upper-front': 60 } } }),
    'settings.LF.upper-front: 60 is not allowed; allowed: a thick',
  ],
])('%s', (_, work, message) => {
  expect(work).toThrow(InputError);
  expect(work).toThrow(message);
});

test('nothing is asked of a car that was not read', () => {
  expect(whatWouldFree({ ...good, reading: {} })).toEqual([]);
});
