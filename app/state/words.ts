/** The words of the language that the app speaks. */
import { wordsOf } from '../../core/words/catalogue.ts';

export const words = wordsOf('en');
