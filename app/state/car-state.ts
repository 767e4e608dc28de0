/** First load. The newest state of a car in one line, for its row in the list. */
import type { Reading } from '../../core/contract.ts';
import type { CarRecord } from '../../core/records/stored.ts';
import type { VerdictState } from '../parts/verdict.tsx';
import { shortDay } from './days.ts';
import { judged, placeWord } from './judge.ts';
import type { Records } from './records.ts';
import { stageOf } from './stage.ts';
import { leftReading, openVisit, visitsOf, visitView } from './visits.ts';

export interface CarState {
  readonly text: string;
  readonly verdict?: VerdictState;
}

const NEXT = {
  entry: 'Next: measure',
  standing: 'Next: where the adjusters stand',
  moves: 'Next: the moves',
  compare: 'Next: look at the re-measure',
  'sign-off': 'Next: sign off',
  closed: '',
} as const;

export function carState(all: Records, car: CarRecord): CarState {
  const open = openVisit(all, car.id);
  const view = open && visitView(all, open.id);
  if (view) return { text: NEXT[stageOf(view)] };
  for (const visit of visitsOf(all, car.id)) {
    const past = visitView(all, visit.id);
    if (!past || past.rounds.length === 0) continue;
    const day = visit.closed ?? visit.opened;
    const left = leftReading(past);
    return left ? leftState(car, left, day) : { text: `closed ${shortDay(day)}, not measured after the moves` };
  }
  return { text: car.practice ? 'Made up, with a hidden bend to find' : 'No visit yet' };
}

function leftState(car: CarRecord, reading: Reading, closed: string): CarState {
  const { verdict, worst } = judged(reading, car.spec);
  const place = worst ? placeWord(car.car, worst.where, worst.angle) : '';
  const words: Record<VerdictState, string> = {
    in: 'all in the window',
    edge: `${place} near its edge`,
    'out-high': `${place} high`,
    'out-low': `${place} low`,
    unknown: 'no windows on file',
  };
  return { verdict, text: `as left ${shortDay(closed)}, ${words[verdict]}` };
}
