import { describe, expect, it } from 'vitest';
import { unusual } from '../../../core/reading/unusual.ts';
import { wordsOf } from '../../../core/words/catalogue.ts';

describe('an unusual value', () => {
  it('is asked about: a camber of 12 is, one of −0.5 is not', () => {
    const usual = unusual('camber', 12);
    expect(usual && wordsOf().unusual('camber', 12, usual)).toBe(
      'Camber 12.00° is unusual (mostly −6.00 to 6.00). Is it right?',
    );
    expect(unusual('camber', -0.5)).toBeUndefined();
  });

  it('is named as the trade does', () => {
    expect(wordsOf().unusual('sai', 40, [2, 20])).toMatch(/^SAI 40\.00° is unusual/);
  });
});
