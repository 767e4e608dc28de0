import fc from 'fast-check';
import { expect, it } from 'vitest';
import { hashOf, parseRoute } from '../../app/routes.ts';

it('the address of any id that a record may have leads back to it', () =>
  fc.assert(
    fc.property(
      fc.string({ minLength: 1, unit: 'binary' }),
      fc.constantFrom('car', 'build', 'history', 'height', 'chart', 'visit' as const),
      (id, screen) => {
        expect(parseRoute(hashOf({ screen, id } as never))).toEqual({ screen, id });
      },
    ),
  ));

it('half a character in an id has an address all the same', () => {
  expect(hashOf({ screen: 'visit', id: 'a\udfff\ud800' })).toBe(`#/visit/${encodeURIComponent('a\ufffd\ufffd')}`);
});
