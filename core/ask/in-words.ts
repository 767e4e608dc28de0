/** Puts what the kernels return as data in words, beside the data: English unless another language is asked for. */
import type { BareMove, BarePlan, Move, NoPose, Plan, Reading, Unreachable } from '../contract.ts';
import type { BareStepEffect, StepEffect } from '../pose/effects.ts';
import { wheelAngle } from '../units/shop.ts';
import { wordsOf } from '../words/catalogue.ts';

export function planInWords({ moves, ...plan }: BarePlan, language?: string): Plan {
  const words = wordsOf(language);
  return {
    ...plan,
    moves: moves.map((move) => ({
      ...move,
      instruction: move.setBy ? words.setBy(move.act, figureOf(move.setBy, move)) : words.act(move.act),
      expectAfter: readingInWords(move.expectAfter, language),
    })),
    predicted: readingInWords(plan.predicted, language),
    notes: plan.noted.map((one) => words.note(one)),
  };
}

/** The value that a move is turned to, as a sentence has it. */
const figureOf = ({ angle, value }: NonNullable<Move['setBy']>, { corner, watched }: BareMove) => ({
  angle,
  corner,
  figure: wheelAngle(value),
  rises: value > (watched?.from ?? value),
});

export function readingInWords({ unreachable, ...reading }: Reading, language?: string): Reading {
  if (!unreachable) return reading;
  const words = wordsOf(language);
  const told = unreachable.map(({ corner, at = [] }) => ({ corner, at, message: `${corner}: ${words.noPose(at)}` }));
  return { ...reading, unreachable: told };
}

export const noPoseInWords = (none: NoPose, language?: string): Unreachable => ({
  ...none,
  message: wordsOf(language).noPose(none.at),
});

export const stepInWords = (effect: BareStepEffect, language?: string): StepEffect => ({
  ...effect,
  step: wordsOf(language).step(effect.said),
});
