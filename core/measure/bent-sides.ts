/**
 * What may be bent where nothing tells of a steering axis: a camber that is off the maker's or the other side's though its
 * adjusters do not make it so, and rear wheels that point aside though nothing on their axle sets toe. Both the same way: the
 * axle or the subframe stands askew; one alone: what holds that wheel. Trade practice, from memory.
 */
import type { AxleName, Reading, Spec, WheelReading } from '../contract.ts';
import { AXLES } from '../corners.ts';
import type { AdjustersShare } from '../reading/adjusters-share.ts';
import { axleAngles, includedAngle } from '../reading/axle-angles.ts';
import { windowFor } from '../reading/spec-terms.ts';
import type { Hint, Suspect } from '../said.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { less, levelIn, middle, NOTICEABLE } from './levels.ts';

/** Degrees of toe of a wheel, and of thrust, before it means something. Trade practice, from memory. */
const ASIDE = 0.3;

/** What is asked of an axle. */
interface Asked {
  readonly axle: AxleName;
  readonly spec: Spec;
  /** As they read with what the adjusters have in it taken off, left and right. */
  readonly own: readonly [WheelReading, WheelReading];
  readonly kind: string | undefined;
}

/**
 * What the cambers of both axles and the toe of the rear one point to.
 * @param toeIsSet whether something on the rear axle sets toe: it is then set, and no sign of a bend
 * @param front whether the steering axis of the front wheels has been spoken of already
 */
export function sideHints(
  reading: Reading,
  spec: Spec,
  kinds: Readonly<Partial<Record<AxleName, string>>>,
  { share, toeIsSet, front }: { readonly share?: AdjustersShare; readonly toeIsSet: boolean; readonly front: boolean },
): readonly Hint[] {
  const asked = (axle: AxleName): Asked => {
    const [left, right] = AXLES[axle].map((corner) => less(reading[corner], share?.added[corner]));
    return { axle, spec, own: [left!, right!], kind: kinds[axle] };
  };
  const unless = (axle: AxleName, hints: readonly Hint[]): readonly Hint[] => {
    const unknown = (share?.unsure ?? []).filter(({ spans }) =>
      AXLES[axle].some((corner) => spans[corner]?.camber.some((end) => end !== 0)),
    );
    if (hints.length === 0 || unknown.length === 0) return hints;
    const names = unknown.flatMap(({ named }) => named ?? []);
    return names.length > 0 ? [{ where: axle, kind: 'places-first', unknown: names }] : [];
  };
  const rear = asked('rear');
  return [
    ...(front ? [] : unless('front', cambers(asked('front')))),
    ...unless('rear', cambers(rear)),
    ...(toeIsSet ? [] : pointing(rear)),
  ];
}

function cambers({ axle, spec, own, kind }: Asked): Hint[] {
  const look = suspectOf(axle, own, kind);
  const { crossCamber } = axleAngles(...own);
  const wanted = spec[axle]?.crossCamber;
  const apart = crossCamber === undefined ? 0 : crossCamber - (wanted ? middle(wanted) : 0);
  // Both off alike is what a ride height does, but for a rear axle that has none of its own.
  if (Math.abs(apart) <= NOTICEABLE && !(axle === 'rear' && isRigid(kind))) return [];
  const off = AXLES[axle].flatMap((where, i): Hint[] => {
    const [window, camber] = [windowFor(spec, where, 'camber'), own[i]!.camber];
    if (!window || camber === undefined || levelIn(camber, window) === 'ok') return [];
    return [{ where, kind: 'camber', by: camber - middle(window), against: 'maker', look }];
  });
  if (off.length > 0) return off;
  return Math.abs(apart) > NOTICEABLE ? [{ where: axle, kind: 'camber', by: apart, against: 'other-side', look }] : [];
}

function suspectOf(axle: AxleName, own: Asked['own'], kind: string | undefined): Suspect {
  if (axle === 'rear') return isRigid(kind) ? 'axle-tube' : 'rear-arm';
  const [left, right] = own.map(includedAngle);
  return left === undefined || right === undefined ? 'sai-first' : 'moved-pivot';
}

/** Its hubs are part of one axle. */
function isRigid(kind: string | undefined): boolean {
  const { height = true, points = [], rigidAxle } = suspensionKinds[kind ?? ''] ?? {};
  return rigidAxle?.onLinks === true || (!height && points.length > 0);
}

/** Each wheel's toe against half of what the axle is to have. */
function pointing({ spec, own: [left, right], kind }: Asked): Hint[] {
  if (left.toe === undefined || right.toe === undefined) return [];
  const [l, r] = AXLES.rear.map((corner, i) => {
    const window = windowFor(spec, corner, 'toe');
    const total = spec.rear?.totalToe;
    return [left, right][i]!.toe! - (window ? middle(window) : total ? middle(total) / 2 : 0);
  }) as [number, number];
  const by = (l - r) / 2;
  if (l * r < 0 && Math.min(Math.abs(l), Math.abs(r)) > ASIDE / 2 && Math.abs(by) > ASIDE) {
    return [{ where: 'rear', kind: 'askew', by, look: isRigid(kind) ? 'rear-axle' : 'rear-subframe' }];
  }
  const look = isRigid(kind) ? 'axle-tube' : 'rear-arm';
  return AXLES.rear.flatMap((where, i): Hint[] => {
    const off = i === 0 ? l : r;
    return Math.abs(off) > ASIDE ? [{ where, kind: 'rear-toe', by: off, look }] : [];
  });
}
