/**
 * `npm run words`: what the app can say, so that a person can read it in one go: every sentence of a move's card, in mm and in
 * inches, with the hand in mind that does it.
 */
import { sayingsOf } from './sayings.ts';

console.log(sayingsOf([{ length: 'mm' }, { length: 'inch' }]).join('\n'));
