import { describe, expect, it, test } from 'vitest';
import { ANGLES, CORNERS, type Round } from '../../../core/contract.ts';
import { unusual } from '../../../core/reading/unusual.ts';
import { current } from '../../../core/records/rounds.ts';
import { wordsOf } from '../../../core/words/catalogue.ts';
import { carFile, carFileNames } from '../records/fixture.ts';

const HAIR = 0.01;
const usual = { camber: 0, caster: 3, toe: 0, sai: 12 };

describe('an unusual value', () => {
  it('is asked about: a camber of 12 is, one of −0.5 is not', () => {
    const usual = unusual('camber', 12);
    expect(usual && wordsOf().unusual('camber', 12, usual)).toBe(
      'Camber 12.00° is unusual (mostly −6.00° to 6.00°). Is it right?',
    );
    expect(unusual('camber', -0.5)).toBeUndefined();
  });

  it('is named as the trade does', () => {
    expect(wordsOf().unusual('sai', 40, [2, 20])).toMatch(/^SAI 40\.00° is unusual/);
  });

  // Trade practice without a source, as the figures of the table are.
  test.each([
    ['camber', -6, 6],
    ['caster', -4, 14],
    ['toe', -2, 2],
    ['sai', 2, 20],
  ] as const)('takes a %s from %d to %d, and asks a hair beyond either', (angle, low, high) => {
    for (const value of [low, (low + high) / 2, high]) expect(unusual(angle, value)).toBeUndefined();
    for (const value of [low - HAIR, high + HAIR]) expect(unusual(angle, value)).toEqual([low, high]);
  });

  const asked = (rounds: readonly Round[]) =>
    rounds.flatMap(({ reading }) =>
      CORNERS.flatMap((corner) => ANGLES.map((angle) => unusual(angle, reading[corner]?.[angle] ?? usual[angle]))),
    );

  test.each(carFileNames)('asks nothing about the readings of %s that hold', (name) => {
    for (const { rounds } of carFile(name).visits ?? []) {
      expect(asked(current(rounds)).filter((question) => question !== undefined)).toEqual([]);
    }
  });

  it('asks about the one that was mistyped, and corrected afterwards', () => {
    const rounds = (carFile('ribble-six.json').visits ?? []).flatMap((visit) => visit.rounds);
    expect(asked(rounds).filter((question) => question !== undefined)).toHaveLength(1);
  });
});
