/** What a car's adjusters have in the angles that were read off its wheels: see reading/adjusters-share.ts. */
import { adjusterKinds } from '../adjuster/catalogue.ts';
import { adjusterName } from '../adjuster/names.ts';
import { adjustersOf } from '../adjuster/of-corner.ts';
import {
  type Adjuster,
  type AdjusterRef,
  ANGLES,
  type Car,
  type CarSettings,
  CORNERS,
  type Corner,
  type CornerPose,
  type Position,
  type Reading,
  type WheelReading,
} from '../contract.ts';
import { AXLES, axleOf, byCorner } from '../corners.ts';
import { type Assembly, type CarModel, compileCar } from '../pose/car-model.ts';
import { type AdjustersShare, HELD, type HeldAngle, type Spans, type Unsure } from '../reading/adjusters-share.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { asMeasured } from './as-measured.ts';
import { predictWith } from './predict.ts';

/** Degrees by which an adjuster of unknown place must be able to change an angle to be worth a look. */
const WORTH_A_LOOK = 0.1;
/** Places that are tried of an adjuster, spread over all that it has. */
const TRIED = 48;

/**
 * A rod that only steers its wheel is left as it stands: toe was read, and wheels are held against each other as they
 * point then.
 * @param unknown adjusters of which nobody knows where they stood
 */
export function adjustersShare(
  car: Car,
  reading: Reading,
  settings: CarSettings,
  unknown: readonly AdjusterRef[],
): AdjustersShare {
  const model = compileCar(asMeasured(car, reading, settings));
  const home = byCorner((corner) => {
    const steer = adjustersOf(car, corner).filter((one) => steersOnly(car, corner, one));
    const stand = settings[corner] ?? {};
    return Object.fromEntries(steer.flatMap(({ id }) => (id in stand ? [[id, stand[id]!]] : [])));
  });
  const bare = predictWith(model, reading, settings, home);
  const added = CORNERS.flatMap((corner) => {
    const [read, left] = [reading[corner], bare[corner]];
    return read && left ? [[corner, minus(read, left)] as const] : [];
  });
  return {
    added: Object.fromEntries(added),
    unsure: [
      ...(['front', 'rear'] as const).flatMap((axle) => ofCharts(car, AXLES[axle], settings, unknown)),
      ...unknown.flatMap((ref) => ofPlace(car, model, settings, ref)),
    ],
  };
}

function minus(read: WheelReading, bare: WheelReading): WheelReading {
  const known = ANGLES.filter((angle) => read[angle] !== undefined && bare[angle] !== undefined);
  return Object.fromEntries(known.map((angle) => [angle, read[angle]! - bare[angle]!]));
}

function steersOnly(car: Car, corner: Corner, adjuster: Adjuster): boolean {
  const { rack } = suspensionKinds[car[axleOf(corner)].suspension.kind]!;
  const { points = [], links = [] } = adjusterKinds[adjuster.kind]!.touches(adjuster);
  return points.length === 0 && links.length > 0 && links.every((name) => name === rack);
}

/**
 * A chart says nothing of SAI: where what moves is an arm it goes against camber, where it is the knuckle it stays. Alike
 * on both sides it makes no difference.
 */
function ofCharts(
  car: Car,
  [left, right]: readonly [Corner, Corner],
  settings: CarSettings,
  unknown: readonly AdjusterRef[],
): Unsure[] {
  const camber = (corner: Corner): number =>
    adjustersOf(car, corner)
      .filter(({ kind, id }) => adjusterKinds[kind]!.byChart && !unknown.some(isOf(corner, id)))
      .reduce((sum, one) => sum + chartCamber(car, corner, one, settings[corner]?.[one.id] ?? one.reference), 0);
  const by = camber(left) - camber(right);
  return by === 0 ? [] : [{ spans: { [left]: withSai(-by, NONE) } }];
}

const isOf = (corner: Corner, id: string) => (ref: AdjusterRef) => ref.corner === corner && ref.adjuster === id;

function chartCamber(car: Car, corner: Corner, adjuster: Adjuster, at: Position): number {
  const { effect } = adjusterKinds[adjuster.kind]!;
  const { suspension } = car[axleOf(corner)];
  const camber = (position: Position) => effect(adjuster, position, suspension).add?.camber ?? 0;
  return camber(at) - camber(adjuster.reference);
}

const NONE: Spans = { camber: [0, 0], sai: [0, 0], included: [0, 0], caster: [0, 0] };

/** SAI, and the included angle with it, may have so much beside. */
function withSai(by: number, spans: Spans): Spans {
  const [low, high] = [Math.min(0, by), Math.max(0, by)];
  const wider = ([a, b]: Spans['sai']) => [a + low, b + high] as const;
  return { ...spans, sai: wider(spans.sai), included: wider(spans.included) };
}

/** What an adjuster may have in the angles beyond what it has where it is said to stand, over all its places. */
function ofPlace(car: Car, model: CarModel, settings: CarSettings, ref: AdjusterRef): Unsure[] {
  const { corner } = ref;
  const adjuster = adjustersOf(car, corner).find(({ id }) => id === ref.adjuster);
  if (!adjuster || steersOnly(car, corner, adjuster)) return [];
  const assembly = model.find(({ corners }) => corners.includes(corner))!;
  const stands = posed(assembly, settings);
  if (!stands) return [];
  const tried = placesOf(adjuster).flatMap(
    (at) => posed(assembly, { ...settings, [corner]: { ...settings[corner], [adjuster.id]: at } }) ?? [],
  );
  const spans = assembly.corners.map((one, i) => {
    const own = spansOf(
      stands[i]!,
      tried.filter((_, n) => n % assembly.corners.length === i),
    );
    return [one, adjusterKinds[adjuster.kind]?.byChart ? chartSpans(own) : own] as const;
  });
  const counts = spans.some(([, own]) => HELD.some((angle) => own[angle][1] - own[angle][0] >= WORTH_A_LOOK));
  if (!counts) return [];
  return [{ named: { ...ref, name: adjusterName(adjuster) }, spans: Object.fromEntries(spans) }];
}

function placesOf(adjuster: Adjuster): readonly Position[] {
  const all = adjusterKinds[adjuster.kind]?.positions(adjuster) ?? [];
  const every = Math.ceil(all.length / TRIED);
  return all.filter((_, i) => i % every === 0 || i === all.length - 1);
}

function posed({ corners, model }: Assembly, settings: CarSettings): readonly CornerPose[] | undefined {
  const pose = model.pose(corners.map((corner) => settings[corner] ?? {}));
  return pose.reachable ? pose.corners : undefined;
}

function spansOf(stands: CornerPose, tried: readonly CornerPose[]): Spans {
  const value = (pose: CornerPose, angle: HeldAngle) =>
    angle === 'included' ? (pose.sai ?? 0) + pose.camber : (pose[angle] ?? 0);
  const span = (angle: HeldAngle) => {
    const gains = tried.map((pose) => value(pose, angle) - value(stands, angle));
    return [Math.min(0, ...gains), Math.max(0, ...gains)] as const;
  };
  return { camber: span('camber'), sai: span('sai'), included: span('included'), caster: span('caster') };
}

/** The chart's camber may be SAI's loss. */
const chartSpans = (own: Spans): Spans => withSai(-own.camber[0], withSai(-own.camber[1], own));
