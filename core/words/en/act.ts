/** What the hand does, a sentence an act: loosen, move, tighten. */
import type { Act, Sense } from '../../said.ts';
import { inFlats } from '../../units/flats.ts';
import { plain } from '../../units/plain.ts';
import { place, plural, shimMm, signed, taper, wedge } from './place.ts';

type Sayings = { readonly [A in Act['act']]: (act: Extract<Act, { act: A }>) => string };

const SAYINGS: Sayings = {
  set: ({ from, to }) => `Set it from ${place(from)} to ${place(to)}; tighten.`,
  'change-shims': ({ by, from, to, stack }) => {
    const shims = stack.length > 1 ? ` (${stack.map(shimMm).join(' + ')})` : '';
    const verb = by > 0 ? 'Add' : 'Take out';
    return `${verb} ${shimMm(Math.abs(by))} mm of shims: ${shimMm(from)} → ${shimMm(to)} mm in the pack${shims}.`;
  },
  'turn-to-number': ({ from, to }) =>
    `Turn the cam from number ${from} to number ${to}, both faces alike, number up to the notch.`,
  'turn-marks': ({ by, from, to, sense }) => {
    const way = sense ?? (by > 0 ? 'towards +' : 'towards −');
    const marks = plural(plain(Math.abs(by), 1), 'mark');
    const seen = sense ? ', seen from the bolt head' : '';
    return `Loosen the nut, turn the bolt head ${marks} ${way} (${signed(from, 1)} → ${signed(to, 1)})${seen}; hold the head while tightening.`;
  },
  'turn-rod': ({ turns, mm, sense, seenFrom }) => {
    const way = turns > 0 ? 'longer' : 'shorter';
    return `Free the lock nut, turn the rod ${turnsAndFlats(turns)} ${way} (${plain(Math.abs(mm), 2)} mm)${seen(sense, seenFrom)}; lock it again.`;
  },
  slide: ({ by, from, to }) =>
    `Loosen the plate, slide it ${plain(Math.abs(by))} mm towards ${by > 0 ? '+' : '−'} on its scale (${signed(from)} mm → ${signed(to)} mm); tighten it again.`,
  tilt: ({ by, from, to, with: tool }) => {
    const what = tool === 'hand' ? 'tilt' : 'turn the cam bolt and tilt';
    const way = by > 0 ? 'out' : 'in';
    return `Loosen both clamp bolts, ${what} the wheel's top ${plain(Math.abs(by), 2)}° ${way} (${signed(from, 2)}° → ${signed(to, 2)}°); tighten.`;
  },
  'turn-sleeve': ({ from, to }) =>
    `Free the upper ball joint, turn the sleeve from ${plain(from, 1)}° to ${plain(to, 1)}° (0° = most camber, 90° = most caster); seat it again.`,
  'change-taper': ({ from, to }) =>
    to
      ? `Take the hub off, ${from ? `change the ${taper(from)} for` : 'fit'} the ${taper(to)} (0° = thick side at the top inside, camber out; 90° = toe-in).`
      : `Take the hub off and take the ${taper(from)} out.`,
  'change-wedges': ({ from, to }) => {
    const fit = from === 0 ? `fit the ${wedge(to)}` : `change the ${wedge(from)} for the ${wedge(to)}`;
    const change = to === 0 ? `take the ${wedge(from)} out` : fit;
    return `Support the axle, free the spring bolts, ${change}, both sides alike; one a side, never stacked.`;
  },
  'go-to-chart-position': ({ from, to }) => `Change from position ${from} to position ${to} of the chart.`,
  'go-steps': ({ by, from, to }) =>
    `Move ${plural(plain(Math.abs(by)), 'step')} ${by > 0 ? 'up' : 'down'} (${plain(from)} → ${plain(to)}).`,
};

export const act = (one: Act): string => (SAYINGS[one.act] as (act: Act) => string)(one);

/** ", clockwise seen from the wheel end"; nothing where the hand of the thread was not given. */
const seen = (sense: Sense | undefined, from: string | undefined): string =>
  sense ? `, ${sense}${from ? ` seen from ${from}` : ''}` : '';

/** "1 turn 2 flats", as hands count on a six-sided nut. */
export function turnsAndFlats(turns: number): string {
  const { whole, flats } = inFlats(turns);
  return [
    ...(whole > 0 || flats === 0 ? [plural(String(whole), 'turn')] : []),
    ...(flats > 0 ? [plural(plain(flats, 2), 'flat')] : []),
  ].join(' ');
}
