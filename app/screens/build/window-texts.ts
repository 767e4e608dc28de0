/** The windows of one axle as texts and back. Left and right have windows of their own where the card says so. */
import type { AxleSpec, WheelSpec, Window } from '../../../core/contract.ts';
import { AXLE_ANGLES, AXLE_CHANGES } from '../../../core/contract.ts';
import { parseLength } from '../../../core/units/length.ts';
import { tidy } from '../../../core/units/plain.ts';
import { PLUS_MINUS, parsePlusMinus } from '../../../core/units/plus-minus.ts';
import { readAngle } from '../../state/units.ts';
import {
  cardUnits,
  exactAngle,
  lengthText,
  type Texts,
  toeWindowOf,
  toeWindowText,
  typedValue,
  unlessTyped,
  type WindowText,
} from './numbers.ts';

export const WHEEL_WINDOWS = ['caster', 'camber', 'toe'] as const satisfies readonly (keyof WheelSpec)[];
export const SIDES = ['left', 'right'] as const;
export const ENDS = ['low', 'aim', 'high'] as const;

const isToe = (angle: string): angle is 'toe' | 'totalToe' => angle === 'toe' || angle === 'totalToe';
export const sidesDiffer = (texts: Texts, path: string): boolean => texts[`${path}.sides`] === 'differ';

export function axleWindowTexts(spec: AxleSpec | undefined, path: string, rim: number | undefined): Texts {
  if (!spec) return {};
  const differ = spec.left !== undefined || spec.right !== undefined;
  const wheels = WHEEL_WINDOWS.flatMap((angle) =>
    differ
      ? SIDES.map((side) => oneWindow(spec[side]?.[angle] ?? spec[angle], angle, `${path}.${side}.${angle}`, rim))
      : [oneWindow(spec[angle], angle, `${path}.${angle}`, rim)],
  );
  const axle = [...AXLE_ANGLES, ...AXLE_CHANGES].map((angle) => oneWindow(spec[angle], angle, `${path}.${angle}`, rim));
  return Object.assign({}, differ ? { [`${path}.sides`]: 'differ' } : {}, ...wheels, ...axle);
}

const textOf = (angle: string, value: number, rim: number | undefined): string =>
  isToe(angle) ? toeWindowText(value, rim, angle) : angle === 'lateralChange' ? lengthText(value) : exactAngle(value);

function oneWindow(window: Window | undefined, angle: string, path: string, rim: number | undefined): Texts {
  if (!window) return {};
  const show = (value: number): string => textOf(angle, value, rim);
  return Object.fromEntries(
    ENDS.map((end) => {
      const value = window[end];
      return [`${path}.${end}`, value === undefined ? '' : show(value)];
    }),
  );
}

/** On switching: what was one window stands on both sides, and back. Nothing that was typed goes. */
export function withSides(texts: Texts, path: string, differ: boolean): Texts {
  const change: Record<string, string> = { [`${path}.sides`]: differ ? 'differ' : '' };
  for (const angle of WHEEL_WINDOWS) {
    for (const end of ENDS) {
      const both = `${path}.${angle}.${end}`;
      const left = `${path}.left.${angle}.${end}`;
      if (!differ && !texts[both] && texts[left]) change[both] = texts[left];
      for (const side of differ ? SIDES : []) {
        const own = `${path}.${side}.${angle}.${end}`;
        if (!texts[own] && texts[both]) change[own] = texts[both];
      }
    }
  }
  return change;
}

/** Diameters that toe windows are lengths at, mm. */
interface Rims {
  /** As the card says now. */
  readonly now: number | undefined;
  /** As on file. */
  readonly before: number | undefined;
}

/** How a figure of a window is read. */
function readingOf(text: string, angle: string, rim: number | undefined): WindowText {
  if (isToe(angle)) return toeWindowOf(text, rim, angle);
  const asIs = (value: number) => value;
  if (angle !== 'lateralChange') return { read: readAngle, from: asIs };
  return { read: (one) => parseLength(one, { unit: cardUnits().length }), from: asIs };
}

/** The ends that an aim such as "−0.5 ± 0.75" makes, as texts for their cells; nothing where it is none. */
export function endsOf(text: string, angle: string, rim: number | undefined): Texts {
  const { read, from } = readingOf(text, angle, rim);
  try {
    const both = parsePlusMinus(text, read);
    return both ? { low: textOf(angle, from(both.low), rim), high: textOf(angle, from(both.high), rim) } : {};
  } catch {
    return {};
  }
}

/**
 * What typing in one cell of a window changes: an aim with how far it may be off fills in both ends; an end that is typed
 * afterwards leaves the aim alone of it.
 */
export function typedWindow(
  texts: Texts,
  at: string,
  cell: string,
  text: string,
  angle: string,
  rim: number | undefined,
): Texts {
  const [low, aim, high] = [`${at}.low`, `${at}.aim`, `${at}.high`];
  if (cell === aim) {
    const ends = endsOf(text, angle, rim);
    return { [aim]: text, ...(ends.low !== undefined && { [low]: ends.low, [high]: ends.high ?? '' }) };
  }
  const before = texts[aim] ?? '';
  const [alone = ''] = before.split(PLUS_MINUS);
  return { [cell]: text, ...(alone !== before && { [aim]: alone }) };
}

/** A window as "−0.5 ± 0.75" where its aim is its middle; nothing where it is not, or is not whole. */
export function aroundAim(texts: Texts, at: string, angle: string, rim: number | undefined): string {
  const [low, aim, high] = ENDS.map((end) => {
    const text = texts[`${at}.${end}`] ?? '';
    try {
      return text.trim() ? valueIn(text, angle, rim) : undefined;
    } catch {
      return Number.NaN;
    }
  });
  if (low === undefined || high === undefined || !(high > low)) return '';
  const middle = (low + high) / 2;
  const half = (high - low) / 2;
  // As near as the cells of a length tell.
  if (aim !== undefined && !(Math.abs(aim - middle) <= 0.02 * half)) return '';
  if (isToe(angle) && cardUnits().toe !== 'angle' && !rim) return '';
  return `${textOf(angle, tidy(middle), rim)} ± ${textOf(angle, tidy(half), rim)}`;
}

/** The core's value of one cell. @throws InputError */
function valueIn(text: string, angle: string, rim: number | undefined): number {
  const { read, from } = readingOf(text, angle, rim);
  return from(parsePlusMinus(text, read)?.aim ?? read(text));
}

/** The windows that the texts say, unchecked. */
export function axleWindowsOf(texts: Texts, path: string, rims: Rims, before: AxleSpec | undefined): unknown {
  const read = (angle: string, at: string, onFile: Window | undefined) => {
    const ends = ENDS.map((end) => {
      const text = texts[`${at}.${end}`];
      // Another rim diameter makes another angle of the same length.
      const kept = isToe(angle) && rims.now !== rims.before ? undefined : onFile?.[end];
      const show = (value: number): string => textOf(angle, value, rims.now);
      const typed = (one: string | undefined) => typedValue(one, (own) => valueIn(own, angle, rims.now));
      return [end, unlessTyped(text, kept, show, typed)] as const;
    }).filter(([, value]) => value !== undefined);
    return [angle, ends.length > 0 ? Object.fromEntries(ends) : undefined] as const;
  };
  const differ = sidesDiffer(texts, path);
  const axle = [...AXLE_ANGLES, ...AXLE_CHANGES].map((angle) => read(angle, `${path}.${angle}`, before?.[angle]));
  if (!differ) {
    return given([...WHEEL_WINDOWS.map((angle) => read(angle, `${path}.${angle}`, before?.[angle])), ...axle]);
  }
  const sides = SIDES.map((side) => {
    const own = WHEEL_WINDOWS.map((angle) =>
      read(angle, `${path}.${side}.${angle}`, before?.[side]?.[angle] ?? before?.[angle]),
    );
    return [side, given(own)] as const;
  });
  return given([...sides, ...axle]);
}

const given = (entries: readonly (readonly [string, unknown])[]) =>
  Object.fromEntries(entries.filter(([, value]) => value !== undefined));
