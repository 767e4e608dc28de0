/** Where an adjuster stands, typed: in the parts in which it is said, and read back. */
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import { taperAt, taperPosition } from '../../core/adjuster/taper.ts';
import type { Adjuster, Position } from '../../core/contract.ts';
import { InputError } from '../../core/input-error.ts';
import type { Rule } from '../../core/rule.ts';
import type { Place } from '../../core/said.ts';
import { exactAngle } from '../../core/units/exact-angle.ts';
import { FLATS, inFlats } from '../../core/units/flats.ts';
import { parseLength } from '../../core/units/length.ts';
import { parseAngle } from '../../core/units/parse.ts';
import { tidy } from '../../core/units/plain.ts';
import { bareLength, figure, lengthUnit } from '../../core/units/shop.ts';
import { units } from './preferences.ts';
import { positionsOf, unsidedWay } from './standing.ts';

/** One of the fields in which it is typed. */
export interface PlacePart {
  readonly label: string;
  readonly text: string;
  readonly mode: 'decimal' | 'text';
  /** It may be below zero. */
  readonly signed?: true;
}

/** How one way of saying a place is typed. `read` refuses what is none by throwing, or gives nothing. */
interface Typed {
  readonly parts: (adjuster: Adjuster, position: Position) => readonly PlacePart[];
  readonly read: (texts: readonly string[], adjuster: Adjuster) => Position | undefined;
  /** What is allowed, where it is not typed as the core counts. */
  readonly allowed?: (adjuster: Adjuster) => Rule;
}

/** Six places: a mark of 7 to a turn is no round number of degrees. */
const shown = (x: number): string => figure(Number(x.toFixed(4)), units.value);

function numberOf(text: string): number | undefined {
  const plain = text.trim().replace('−', '-').replace(',', '.');
  return plain === '' || Number.isNaN(Number(plain)) ? undefined : Number(plain);
}
const degreesOf = (text: string): number => parseAngle(text, { limit: 720 });

const decimal = (label: string, text: string, signed = false): PlacePart => ({
  ...{ label, text, mode: 'decimal' as const },
  ...(signed && { signed: true as const }),
});

const length = (signed: boolean): Typed => ({
  parts: (_, position) => [decimal(lengthUnit(units.value), bareLength(Number(position), units.value), signed)],
  read: ([text = '']) => parseLength(text, { unit: units.value.length }),
});
const angle = (signed: boolean): Typed => ({
  parts: (_, position) => [decimal('degrees', exactAngle(Number(position), units.value), signed)],
  read: ([text = '']) => degreesOf(text),
});
/** As it is stamped, whichever way it is written. */
const label: Typed = {
  parts: (adjuster, position) => [
    {
      label: 'number or letter',
      text: String(position),
      mode: positionsOf(adjuster).every(isFigure) ? 'decimal' : 'text',
    },
  ],
  read: ([text = ''], adjuster) => {
    const wanted = text.trim().toLowerCase();
    return positionsOf(adjuster).find((one) => String(one).toLowerCase() === wanted);
  },
};
const isFigure = (position: Position): boolean => /^\d+$/.test(String(position));

/** Without a + side on file they are counted the way that the point goes. */
function marksLabel(cam: Adjuster): string {
  const way = unsidedWay(cam);
  if (way === 'end') return 'marks from the end of its travel';
  return way ? `marks ${way} from the middle, − the other way` : 'marks';
}

const TYPED: Readonly<Record<Place['as'], Typed>> = {
  thickness: length(false),
  scale: length(true),
  number: label,
  chart: label,
  label,
  steps: {
    parts: (_, position) => [decimal('steps', shown(Number(position)), true)],
    read: ([text = '']) => numberOf(text),
  },
  mark: {
    parts: (cam, position) => [decimal(marksLabel(cam), shown((Number(position) * cam.marks) / 360), true)],
    read: ([text = ''], { marks }) => {
      const count = numberOf(text);
      return count === undefined ? undefined : tidy((count * 360) / marks);
    },
    allowed: (cam) => {
      const all = positionsOf(cam).map((angle) => tidy((Number(angle) * cam.marks) / 360));
      return { is: 'number', low: all[0] ?? 0, high: all.at(-1) ?? 0, unit: 'marks' };
    },
  },
  angle: angle(false),
  tilt: angle(true),
  wedge: angle(true),
  turns: {
    parts: (_, position) => {
      const { whole, flats } = inFlats(Number(position));
      // The sign stands before the turns, were there none of them.
      const sign = Number(position) < 0 ? '−' : '';
      return [decimal('turns', `${sign}${whole}`, true), decimal('flats', shown(flats))];
    },
    read: ([turns = '', flats = '']) => {
      const [whole, more] = [numberOf(turns.replace(/^[−-]/, '') || '0'), numberOf(flats || '0')];
      if (whole === undefined || more === undefined) return undefined;
      return tidy((/^[−-]/.test(turns.trim()) ? -1 : 1) * (whole + more / FLATS));
    },
  },
  taper: {
    parts: (_, position) => {
      const disc = taperAt(position);
      const write = (x: number | undefined) => (x === undefined ? '' : exactAngle(x, units.value));
      return [decimal('taper, degrees', write(disc?.taper)), decimal('turned to, degrees', write(disc?.at))];
    },
    read: ([taper = '', at = ''], adjuster) => {
      const plain = positionsOf(adjuster).find((one) => !taperAt(one));
      if (taper.trim() === '' || numberOf(taper) === 0) return plain;
      return at.trim() === '' ? undefined : taperPosition({ taper: degreesOf(taper), at: degreesOf(at) });
    },
  },
};

function typedOf(adjuster: Adjuster, position: Position): Typed {
  const place = adjusterKinds[adjuster.kind]?.place(adjuster, position);
  return place ? TYPED[place.as] : label;
}

/** The fields in which it is typed where it stands, with the position in them. */
export const placeParts = (adjuster: Adjuster, position: Position): readonly PlacePart[] =>
  typedOf(adjuster, position).parts(adjuster, position);

/** The position that was typed, or what is allowed. */
export function typedPlace(adjuster: Adjuster, texts: readonly string[]): { readonly position: Position } | Rule {
  const kind = adjusterKinds[adjuster.kind];
  const typed = typedOf(adjuster, adjuster.reference);
  const allowed: Rule = typed.allowed?.(adjuster) ??
    kind?.allowed(adjuster) ?? { is: 'one-of', of: positionsOf(adjuster) };
  try {
    const position = typed.read(texts, adjuster);
    const fits = position !== undefined && (kind?.accepts(adjuster, position) ?? true);
    return fits ? { position } : allowed;
  } catch (error) {
    if (error instanceof InputError) return allowed;
    throw error;
  }
}
