/** A list in pieces: all of it once, in its order, none of them larger than asked for or empty. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { inPieces } from '../../app/store/in-pieces.ts';

it('whatever the list and the size', () =>
  fc.assert(
    fc.property(fc.array(fc.nat()), fc.integer({ min: 1, max: 5 }), (list, size) => {
      const pieces = [...inPieces(list, size)];
      expect(pieces.flat()).toEqual(list);
      expect(pieces).toHaveLength(Math.ceil(list.length / size));
      for (const piece of pieces.slice(0, -1)) expect(piece).toHaveLength(size);
    }),
  ));
