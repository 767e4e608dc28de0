/**
 * The practice car's own rack. The car on it is not quite the car on its build card: every point is off by a few
 * millimetres, on both sides alike, each visit finds it out of line and a part of it bent, and the gauge scatters. SAI is
 * taken too: without it nobody can tell a bent part. All of it comes from the ids, so that the same
 * visit always shows the same car.
 */
import type { Angle, CarSettings, Corner, WheelReading } from '../../core/contract.ts';
import { angleAgainst } from '../../core/reading/toe-reference.ts';
import { fieldsOf, unitTexts } from '../state/fields.ts';
import { formTexts } from '../state/form.ts';
import { unitsFor, valueText } from '../state/units.ts';
import { entryForm } from '../state/visit-actions.ts';
import type { VisitView } from '../state/visits.ts';
import { normal, seeded } from './seed.ts';
import { allFields, SCATTER, trulyAt, truth } from './truth.ts';

/**
 * What this rack shows in a round of a visit, as texts for the fields, in the units that the technician types.
 * @param settings where the adjusters stood as the car came in
 */
export async function practiceReading(view: VisitView, settings: CarSettings): Promise<Record<string, string>> {
  const { car } = view.car;
  const scatter = seeded(`scatter ${view.visit.id} ${view.rounds.length}`);
  const shown: Partial<Record<Corner, WheelReading>> = { ...(await truth(view, await trulyAt(view, settings))) };
  for (const { where, angle } of allFields(car)) {
    const [corner, name] = [where as Corner, angle as Angle];
    const value = shown[corner]?.[name];
    const off = normal(scatter, SCATTER[name]);
    if (value !== undefined) shown[corner] = { ...shown[corner], [name]: value + off };
  }
  const form = { ...entryForm(view), sai: true };
  const texts = fieldsOf(car, form).flatMap(({ id, where, angle }) => {
    // Its wheels are solved against the centre line.
    const value = angleAgainst(shown, where, angle, form.reference);
    return value === undefined ? [] : [[id, valueText(angle, value, car.wheel.rimDiameter)]];
  });
  return { ...unitTexts(unitsFor(car)), ...formTexts(form), ...Object.fromEntries(texts) };
}
