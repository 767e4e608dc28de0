/** A made-up reading and the touches of somebody who types it: for the typing itself and for the real keypad. */
import { seeded } from '../../app/practice/seed.ts';
import type { Field } from '../../app/state/fields.ts';

export interface Touch {
  /** As the keypad says it. */
  readonly key: string;
  /** ms since the one before. */
  readonly after: number;
}
export interface Figure {
  readonly id: string;
  /** As the rack shows it. */
  readonly text: string;
}
export interface Hand {
  /** What the form was told. */
  readonly set: number;
  /** What the rack shows in fact. */
  readonly shown: number;
  readonly next: 'never' | 'always' | 'at-times';
  /** ms between touches. */
  readonly gap: number;
  /** Types .15 and not 0.15. */
  readonly bare: boolean;
}

/** The largest that is made of each, degrees: caster in two digits before the point too. */
const LARGEST: Readonly<Record<string, number>> = { caster: 13, sai: 16, steeringWheel: 30, pinionAngle: 9 };

const pickOf =
  (next: () => number) =>
  <T>(all: readonly T[]): T =>
    all[Math.floor(next() * all.length)] as T;

/** One of the hands that there are: fast and slow, one to three decimals, Next or not. */
export function handOf(seed: string): Hand {
  const pick = pickOf(seeded(`${seed} hand`));
  const set = pick([1, 2, 3]);
  // One more than the form was told of is what a rack set otherwise shows; fewer are told by Next alone.
  const shown = pick([set, set, set, set === 3 ? 3 : set + 1, Math.max(1, set - 1)]);
  return {
    set,
    shown,
    next: shown < set ? 'always' : pick(['never', 'always', 'at-times'] as const),
    // Slowly typed a decimal too many is seen where it lands.
    gap: pick(shown > set ? [30, 120] : [30, 30, 30, 120, 900]),
    bare: shown <= set && pick([true, false, false]),
  };
}

/**
 * Figures for these fields. Where a decimal more is shown than the form was told of and no Next is given, it may look like
 * the beginning of the next figure: 4.351 and 2.50 are the same touches as 4.35 and 12.50. What was told holds then, so
 * that no such figure is made.
 */
export function figuresOf(seed: string, fields: readonly Field[], hand: Hand): readonly Figure[] {
  const next = seeded(`${seed} figures`);
  return fields.map((field) => {
    const largest = LARGEST[field.angle] ?? 4;
    let text = (next() * largest).toFixed(hand.shown);
    if (hand.shown > hand.set && /[12]$/.test(text)) text = text.replace(/.$/, '0');
    return { id: field.id, text: next() < 0.4 && Number(text) !== 0 ? `−${text}` : text };
  });
}

/** The touches for them, on the pad. */
export function touchesFor(seed: string, figures: readonly Figure[], hand: Hand): readonly Touch[] {
  const next = seeded(`${seed} touches`);
  return figures.flatMap(({ text }) => {
    const shown = hand.bare ? text.replace(/^(−?)0\./, '$1.') : text;
    const keys = [...shown].map((key) => (key === '−' ? '±' : key));
    const confirms = hand.next === 'always' || (hand.next === 'at-times' && next() < 0.5);
    return [...keys, ...(confirms ? ['next'] : [])].map((key) => ({ key, after: hand.gap }));
  });
}
