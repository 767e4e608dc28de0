/**
 * The practice car's own rack. The car on it is not quite the car on its build card: every point is off by a few
 * millimetres, each visit has a bend of its own, and the gauge scatters. All of it comes from the ids, so that the same
 * visit always shows the same car.
 */
import { adjustersOf } from '../../core/adjuster/of-corner.ts';
import {
  type Angle,
  type Car,
  type CarSettings,
  CORNERS,
  type Corner,
  type Suspension,
  type Vec3,
  type WheelReading,
} from '../../core/contract.ts';
import { axleOf } from '../../core/corners.ts';
import { angleAgainst } from '../../core/reading/toe-reference.ts';
import { engine } from '../engine/index.ts';
import { fieldsOf, TOE_UNIT } from '../state/fields.ts';
import { formTexts } from '../state/form.ts';
import { units } from '../state/preferences.ts';
import { valueText } from '../state/units.ts';
import { entryForm } from '../state/visit-actions.ts';
import type { VisitView } from '../state/visits.ts';
import { normal, seeded, within } from './seed.ts';

/** mm by which a point of the real car may differ from the card. */
const BUILD = 2.5;
/** Degrees of bend in a visit, ±. */
const BEND = { caster: 0.9, camber: 0.8, toe: 0.4, sai: 0.3 } as const;
/** Degrees, one standard deviation of the gauge. */
const SCATTER = { caster: 0.06, camber: 0.025, toe: 0.012, sai: 0.06 } as const;

/**
 * What this rack shows in a round of a visit with the adjusters at `settings`, as texts for the fields, in the units
 * that the technician types.
 */
export async function practiceReading(view: VisitView, settings: CarSettings): Promise<Record<string, string>> {
  const { car } = view.car;
  const bend = seeded(`bend ${view.visit.id}`);
  const scatter = seeded(`scatter ${view.visit.id} ${view.rounds.length}`);
  const poses = await solve(car, settings);
  const shown: Partial<Record<Corner, WheelReading>> = {};
  // Drawn for every wheel and angle, so that asking for SAI or for a total changes no other figure.
  for (const { where, angle } of fieldsOf(car, { sai: true, total: false })) {
    const [corner, name] = [where as Corner, angle as Angle];
    const value = poses[corner][name];
    const off = within(bend, BEND[name]) + normal(scatter, SCATTER[name]);
    if (value !== undefined) shown[corner] = { ...shown[corner], [name]: value + off };
  }
  const form = entryForm(view);
  const texts = fieldsOf(car, form).flatMap(({ id, where, angle }) => {
    // Its wheels are solved against the centre line.
    const value = angleAgainst(shown, where, angle, form.reference);
    return value === undefined ? [] : [[id, valueText(angle, value, car.wheel.rimDiameter)]];
  });
  return { [TOE_UNIT]: units.value.toe, ...formTexts(form), ...Object.fromEntries(texts) };
}

type Pose = { readonly camber: number; readonly toe: number; readonly caster?: number; readonly sai?: number };

async function solve(car: Car, settings: CarSettings): Promise<Record<Corner, Pose>> {
  const poses = await Promise.all(
    CORNERS.map(async (corner) => {
      const { suspension } = car[axleOf(corner)];
      const adjusters = adjustersOf(car, corner);
      const pose = await engine.call('solveCorner', [real(suspension, corner), adjusters, settings[corner] ?? {}]);
      if (!pose.reachable) throw new Error(`${corner}: ${pose.message}`);
      return [corner, pose] as const;
    }),
  );
  return Object.fromEntries(poses) as unknown as Record<Corner, Pose>;
}

/** The suspension as it hangs on the car: the card's points, each a little elsewhere. */
function real(suspension: Suspension, corner: Corner): Suspension {
  const next = seeded(`build ${corner}`);
  const points = Object.fromEntries(
    Object.entries(suspension.points).map(([name, point]) => [
      name,
      point.map((x) => x + within(next, BUILD)) as unknown as Vec3,
    ]),
  );
  return { ...suspension, points };
}
