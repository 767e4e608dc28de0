/** The words of the language that the app speaks. What is on the first load takes them from words-later.ts. */
export { en as words } from '../../core/words/en/index.ts';
