/** English, as a workshop speaks it. */
import type { Words } from '../words.ts';
import { act } from './act.ts';
import { hint } from './hint.ts';
import { note } from './note.ts';
import { place } from './place.ts';
import { noPose, remedy, step } from './step.ts';
import { unusual } from './unusual.ts';

export const en: Words = { act, place, step, remedy, note, hint, unusual, noPose };
