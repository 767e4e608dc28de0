/** The bend that a practice visit hides can be told from what the practice rack shows: on every visit, and rightly. */
import { expect, it } from 'vitest';
import { bendOf } from '../../app/practice/bend.ts';
import { practiceReading } from '../../app/practice/rack.ts';
import { fieldsOf, readingOf } from '../../app/state/fields.ts';
import { formOf } from '../../app/state/form.ts';
import { units } from '../../app/state/preferences.ts';
import { records } from '../../app/state/records.ts';
import { visitFile } from '../../app/state/visit-file.ts';
import { visitView } from '../../app/state/visits.ts';
import type { Car, Spec } from '../../core/contract.ts';
import { hintsOfFile, planMoves, planRequest } from '../../core/index.ts';
import practice from '../../fixtures/cars/practice.json' with { type: 'json' };
import { shortOrLong, upTo } from '../tools/seeds.ts';

const { car, spec } = practice as unknown as { car: Car; spec: Spec };
const at = '2026-01-01T08:00:00Z';
const LOOK: Readonly<Record<string, RegExp>> = {
  knuckle: /look at the knuckle/,
  'lower arm': /look at the lower arm/,
  'upper arm': /look at the upper arm/,
};

const nothing = { readings: [], moves: [], drafts: [], preferences: [] };
const usual = { sai: false, total: false, reference: 'thrust-line' } as const;

/** The visit after the practice rack was read once. */
async function readVisit(id: string) {
  const cars = [{ id: car.id, car, spec, changed: at, practice: true }];
  const all = { cars, visits: [{ id, carId: car.id, opened: at }], ...nothing };
  records.value = all as never;
  const texts = await practiceReading(visitView(all as never, id)!, {});
  const fields = fieldsOf(car, formOf(texts, usual));
  const reading = { ...readingOf(fields, texts, units.value, car.wheel.rimDiameter), toeReference: 'thrust-line' };
  const readings = [{ id: 'r', visitId: id, at, reading, settings: {}, typed: texts }];
  const view = visitView({ ...all, readings } as never, id)!;
  return { view, file: visitFile(view, view.rounds[0]!, []) };
}

it('is told as it is on each of thirty visits, and each kind of it comes up on both sides', async () => {
  const seen = new Set<string>();
  for (let i = 0; i < 30; i += 1) {
    const id = `practice visit ${i}`;
    const { corner, part } = bendOf(id, car.front.suspension);
    seen.add(`${corner} ${part}`);
    const { file } = await readVisit(id);
    const hints = hintsOfFile(file).filter(({ kind }) => kind === 'pattern');
    expect(hints, id).toHaveLength(1);
    expect(hints[0]?.where, id).toBe(corner);
    expect(hints[0]?.text, id).toMatch(LOOK[part] ?? /^$/);
  }
  expect(seen.size).toBe(6);
});

it.each(shortOrLong(upTo(1), upTo(12)))('does not keep the angles out of their windows, visit %i', async (i) => {
  const { file } = await readVisit(`practice visit ${i}`);
  expect(planMoves(planRequest(file, { style: 'practical' })).inWindow).toBe(true);
});
