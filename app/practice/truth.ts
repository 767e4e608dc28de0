/**
 * The practice car as it is: where its adjusters truly stand, and what every wheel then reads without the gauge's scatter. A move
 * that went by the rack stands where the gauge led it, whatever was guessed of it.
 */
import { adjustersOf } from '../../core/adjuster/of-corner.ts';
import {
  type Angle,
  type AxleName,
  type Car,
  type CarSettings,
  CORNERS,
  type Corner,
  type Moved,
  type Reading,
  type Suspension,
  type Vec3,
  type WheelReading,
} from '../../core/contract.ts';
import { axleOf } from '../../core/corners.ts';
import { angleAgainst } from '../../core/reading/toe-reference.ts';
import { movedOn } from '../../core/records/rounds.ts';
import { engine } from '../engine/index.ts';
import { fieldsOf } from '../state/fields.ts';
import { positionsOf } from '../state/standing.ts';
import { entryForm } from '../state/visit-actions.ts';
import type { VisitView } from '../state/visits.ts';
import { bendOf } from './bend.ts';
import { normal, seeded, within } from './seed.ts';

/** mm by which a point of the real car may differ from the card. */
const BUILD = 2.5;
/** Degrees that a wheel is out of line in a visit, ±, beside what is bent. */
const OUT = { caster: 0.45, camber: 0.15, toe: 0.4, sai: 0 } as const;
/** Degrees, one standard deviation of the gauge. */
export const SCATTER = { caster: 0.06, camber: 0.025, toe: 0.012, sai: 0.06 } as const;

/** Every wheel's angles with the adjusters truly at `settings`, front toe against the centre line. */
export async function truth(view: VisitView, settings: CarSettings): Promise<Reading> {
  const { car } = view.car;
  const out = seeded(`bend ${view.visit.id}`);
  const bend = bendOf(view.visit.id, car.front.suspension);
  const poses = await solve(car, settings);
  const shown: Partial<Record<Corner, WheelReading>> = {};
  // Drawn for every wheel and angle, so that asking for SAI or for a total changes no other figure.
  for (const { where, angle } of allFields(car)) {
    const [corner, name] = [where as Corner, angle as Angle];
    const value = poses[corner][name];
    const bent = corner === bend.corner && (name === 'camber' || name === 'sai') ? bend[name] : 0;
    const off = bent + within(out, OUT[name]);
    if (value !== undefined) shown[corner] = { ...shown[corner], [name]: value + off };
  }
  return shown;
}

/** Every angle of every wheel. */
export const allFields = (car: Car) => fieldsOf(car, { sai: true, total: false });

/** Where the adjusters truly stand after all that was done in a visit. @param found where they stood as it came in */
export async function trulyAt(view: VisitView, found: CarSettings): Promise<CarSettings> {
  let settings = view.rounds[0]?.record.settings ?? found;
  for (const [round, { moves }] of view.rounds.entries()) {
    for (const move of moves) {
      const { corner, adjuster, setBy, outcome } = move;
      if (outcome === 'wont-move') continue;
      settings = movedOn(settings, [move]);
      if (setBy?.within === undefined) continue;
      const at = await turnedUntil(view, round, settings, { corner, adjuster, setBy, to: move.to });
      settings = movedOn(settings, [{ ...move, to: at }]);
    }
  }
  return settings;
}

type Led = Pick<Moved, 'corner' | 'adjuster' | 'to' | 'setBy'>;

/** Where an adjuster stands once this rack, its gauge off by what it is off just then, shows the figure; or its travel ends. */
export async function turnedUntil(
  view: VisitView,
  round: number,
  settings: CarSettings,
  { corner, adjuster, to, setBy }: Led,
): Promise<number> {
  const own = adjustersOf(view.car.car, corner).find(({ id }) => id === adjuster)!;
  const { angle, value } = setBy!;
  const all = positionsOf(own).map(Number);
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const gauge = scatterOf(view, round, corner, adjuster)(angle);
  const { reference } = entryForm(view);
  const off = async (at: number): Promise<number> => {
    const there = await truth(view, movedOn(settings, [{ corner, adjuster, from: to, to: at }]));
    return (angleAgainst(there, corner, angle, reference) ?? value) + gauge - value;
  };
  // Secants, as a hand goes back and forth.
  let [a, b] = [Number(to), Number(to) + (high - low) / 200];
  let before = await off(a);
  for (let i = 0; i < 8 && Math.abs(b - a) > 1e-6; i++) {
    const now = await off(b);
    if (now === before) break;
    [a, b, before] = [b, Math.min(high, Math.max(low, b - (now * (b - a)) / (now - before))), now];
  }
  return b;
}

/** What the gauge is off while a move is watched: the same whenever that is asked. */
export function scatterOf(view: VisitView, round: number, corner: Corner, adjuster: string) {
  const next = seeded(`turn ${view.visit.id} ${round} ${corner} ${adjuster}`);
  const by = {
    camber: normal(next, SCATTER.camber),
    caster: normal(next, SCATTER.caster),
    toe: normal(next, SCATTER.toe),
  };
  return (angle: keyof typeof by): number => by[angle];
}

type Pose = { readonly camber: number; readonly toe: number; readonly caster?: number; readonly sai?: number };

async function solve(car: Car, settings: CarSettings): Promise<Record<Corner, Pose>> {
  const poses = await Promise.all(
    CORNERS.map(async (corner) => {
      const { suspension } = car[axleOf(corner)];
      const adjusters = adjustersOf(car, corner);
      const pose = await engine.call('solveCorner', [
        real(suspension, axleOf(corner)),
        adjusters,
        settings[corner] ?? {},
      ]);
      if (!pose.reachable) throw new Error(`${corner}: ${pose.message}`);
      return [corner, pose] as const;
    }),
  );
  return Object.fromEntries(poses) as unknown as Record<Corner, Pose>;
}

/** The suspension as it hangs on the car: the card's points, each a little elsewhere. */
function real(suspension: Suspension, axle: AxleName): Suspension {
  const next = seeded(`build ${axle}`);
  const points = Object.fromEntries(
    Object.entries(suspension.points).map(([name, point]) => [
      name,
      point.map((x) => x + within(next, BUILD)) as unknown as Vec3,
    ]),
  );
  return { ...suspension, points };
}
