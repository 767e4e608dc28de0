/** Why a reading is not as predicted, as one technician would tell another: what it is, and what to look at. */
import type { Cause, Explained } from '../../said.ts';
import { wheelAngle } from '../../units/shop.ts';
import type { Units } from '../words.ts';
import { place } from './place.ts';

/** How a figure was typed: an angle by its name, degrees. */
type Show = (angle: string, degrees: number) => string;
type Say = (it: Explained, units: Units | undefined, show: Show) => string;

const SAYINGS: Readonly<Record<Cause, Say>> = {
  noise: () => 'Nothing beyond what the gauge and the dimensions leave open: go on as planned.',
  'not-made': (it, units) =>
    `${of(it)} seems not to have been moved, and still to be at ${at(it, units)}: look at its mark.`,
  'half-made': (it, units) =>
    `${of(it)} seems to have been moved half as far as asked, to ${at(it, units)}: count it again.`,
  'twice-made': (it, units) =>
    `${of(it)} seems to have been moved twice as far as asked, to ${at(it, units)}: count it again.`,
  'wrong-way': (it, units) =>
    `${of(it)} seems to have been moved the wrong way, to ${at(it, units)}: look which way it went.`,
  'other-side': (it, units) =>
    `The move of ${of(it)} seems to have been made on the other side, and this one still to be at ${at(it, units)}: look at both.`,
  'sides-exchanged': (it) =>
    `${it.adjuster?.name ?? ''} left and right seem to have been moved each by what was meant for the other: look at both.`,
  slipped: (it, units) =>
    `${of(it)} seems to have slipped as it was tightened, from ${asked(it, units)} to about ${at(it, units)}: look at its mark.`,
  reversed: (it) =>
    `${of(it)} seems to be fitted the other way round, or to have a thread of the other hand: look how it is built.`,
  sign: (it, _, show) => `${figure(it)} seems to have the wrong sign: ${typed(it, show)}. Read it again.`,
  digits: (it, _, show) =>
    `${figure(it)} seems to have two digits the wrong way round: ${typed(it, show)}. Read it again.`,
  decimal: (it, _, show) =>
    `${figure(it)} seems to have its point in the wrong place: ${typed(it, show)}. Read it again.`,
  swapped: (it) =>
    `${it.angle ? capital(it.angle) : 'All'} left and right ${it.corner?.endsWith('F') ? 'in front' : 'in the rear'} seem to be noted for one another, in the reading ${it.reading} the moves: read them again.`,
  misread: (it, _, show) =>
    `${figure(it)} fits nothing else that was read, ${show(it.angle ?? '', it.read ?? 0)}: read it again.`,
  bent: (it) => `Nothing that was done explains ${it.corner}: look for a bent or worn part, and for what is loose.`,
};

export const explanation = (
  one: Explained,
  units?: Units,
  show: Show = (_, degrees) => wheelAngle(degrees, units),
): string => SAYINGS[one.cause](one, units, show);

const of = ({ adjuster }: Explained): string => (adjuster ? `${adjuster.corner} ${adjuster.name}` : '');
const at = ({ stands }: Explained, units?: Units): string => (stands ? place(stands, units) : '');
const asked = ({ asked: to }: Explained, units?: Units): string => (to ? place(to, units) : '');
const figure = ({ corner, angle, reading }: Explained): string =>
  `${corner} ${angle} in the reading ${reading} the moves`;
const typed = ({ angle = '', read = 0, meant = 0 }: Explained, show: Show): string =>
  `${show(angle, read)} for ${show(angle, meant)}`;
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
