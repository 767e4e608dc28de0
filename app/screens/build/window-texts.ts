/** The windows of one axle as texts and back. Left and right have windows of their own where the card says so. */
import type { AxleSpec, WheelSpec, Window } from '../../../core/contract.ts';
import { AXLE_ANGLES, AXLE_CHANGES } from '../../../core/contract.ts';
import {
  angleOf,
  exactAngle,
  lengthOf,
  lengthText,
  type Texts,
  toeWindowOf,
  toeWindowText,
  typedValue,
  unlessTyped,
} from './numbers.ts';

export const WHEEL_WINDOWS = ['caster', 'camber', 'toe'] as const satisfies readonly (keyof WheelSpec)[];
export const SIDES = ['left', 'right'] as const;
export const ENDS = ['low', 'aim', 'high'] as const;

const isToe = (angle: string): boolean => angle === 'toe' || angle === 'totalToe';
export const sidesDiffer = (texts: Texts, path: string): boolean => texts[`${path}.sides`] === 'differ';

export function axleWindowTexts(spec: AxleSpec | undefined, path: string, rim: number): Texts {
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

const textOf = (angle: string, value: number, rim: number): string =>
  isToe(angle) ? toeWindowText(value, rim) : angle === 'lateralChange' ? lengthText(value) : exactAngle(value);

function oneWindow(window: Window | undefined, angle: string, path: string, rim: number): Texts {
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

interface Rims {
  /** mm, as the card says now; 0 where it does not say. */
  readonly now: number;
  /** As on file. */
  readonly before: number | undefined;
}

/** The windows that the texts say, unchecked. */
export function axleWindowsOf(texts: Texts, path: string, rims: Rims, before: AxleSpec | undefined): unknown {
  const read = (angle: string, at: string, onFile: Window | undefined) => {
    const ends = ENDS.map((end) => {
      const text = texts[`${at}.${end}`];
      const toe = isToe(angle);
      // Another rim diameter makes another angle of the same length.
      const kept = toe && rims.now !== rims.before ? undefined : onFile?.[end];
      const show = (value: number): string => textOf(angle, value, rims.now);
      const typed = (one: string | undefined) => {
        if (toe) return typedValue(one, (length) => toeWindowOf(length, rims.now));
        return angle === 'lateralChange' ? lengthOf(one) : angleOf(one);
      };
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
