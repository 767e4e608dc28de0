/**
 * What may be bent, beyond what the two sides say of each other (reading/diagnosis.ts): camber, SAI and included angle
 * against the maker's, a wheel that is further back, toe-out on turns. The included angle belongs to the knuckle; camber and
 * SAI that are off by equal and opposite amounts mean that a pivot has moved. Where to look, never a verdict.
 */
import type { AxleName, Reading, Spec, Window } from '../contract.ts';
import { AXLES } from '../corners.ts';
import type { AdjustersShare } from '../reading/adjusters-share.ts';
import { windowFor } from '../reading/spec-terms.ts';
import type { Hint } from '../said.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { type BendPattern, KNUCKLE } from '../suspension/kind.ts';
import { less, levelIn, middle, NOTICEABLE } from './levels.ts';
import { within } from './within.ts';

/** What of a steered axle only a tape and the turn plates tell. What was not measured is absent. */
export interface BentMeasures {
  /** The maker's SAI, degrees. */
  readonly sai?: Window;
  /** mm that the right front wheel is further back than the left; − the left one. */
  readonly setback?: number;
  /** Degrees that each wheel turns as the outer one, with the inner one at the angle of the maker, mostly 20°. */
  readonly outer?: { readonly left: number; readonly right: number };
  /** The maker's for it. */
  readonly makersOuter?: number;
}

/** mm of setback before it means something: a quarter of an inch. Trade practice, from memory. */
const SET_BACK = 6;
/** Degrees of turn before it means something. Trade practice, from memory. */
const TURNS = 1.5;
/** Degrees of caster that make the wheel that is back the lower one. */
const CASTER_LOW = 0.3;

/**
 * What the front axle's figures point to.
 * @param share what the adjusters have in the angles, which is taken off first; absent where nothing is known of them
 * @throws InputError naming the measure
 */
export function bentHints(
  reading: Reading,
  spec: Spec,
  kinds: Readonly<Partial<Record<AxleName, string>>>,
  measures: BentMeasures,
  share?: AdjustersShare,
): readonly Hint[] {
  if (measures.setback !== undefined) within('setback', measures.setback, -500, 500, 'mm');
  for (const [side, angle] of Object.entries(measures.outer ?? {})) within(`outer.${side}`, angle, 0, 60, 'degrees');
  return [
    ...againstMaker(reading, spec, kinds.front, measures, share),
    ...movedBack(reading, measures),
    ...turns(measures),
  ];
}

type Levels = Required<Omit<BendPattern, 'look'>>;

function againstMaker(
  reading: Reading,
  spec: Spec,
  kind: string | undefined,
  { sai }: BentMeasures,
  share?: AdjustersShare,
): Hint[] {
  if (!sai) return [];
  // A place that nobody knows has a share that nobody knows.
  if (share?.unsure.some(({ spans }) => AXLES.front.some((corner) => spans[corner]))) return [];
  const found = AXLES.front.map((corner) => {
    const camber = windowFor(spec, corner, 'camber');
    const own = less(reading[corner], share?.added[corner]);
    if (!camber || own.camber === undefined || own.sai === undefined) return undefined;
    const sum = { low: middle(sai) + middle(camber) - NOTICEABLE, high: middle(sai) + middle(camber) + NOTICEABLE };
    return {
      sai: levelIn(own.sai, sai),
      camber: levelIn(own.camber, camber),
      included: levelIn(own.sai + own.camber, sum),
    };
  }) as [Levels | undefined, Levels | undefined];
  const to = kind === 'strut' ? shiftOf(found) : undefined;
  if (to) return [{ where: 'front', kind: 'shifted', to, look: 'subframe' }];
  const patterns = suspensionKinds[kind ?? '']?.patterns ?? ANY;
  return AXLES.front.flatMap((corner, i): Hint[] => {
    const own = found[i];
    const row =
      own &&
      patterns.find((one) =>
        (['sai', 'camber', 'included'] as const).every((a) => one[a] === undefined || one[a] === own[a]),
      );
    return own && row ? [{ where: corner, kind: 'against-maker', ...own, look: row.look }] : [];
  });
}

const ANY: readonly BendPattern[] = [
  { sai: 'low', camber: 'high', included: 'ok', look: 'moved-pivot' },
  { sai: 'high', camber: 'low', included: 'ok', look: 'moved-pivot' },
  ...KNUCKLE,
];

/**
 * On struts the lower joints go with the subframe and the towers stay: gone to the right, the left wheel's foot goes in, its
 * camber up and its SAI down, the right one's the other way.
 */
function shiftOf([left, right]: readonly [Levels | undefined, Levels | undefined]): 'left' | 'right' | undefined {
  if (!left || !right || left.included !== 'ok' || right.included !== 'ok') return undefined;
  const gone = (high: Levels, low: Levels): boolean =>
    high.camber === 'high' && high.sai === 'low' && low.camber === 'low' && low.sai === 'high';
  return gone(left, right) ? 'right' : gone(right, left) ? 'left' : undefined;
}

function movedBack({ LF, RF }: Reading, { setback = 0 }: BentMeasures): Hint[] {
  if (Math.abs(setback) < SET_BACK) return [];
  const [where, own, other] = setback > 0 ? (['RF', RF, LF] as const) : (['LF', LF, RF] as const);
  const isLow = own?.caster !== undefined && other?.caster !== undefined && other.caster - own.caster > CASTER_LOW;
  return [
    {
      where,
      kind: 'moved-back',
      length: Math.abs(setback),
      ...(isLow && { casterLow: true }),
      look: 'wheel-moved-back',
    },
  ];
}

function turns({ outer, makersOuter }: BentMeasures): Hint[] {
  if (!outer) return [];
  const look = 'steering-arm';
  if (makersOuter !== undefined) {
    const off = [
      ['LF', outer.left - makersOuter],
      ['RF', outer.right - makersOuter],
    ] as const;
    return off
      .filter(([, by]) => Math.abs(by) > TURNS)
      .map(([where, by]) => ({ where, kind: 'turns', by, against: 'maker', look }));
  }
  const by = outer.left - outer.right;
  return Math.abs(by) > TURNS ? [{ where: 'front', kind: 'turns', by, against: 'other-side', look }] : [];
}
