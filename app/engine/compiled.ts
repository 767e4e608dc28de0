/**
 * How far this thread has compiled what a plan runs through: once as many plans were made as that takes, asked for or not, no
 * phone is kept warm for more.
 */
import { REHEARSALS } from './rehearsals.ts';

let made = 0;

/** The same function, its plans counted. @param plans how many it makes a call */
export const counted =
  <A extends readonly unknown[], R>(plan: (...args: A) => R, plans: number): ((...args: A) => R) =>
  (...args) => {
    made += plans;
    return plan(...args);
  };

/** A rehearsal that is not made any more once enough were, and then has no result. */
export const whileCold =
  <A extends readonly unknown[], R>(rehearse: (...args: A) => R): ((...args: A) => R | undefined) =>
  (...args) =>
    made < REHEARSALS.length ? counted(rehearse, 1)(...args) : undefined;
