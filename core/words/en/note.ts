/** What stands beside a plan's figures. */
import type { ShimCount } from '../../contract.ts';
import type { Named, Note } from '../../said.ts';
import { plain } from '../../units/plain.ts';
import { inGroups } from './exact.ts';
import { bareLength } from './figures.ts';

type Sayings = { readonly [N in Note['note']]: (note: Extract<Note, { note: N }>) => string };

const SAYINGS: Sayings = {
  'by-chart': ({ names }) =>
    `${names.join(', ')}: the effect is the chart's; what it does to other angles is not known. Re-measure them all.`,
  'thrust-left': ({ thrust, goes, degrees }) =>
    `The thrust line stays ${away(thrust)}, and front toe is read against the centre line: driving straight ahead, the steering wheel will stand ${
      degrees === undefined
        ? `off to the ${goes}; the steering ratio on the build card would say how far`
        : `about ${Math.round(degrees)}° to the ${goes}`
    }. Front toe set against the thrust line leaves it level.`,
  'wheel-stood-off': ({ degrees, road, stays }) =>
    road === undefined
      ? `The steering wheel stood ${offLevel(degrees)}, and is not put straight: how far the road wheels turn with it is not known. Type the steering ratio on the build card.`
      : `The steering wheel stood ${offLevel(degrees)}: with it level the front wheels point ${away(-road)}. Clamp it level before a rod is turned: all figures here are with it so.${
          stays === undefined
            ? ''
            : ` It will still stand about ${offLevel(Math.round(stays))}: nearer it does not come.`
        }`,
  'lengths-unknown': ({ axle, name, most }) =>
    `${capital(axle)} ${name}: left and right may differ by ${plain(most, 3)} mm, and their lengths are not on file. The plan goes by what each has turned since the dimensions were taken, as if both were alike then: lay a tape on both.`,
  'bump-steer': ({ corner, before, after, travel }) =>
    `${corner}: bump steer gets worse, from ${before.toFixed(2)}° to ${after.toFixed(2)}° of toe over ${travel} mm of travel.`,
  strain: ({ corners, before, after }) =>
    `${corners.join(' and ')}: the links no longer agree; their bushes take up ${after.toFixed(1)} mm (before: ${before.toFixed(1)} mm).`,
  'axle-goes': ({ axle, pinion, aside, kept, beyond }) =>
    `${axle === 'rear' ? 'Rear' : 'Front'} axle: ${axleGone(pinion, aside)}.${kept ? keptText(kept, beyond) : ''}`,
  'too-far-apart': ({ both, most, by }) =>
    most === 0
      ? `${both.map(name).join(' and ')} must be alike: make both or leave both.`
      : `${both.map(name).join(' and ')} may differ by ${plain(most, 3)} mm at the most; with one of them left alone they differ by ${plain(by, 2)} mm. Make both or leave both.`,
  'packs-unknown': ({ packs }) =>
    `What is in ${packs.map(name).join(', ')} is not known: no shim that comes out is counted on. Say what is in a pack where the adjusters stand, and it counts.`,
  'below-least': ({ pack, holds, least }) =>
    `${name(pack)}: ${plain(holds, 3)} mm is less than its least pack of ${plain(least, 3)} mm. It is left so: see why, or set it to that and measure again.`,
  'best-found': ({ settings, around, offAim }) =>
    [
      `There are ${manyOf(settings)} settings here, too many to try each. This is the best that was found.`,
      ...(around
        ? [
            `No setting with every adjuster within ${plain(around.by)} ${around.by === 1 ? around.unit.slice(0, -1) : around.unit} of it is better.`,
          ]
        : []),
      ...(offAim === undefined
        ? []
        : [
            `It is on the aims to ${(Math.ceil(offAim * 1000) / 20).toFixed(2)} % of the windows: none at all could gain more.`,
          ]),
    ].join(' '),
  'not-proven': ({ inWindow }) =>
    `That no other setting is better could not be proven in the time there is. This is the best that was found.${
      inWindow ? '' : ' Another one may meet the windows.'
    }`,
  'shims-missing': ({ shims }) =>
    `The shims in the drawer keep the windows out of reach: ${shimsText(shims)} more would do.`,
  'shims-short': ({ shims }) =>
    `With the pack that is left alone its shims stay where they are: ${shimsText(shims)} more are needed.`,
  'shims-borrowed': ({ by, shims, from }) =>
    `${name(by)} takes ${shimsText(shims)} out of ${from.map(name).join(' and ')}: open that first.`,
};

export const note = (one: Note): string => (SAYINGS[one.note] as (note: Note) => string)(one);

/** "0.25° to the right" */
const away = (degrees: number): string => `${Math.abs(degrees).toFixed(2)}° to the ${side(degrees)}`;
/** "5° off level, to the right" */
const offLevel = (degrees: number): string => `${plain(Math.abs(degrees), 1)}° off level, to the ${side(degrees)}`;
const side = (degrees: number): string => (degrees > 0 ? 'right' : 'left');

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "pinion 0.10° up, axle 1.2 mm to the left" */
export function axleGone(pinion: number, aside: number): string {
  const up = pinion.toFixed(2);
  const left = aside.toFixed(1);
  return [
    Number(up) === 0 ? 'pinion as it was' : `pinion ${up.replace('-', '')}° ${pinion > 0 ? 'up' : 'down'}`,
    Number(left) === 0
      ? 'axle where it was'
      : `axle ${left.replace('-', '')} mm to the ${aside > 0 ? 'left' : 'right'}`,
  ].join(', ');
}

function keptText({ pinion, aside }: { readonly pinion?: number; readonly aside?: number }, beyond?: true): string {
  const within = [
    ...(pinion === undefined ? [] : [`±${pinion}° of pinion`]),
    ...(aside === undefined ? [] : [`±${aside} mm sideways`]),
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
function shimsText(shims: readonly ShimCount[]): string {
  const each = shims.map(({ size, count }) => `${count}\u00a0×\u00a0${bareLength(size)}\u00a0mm`);
  return [each.slice(0, -1).join(', '), ...each.slice(-1)].filter(Boolean).join(' and ');
}
