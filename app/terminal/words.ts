/**
 * `npm run words`: every sentence that a move's card can say, for every adjuster kind, on both sides, both ways, in mm and in
 * inches, so that a person can read them in one go with the hand in mind that does it.
 */
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import type { AdjusterKind } from '../../core/adjuster/kind.ts';
import type { Adjuster, Position } from '../../core/contract.ts';
import { shimStack } from '../../core/units/shim-stack.ts';
import { wordsOf } from '../../core/words/catalogue.ts';

const words = wordsOf();
/** What a wheel might gain by it; an adjuster that speaks in camber says so much. */
const GAINS = { camber: 0.45, caster: 0.1, toe: -0.2 };
const back = ({ camber, caster, toe }: typeof GAINS) => ({ camber: -camber, caster: -caster, toe: -toe });

function sayings(kind: AdjusterKind): string[] {
  const { start, sample } = kind;
  const made = { at: 'lowerFront', links: ['a'], ...start, ...sample.adjuster, id: kind.kind, kind: kind.kind };
  const arm = { reference: sample.from, ...made } as Adjuster;
  const say = (
    corner: 'LF' | 'RF',
    from: Position,
    to: Position,
    gains: typeof GAINS,
    { known = false, adjuster = arm } = {},
  ): string[] => {
    const { sizes = [] } = kind.stack?.(adjuster) ?? {};
    const holds = known ? shimStack(Number(from), sizes).shims : undefined;
    const act = kind.act(adjuster, from, to, { corner, gains, holds });
    return (['mm', 'inch'] as const).map((length) => `${corner} ${words.act(act, { length })}`);
  };
  const all = (['LF', 'RF'] as const).flatMap((corner) => [
    ...say(corner, sample.from, sample.to, GAINS),
    ...say(corner, sample.to, sample.from, back(GAINS)),
  ]);
  if (kind.stack) {
    // Where it is known what is in the pack.
    const known = { known: true };
    all.push(...say('LF', sample.from, sample.to, GAINS, known), ...say('LF', sample.to, sample.from, GAINS, known));
    all.push(...say('LF', sample.from, 0, GAINS));
  }
  // At the top of a strut there is no bush of an arm.
  all.push(...say('LF', sample.from, sample.to, GAINS, { adjuster: { ...arm, at: 'strutTop' } }));
  // What reads the same in inches, or on the other side, is read once.
  const once = all.filter((one, i) => all.findIndex((other) => other.slice(3) === one.slice(3)) === i);
  const step = `   one step: ${words.step(kind.step(arm).said)}; it stands at ${words.place(kind.place(arm, sample.to))}`;
  return [kind.name.toUpperCase(), ...once.map((line) => `   ${line}`), step, ''];
}

console.log(Object.values(adjusterKinds).flatMap(sayings).join('\n'));
