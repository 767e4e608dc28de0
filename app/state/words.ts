/** The words of the language that the app speaks: all of them, and what the first load needs alone. */
export { en as words } from '../../core/words/en/index.ts';
export { unusual as unusualText } from '../../core/words/en/unusual.ts';
