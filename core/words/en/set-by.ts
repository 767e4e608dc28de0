/**
 * What the hand does where a move goes by the rack: what to free, which way to begin and about how far, when to stop. An act
 * that nothing can watch while it is done is said as by its mark, and what to look for after it.
 */
import type { Act, LiveSaid, SetByFigure } from '../../said.ts';
import { FLATS } from '../../units/flats.ts';
import { aboutLength, lengthUnit, partAngle } from '../../units/shop.ts';
import type { Units } from '../words.ts';
import { act as byMark, SETS } from './act.ts';
import { counted, plural, signed, turnsAndFlats } from './figures.ts';
import { endWord } from './point-words.ts';

type Of<A extends Act['act']> = Extract<Act, { act: A }>;

/** "Free both lock nuts and turn the rod longer until the rack shows −0.12 toe: about 3 flats." */
export function setBy(act: Act, by: SetByFigure, units?: Units): string {
  const of = by.corner && act.act === 'turn-rod' && act.sets ? `${by.corner} ` : '';
  const until = `until the rack shows ${by.figure} ${of}${by.angle}`;
  switch (act.act) {
    case 'turn-rod':
      return `${rod(act)} ${until}: ${about(turnsAndFlats(halfFlats(act.turns)))}. ${act.sets ? 'Hold both end joints' : 'Hold the end joint'} square and watch the figure while locking.`;
    case 'turn-marks':
      return `Loosen the nut and turn the bolt head${way(act, by)} ${until}: ${about(plural(counted(halves(act.by)), 'mark'))}${act.sense ? `, to ${signed(halves(act.to, 0))}` : ''}. Hold the head and watch the figure while tightening, final torque at ride height.`;
    case 'slide':
      return `Loosen the ${act.bush ? 'bolt in its slot' : 'plate'} and slide it ${act.goes} ${until}: about ${aboutLength(Math.abs(act.by), 1, units)}, to ${act.to > 0 ? '+' : ''}${bare(act.to, units)} on its scale. Watch the figure while tightening${act.bush ? ', final torque at ride height' : ''}.`;
    case 'tilt':
      return `Loosen both clamp bolts and ${act.with === 'hand' ? '' : 'with the cam bolt '}lean the wheel’s top ${act.by > 0 ? 'out' : 'in'} ${until}: about ${partAngle(Math.abs(act.by), units, 1)}. Watch the figure while tightening.`;
    default:
      return `${byMark(act, units)} The rack should then show ${by.figure} ${by.angle}.`;
  }
}

/** What stands over the figure in large letters. */
const untilOf = (act: Act): string =>
  act.act === 'slide'
    ? 'Slide until the rack shows'
    : act.act === 'tilt'
      ? 'Lean until the rack shows'
      : 'Turn until the rack shows';

export function live(said: LiveSaid): string {
  switch (said.live) {
    case 'until':
      return untilOf(said.act);
    case 'then':
      return `${capital(said.angle)} then reads`;
    case 'sweep':
      return `Caster shows after a new sweep: then about ${said.figure}.`;
    case 'apart':
      return `${capital(said.angle)} reads ${said.read} where ${said.figure} was expected, within ${said.within}: more than gauge and dimensions make likely. Was the right one turned, and the right way? If so, plan the rest again from there.`;
    case 'way':
      return `until ${said.angle} ${said.figure}`;
    case 'made':
      return `${said.angle} ${said.figure} by the rack${said.stands ? `, ${said.stands}` : ''}`;
    case 'which':
      return 'While something is turned this rack shows';
  }
}

function rod({ turns, sense, seenFrom, sets }: Of<'turn-rod'>): string {
  const longer = turns > 0 ? 'longer' : 'shorter';
  const seen = sense ? `, ${sense}${seenFrom ? ` seen from ${seenFrom}` : ''},` : '';
  return sets
    ? `Leave the steering wheel clamped straight, free the lock nuts or clamps at both ends and turn the rod ${longer} (${SETS[sets]})${seen}`
    : `Free both lock nuts, and the gaiter’s clip where there is one, and turn the rod ${longer}${seen}`;
}

/** Which way: by the sense that is on file, else by what the rack shows. */
function way({ at, sense, goes }: Of<'turn-marks'>, { angle, rises }: SetByFigure): string {
  const end = goes ? `, so that ${endWord(at)} goes ${goes},` : '';
  if (sense) return ` ${sense}, seen from the bolt head${end || ','}`;
  return `${end || ','} the way that makes ${angle} ${rises ? 'rise' : 'fall'},`;
}

const about = (much: string): string => (much.startsWith('about ') ? much : `about ${much}`);
/** To the half, and never nothing unless it may be. */
const halves = (x: number, least = 0.5): number => Math.sign(x) * Math.max(least, Math.round(Math.abs(x) * 2) / 2);
/** A half flat is as fine as a hand counts. */
const halfFlats = (turns: number): number => halves(turns * FLATS) / FLATS;
const bare = (mm: number, units?: Units): string => aboutLength(mm, 1, units).replace(` ${lengthUnit(units)}`, '');
const capital = (text: string): string => `${text[0]!.toUpperCase()}${text.slice(1)}`;
