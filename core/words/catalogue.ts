import { en } from './en/index.ts';
import type { Words } from './words.ts';

/** Every language: adding one is its folder and a line here. */
export const languages: Readonly<Record<string, Words>> = { en };

/** English where no language is asked for; a request names one that is there. */
export const wordsOf = (language = 'en'): Words => languages[language] ?? en;
