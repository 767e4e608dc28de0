/**
 * What the hand does, a sentence an act, said for who lies under the car: what to free and to hold up first, how far and
 * which way as it is seen from there, what to mind while tightening.
 */
import type { Act, Sense, Taper } from '../../said.ts';
import { bareLength, figure, lengthText, lengthUnit, partAngle } from '../../units/shop.ts';
import type { Units } from '../words.ts';
import { counted, plural, turnsAndFlats } from './figures.ts';
import { mark, place, wedge } from './place.ts';
import { endWord } from './point-words.ts';

type Sayings = { readonly [A in Act['act']]: (act: Extract<Act, { act: A }>, units?: Units) => string };

const SAYINGS: Sayings = {
  set: ({ from, to }, units) => `Set it from ${place(from, units)} to ${place(to, units)}; tighten.`,
  'change-shims': ({ by, to, stack, holds }, units) => {
    if (to === 0) return `Support the arm and take the whole pack out: ${thanNow(by, units)}.`;
    return `Support the arm and build this pack: ${packText(to, stack, units)}, ${thanNow(by, units)}${swapped(stack, holds, units)}; the full nut on its thread.`;
  },
  'turn-to-number': ({ from, to }) =>
    `Turn both ends of the cam from ${from} to ${to}, until ${to} is at the notch at each end; final torque at ride height.`,
  'turn-marks': ({ at, by, from, to, goes, sense, shows }, units) => {
    const much = `Loosen the nut, turn the bolt head ${plural(counted(by), 'mark')}`;
    const so = goes ? `, so that ${endWord(at)} goes ${goes}` : '';
    const held = 'hold the head while tightening, final torque at ride height.';
    if (sense)
      return `${much} ${sense}, seen from the bolt head (${mark(from, units)} → ${mark(to, units)})${so}; ${held}`;
    const [is, other] = shows && shows.by > 0 ? ['rises', 'falls'] : ['falls', 'rises'];
    const watch = shows
      ? `on the rack ${shows.angle} ${is} by ${partAngle(Math.abs(shows.by), units, 2)}, and where it ${other} turn the other way`
      : 'watch the disc';
    return `${much}${so}. Which way to turn it is not on file: ${watch}; ${held}`;
  },
  'turn-rod': (rod, units) => {
    const turned = rodText(rod, units);
    if (rod.sets) {
      return `Leave the steering wheel clamped straight, free the lock nuts or clamps at both ends, turn the rod ${turned}, so that ${SETS[rod.sets]}; hold both end joints square while locking.`;
    }
    return `Free both lock nuts, and the gaiter’s clip where there is one, turn the rod ${turned}; hold the end joint square while locking.`;
  },
  slide: ({ by, from, to, goes, bush }, units) => {
    const what = bush ? 'Loosen the bolt in its slot' : 'Loosen the plate';
    const tight = bush ? 'final torque at ride height' : 'tighten it again';
    return `${what}, slide it ${lengthText(Math.abs(by), units)} ${goes} (${onScale(from, units)} → ${onScale(to, units)} ${lengthUnit(units)} on its scale); ${tight}.`;
  },
  tilt: ({ by, from, to, with: tool, camber }, units) => {
    const way = by > 0 ? 'out' : 'in';
    const turn = tool === 'hand' ? '' : 'turn the cam bolt and ';
    const scale = `${leaning(from, units)} → ${leaning(to, units)} on the bolt’s scale`;
    const until =
      camber === undefined
        ? `by ${partAngle(Math.abs(by), units, 2)} against the strut`
        : `until camber has ${camber > 0 ? 'risen' : 'fallen'} by ${partAngle(Math.abs(camber), units, 2)}`;
    return `Loosen both clamp bolts, ${turn}lean the wheel’s top ${way} ${until} (${scale}); tighten.`;
  },
  'turn-sleeve': ({ from, to }, units) =>
    `Free the upper ball joint, turn the sleeve from ${partAngle(from, units, 1)} to ${partAngle(to, units, 1)} (0° = most camber, 90° = most caster); seat it again.`,
  'change-sleeve': ({ from, to }, units) => {
    if (!to) return `Free the upper ball joint, change the ${sleeve(from, units)} for the plain one; seat it again.`;
    const what =
      from?.taper === to.taper
        ? `turn the ${sleeve(to, units)} so that its mark stands`
        : `change the ${sleeve(from, units)} for the ${partAngle(to.taper, units)} one, its mark`;
    return `Free the upper ball joint, ${what} ${towards(to.at, units)}; seat it again.`;
  },
  'change-taper': ({ from, to, side }, units) => {
    if (!to) return `Take the hub off and take the ${from ? shim(from, units) : 'shim'} out.`;
    const what = from?.taper === to.taper ? `turn the ${shim(to, units)} so that it stands` : fitted(from, to, units);
    return `Take the hub off, ${what} with its thick edge at ${clock(to, side)} o’clock, seen from outside the wheel.`;
  },
  'change-wedges': ({ from, to }, units) => {
    const end = to > 0 ? 'rear' : 'front';
    const thick = `thick end to the ${end} (to the ${end === 'rear' ? 'front' : 'rear'} where the springs hang below the axle)`;
    const change =
      from === 0 ? `fit the ${wedge(to, units)}` : `change the ${wedge(from, units)} for the ${wedge(to, units)}`;
    const weight = 'final torque with the weight on the springs';
    if (to === 0)
      return `Support the axle, free the spring bolts, take the ${wedge(from, units)} out on both sides; ${weight}.`;
    return `Support the axle, free the spring bolts, ${change} on both sides, ${thick}; one a side, never stacked; ${weight}.`;
  },
  'go-to-chart-position': ({ from, to }) =>
    `Change from position ${from} to position ${to} of the chart; where it holds a rubber bush, final torque at ride height.`,
  'go-steps': ({ by, from, to }, units) =>
    `Move ${plural(figure(Math.abs(by), units), 'step')} ${by > 0 ? 'up' : 'down'} (${figure(from, units)} → ${figure(to, units)}); where it holds a rubber bush, final torque at ride height.`,
};

export const act = (one: Act, units?: Units): string =>
  (SAYINGS[one.act] as (act: Act, units?: Units) => string)(one, units);

const sumText = (shims: readonly number[], units?: Units): string =>
  shims.map((size) => bareLength(size, units)).join(' + ');

/** `3 + 1.5 = 4.5 mm` */
export const packText = (mm: number, stack: readonly number[], units?: Units): string => {
  const sum = stack.length > 1 ? `${sumText(stack, units)} = ` : '';
  return `${sum}${lengthText(mm, units)}`;
};
/** `1.5 mm more than now` */
export const thanNow = (by: number, units?: Units): string =>
  `${lengthText(Math.abs(by), units)} ${by > 0 ? 'more' : 'less'} than now`;

/** `3 flats longer (0.75 mm), clockwise seen from the wheel end` */
export function rodText({ turns, mm, sense, seenFrom }: Extract<Act, { act: 'turn-rod' }>, units?: Units): string {
  const size = Math.abs(mm);
  const by = lengthText(units?.length === 'inch' ? size : Number(size.toFixed(2)), units);
  return `${turnsAndFlats(turns)} ${turns > 0 ? 'longer' : 'shorter'} (${by})${seen(sense, seenFrom)}`;
}
export const SETS = {
  'toe-in': 'total toe goes in',
  'toe-out': 'total toe goes out',
  'to-the-left': 'both wheels turn to the left',
  'to-the-right': 'both wheels turn to the right',
} as const;
/** ` (out: 3; in: 1.5 + 1.5)`, where it is known what is in the pack. */
export function swapped(stack: readonly number[], holds?: readonly number[], units?: Units): string {
  if (!holds || stack.length === 0) return '';
  const [out, fit] = [without(holds, stack), without(stack, holds)];
  const parts = [
    ...(out.length > 0 ? [`out: ${sumText(out, units)}`] : []),
    ...(fit.length > 0 ? [`in: ${sumText(fit, units)}`] : []),
  ];
  return parts.length > 0 ? ` (${parts.join('; ')})` : '';
}

/** What is in the one and not in the other, each shim for itself. */
function without(all: readonly number[], others: readonly number[]): number[] {
  const left = [...others];
  return all.filter((size) => {
    const at = left.findIndex((one) => Math.abs(one - size) < 1e-6);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}

const onScale = (mm: number, units?: Units): string => `${mm > 0 ? '+' : ''}${bareLength(mm, units)}`;

/** ", clockwise seen from the wheel end"; nothing where the hand of the thread was not given. */
const seen = (sense: Sense | undefined, from: string | undefined): string =>
  sense ? `, ${sense}${from ? ` seen from ${from}` : ''}` : '';

/** `+0.5°`, as the bolt's scale has it. */
const leaning = (degrees: number, units?: Units): string => `${degrees > 0 ? '+' : ''}${partAngle(degrees, units, 2)}`;

const shim = ({ taper }: Taper, units?: Units): string => `${partAngle(taper, units)} shim`;
const fitted = (from: Taper | undefined, to: Taper, units?: Units): string =>
  from ? `change the ${shim(from, units)} for the ${shim(to, units)}` : `fit the ${shim(to, units)}`;

const sleeve = (one: Taper | undefined, units?: Units): string =>
  one ? `${partAngle(one.taper, units)} sleeve` : 'plain sleeve';

const QUARTERS = ['outboard', 'the rear', 'inboard', 'the front'] as const;
/** Where a mark at an angle points, seen from above: 0° is outboard, 90° the rear, on either side of the car. */
function towards(angle: number, units?: Units): string {
  const on = ((angle % 360) + 360) % 360;
  const near = Math.round(on / 90);
  const off = on - 90 * near;
  const quarter = (i: number): string => QUARTERS[(i + 4) % 4]!;
  if (Math.abs(off) < 0.05) return `${near % 2 ? 'to ' : ''}${quarter(near)}`;
  if (Math.abs(off) > 44.95)
    return `half way between ${quarter(Math.floor(on / 90))} and ${quarter(Math.ceil(on / 90))}`;
  return `${partAngle(Math.abs(off), units, 1)} from ${quarter(near)} towards ${quarter(near + Math.sign(off))}`;
}

/** At 0° the thick edge is up and camber rises; at 90° it is to the rear, which is at three on a left wheel. */
function clock({ at }: Taper, side: 'left' | 'right'): string {
  const hour = ((side === 'left' ? at : -at) / 30 + 24) % 12;
  const half = Math.round(hour * 2) / 2;
  return half < 0.5 || half >= 12 ? (half === 0 || half >= 12 ? '12' : '12½') : counted(half);
}
