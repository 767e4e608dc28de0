/** What stands beside a plan's figures. */
import type { ShimCount } from '../../contract.ts';
import type { Named, Note } from '../../said.ts';
import { aboutLength, figure, fixed, lengthText, partAngle, type ShopUnits, wheelAngle } from '../../units/shop.ts';
import { inGroups } from './exact.ts';

type Sayings = { readonly [N in Note['note']]: (note: Extract<Note, { note: N }>, units?: ShopUnits) => string };

const SAYINGS: Sayings = {
  'by-chart': ({ names }) =>
    `${names.join(', ')}: the effect is the chart's; what it does to other angles is not known. Re-measure them all.`,
  'thrust-left': ({ thrust, goes, degrees }, units) =>
    `The thrust line stays ${away(thrust, units)}, and front toe is read against the centre line: driving straight ahead, the steering wheel will stand ${
      degrees === undefined
        ? `off to the ${goes}; the steering ratio on the build card would say how far`
        : `about ${Math.round(degrees)}° to the ${goes}`
    }. Front toe set against the thrust line leaves it level.`,
  'wheel-stood-off': ({ degrees, road, stays }, units) =>
    road === undefined
      ? `The steering wheel stood ${offLevel(degrees, units)}, and is not put straight: how far the road wheels turn with it is not known. Type the steering ratio on the build card.`
      : `The steering wheel stood ${offLevel(degrees, units)}: with it level the front wheels point ${away(-road, units)}. Clamp it level before a rod is turned: all figures here are with it so.${
          stays === undefined
            ? ''
            : ` It will still stand about ${offLevel(Math.round(stays), units)}: nearer it does not come.`
        }`,
  'lengths-unknown': ({ axle, name, most }, units) =>
    `${capital(axle)} ${name}: left and right may differ by ${lengthText(most, units)}, and their lengths are not on file. The plan goes by what each has turned since the dimensions were taken, as if both were alike then: lay a tape on both.`,
  'bump-steer': ({ corner, before, after, travel }, units) =>
    `${corner}: bump steer gets worse, from ${wheelAngle(before, units)} to ${wheelAngle(after, units)} of toe over ${aboutLength(travel, 0, units)} of travel.`,
  strain: ({ corners, before, after }, units) =>
    `${corners.join(' and ')}: the links no longer agree; their bushes take up ${aboutLength(after, 1, units)} (before: ${aboutLength(before, 1, units)}).`,
  'axle-goes': ({ axle, pinion, aside, kept, beyond }, units) =>
    `${axle === 'rear' ? 'Rear' : 'Front'} axle: ${axleGone(pinion, aside, units)}.${kept ? keptText(kept, beyond, units) : ''}`,
  'too-far-apart': ({ both, most, by }, units) =>
    most === 0
      ? `${both.map(name).join(' and ')} must be alike: make both or leave both.`
      : `${both.map(name).join(' and ')} may differ by ${lengthText(most, units)} at the most; with one of them left alone they differ by ${lengthText(Number(by.toFixed(2)), units)}. Make both or leave both.`,
  'packs-unknown': ({ packs }) =>
    `What is in ${packs.map(name).join(', ')} is not known: no shim that comes out is counted on. Say what is in a pack where the adjusters stand, and it counts.`,
  'below-least': ({ pack, holds, least }, units) =>
    `${name(pack)}: ${lengthText(holds, units)} is less than its least pack of ${lengthText(least, units)}. It is left so: see why, or set it to that and measure again.`,
  'best-found': ({ settings, around, offAim }, units) =>
    [
      `There are ${manyOf(settings)} settings here, too many to try each. This is the best that was found.`,
      ...(around
        ? [
            `No setting with every adjuster within ${figure(around.by, units)} ${around.by === 1 ? around.unit.slice(0, -1) : around.unit} of it is better.`,
          ]
        : []),
      ...(offAim === undefined
        ? []
        : [
            `It is on the aims to ${fixed(Math.ceil(offAim * 1000) / 20, 2, units)} % of the windows: none at all could gain more.`,
          ]),
    ].join(' '),
  'not-proven': ({ inWindow }) =>
    `That no other setting is better could not be proven in the time there is. This is the best that was found.${
      inWindow ? '' : ' Another one may meet the windows.'
    }`,
  'shims-missing': ({ shims }, units) =>
    `The shims in the drawer keep the windows out of reach: ${shimsText(shims, units)} more would do.`,
  'shims-short': ({ shims }, units) =>
    `With the pack that is left alone its shims stay where they are: ${shimsText(shims, units)} more are needed.`,
  'shims-borrowed': ({ by, shims, from }, units) =>
    `${name(by)} takes ${shimsText(shims, units)} out of ${from.map(name).join(' and ')}: open that first.`,
};

export const note = (one: Note, units?: ShopUnits): string =>
  (SAYINGS[one.note] as (note: Note, units?: ShopUnits) => string)(one, units);

/** "0.25° to the right" */
const away = (degrees: number, units?: ShopUnits): string =>
  `${wheelAngle(Math.abs(degrees), units)} to the ${side(degrees)}`;
/** "5° off level, to the right" */
const offLevel = (degrees: number, units?: ShopUnits): string =>
  `${partAngle(Math.abs(degrees), units, 1)} off level, to the ${side(degrees)}`;
const side = (degrees: number): string => (degrees > 0 ? 'right' : 'left');

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "pinion 0.10° up, axle 1.2 mm to the left" */
export function axleGone(pinion: number, aside: number, units?: ShopUnits): string {
  const up = wheelAngle(Math.abs(pinion), units);
  const left = aboutLength(Math.abs(aside), 1, units);
  const isNothing = (text: string): boolean => !/[1-9]/.test(text);
  return [
    isNothing(up) ? 'pinion as it was' : `pinion ${up} ${pinion > 0 ? 'up' : 'down'}`,
    isNothing(left) ? 'axle where it was' : `axle ${left} to the ${aside > 0 ? 'left' : 'right'}`,
  ].join(', ');
}

function keptText(
  { pinion, aside }: { readonly pinion?: number; readonly aside?: number },
  beyond?: true,
  units?: ShopUnits,
): string {
  const within = [
    ...(pinion === undefined ? [] : [`±${partAngle(pinion, units)} of pinion`]),
    ...(aside === undefined ? [] : [`±${lengthText(aside, units)} sideways`]),
  ].join(' and ');
  return beyond
    ? ` That is beyond the usual ${within}: the windows cannot be met within it. Check the driveshaft’s joints and the tyres’ room.`
    : ` Kept within the usual ${within}; no windows of its own are on file.`;
}

/** "2073 million": nobody reads the rest. */
function manyOf(n: number): string {
  if (n < 1e7) return inGroups(n);
  if (n < 1e10) return `${Math.round(n / 1e6)} million`;
  return n < 1e12 ? `${Math.round(n / 1e9)} thousand million` : 'more than a million million';
}

const name = ({ corner, name }: Named): string => `${corner} ${name}`;

/** "1 × 3 mm and 2 × 1.5 mm"; a line never breaks within one of them, where it reads as another sum. */
function shimsText(shims: readonly ShimCount[], units?: ShopUnits): string {
  const each = shims.map(
    ({ size, count }) => `${count}\u00a0×\u00a0${lengthText(size, units).replace(/ /g, '\u00a0')}`,
  );
  return [each.slice(0, -1).join(', '), ...each.slice(-1)].filter(Boolean).join(' and ');
}
