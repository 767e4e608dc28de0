/** English, as a workshop speaks it. */
import type { Words } from '../words.ts';
import { act } from './act.ts';
import { allowed, pointName } from './allowed.ts';
import { explanation } from './explanation.ts';
import { hint } from './hint.ts';
import { job } from './job.ts';
import { limit } from './limit.ts';
import { axleGone, note } from './note.ts';
import { place } from './place.ts';
import { preference } from './preference.ts';
import { refusal } from './refusal.ts';
import { live, setBy } from './set-by.ts';
import { noPose, remedy, step } from './step.ts';
import { unusual } from './unusual.ts';

export const en: Words = {
  act,
  setBy,
  live,
  job,
  place,
  point: pointName,
  step,
  remedy,
  note,
  axleGone,
  hint,
  limit,
  explanation,
  preference,
  unusual,
  noPose,
  allowed,
  refusal,
};
