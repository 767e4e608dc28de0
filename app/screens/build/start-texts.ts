/**
 * A car that nobody measured, as texts of its build card: each axle's usual layout, the adjusters that were picked by their
 * pictures, the windows. All that it makes is what the card itself would have been typed.
 */
import type { Adjuster, AxleName } from '../../../core/contract.ts';
import { startersFor } from '../../../core/starters/catalogue.ts';
import { type Fitment, fitmentsFor } from '../../../core/starters/fitments.ts';
import { type Known, suspensionFromStarter } from '../../../core/starters/starter.ts';
import { tyreOf } from '../../../core/starters/tyre.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import type { Field } from '../../state/fields.ts';
import { AXLES, adjusterTexts, diameterOf } from './car-texts.ts';
import { lengthOf, type Texts } from './numbers.ts';
import { suspensionTexts } from './suspension-texts.ts';
import { typedWindow } from './window-texts.ts';

/** Layouts by their pictures, the commonest first; whatever else there is stands on the card. */
export const LAYOUTS: Readonly<Record<AxleName, readonly string[]>> = {
  front: ['double-wishbone', 'strut', 'beam-front', 'beam-cross-rod'],
  rear: ['five-link', 'double-wishbone', 'strut', 'trailing-arm', 'beam-rear', 'beam-linked'],
};

/** The step that is open; where none is named the card is as it always was. */
export const STEP = '@start';
const layoutPath = (axle: AxleName): string => `@layout.${axle}`;
const fittedPath = (axle: AxleName): string => `@fitted.${axle}`;
/** Between the wheel centres; no field of the card. */
export const TRACK = '@track';

export const layoutOf = (texts: Texts, axle: AxleName): string | undefined => texts[layoutPath(axle)];
export const fittedOn = (texts: Texts, axle: AxleName): readonly string[] =>
  (texts[fittedPath(axle)] ?? '').split(' ').filter(Boolean);

/** What of the size is typed; a text that is none says nothing. */
export function knownOf(texts: Texts): Known {
  const within = (path: string, low: number, high: number): number | undefined => {
    const mm = lengthOf(texts[path]);
    return typeof mm === 'number' && mm >= low && mm <= high ? mm : undefined;
  };
  return {
    wheelbase: within('car.wheelbase', 500, 10_000),
    track: within(TRACK, 600, 3000),
    wheelHeight: tyreOf(texts['car.tyres'] ?? '')?.loadedRadius,
  };
}

/** The layout of one axle as far as the car's size is known. */
function layoutTexts(texts: Texts, axle: AxleName, kind: string): Texts {
  const [starter] = startersFor(kind, axle);
  if (!starter) return {};
  return suspensionTexts(suspensionFromStarter(starter, axle, knownOf(texts)), `car.${axle}.suspension`);
}

/** What stands at an axle once its layout is picked: in the place of all that stood there. */
export const picked = (texts: Texts, axle: AxleName, kind: string): Texts => ({
  ...layoutTexts(texts, axle, kind),
  [layoutPath(axle)]: kind,
  [fittedPath(axle)]: '',
  [`car.${axle}.steered`]: axle === 'front' ? 'yes' : 'no',
});

/** Both layouts anew, once more of the size is known. */
export const resized = (texts: Texts): Texts =>
  Object.assign(
    {},
    ...AXLES.map((axle) => {
      const kind = layoutOf(texts, axle);
      return kind ? layoutTexts(texts, axle, kind) : {};
    }),
  );

/** The adjusters of an axle with one choice more, or without it: in the place of those that stood there. */
export function fitted(texts: Texts, axle: AxleName, one: Fitment): Texts {
  const all = fitmentsFor(layoutOf(texts, axle) ?? '', axle);
  const before = fittedOn(texts, axle);
  const chosen = all.filter(({ id, oneOf }) => {
    if (id === one.id) return !before.includes(id);
    return before.includes(id) && !(oneOf && oneOf === one.oneOf);
  });
  const adjusters: readonly Adjuster[] = chosen.flatMap((fitment) => fitment.adjusters);
  return {
    ...Object.assign({}, ...adjusters.map((adjuster, i) => adjusterTexts(adjuster, `car.${axle}.adjusters[${i}]`))),
    [fittedPath(axle)]: chosen.map(({ id }) => id).join(' '),
  };
}

/** How windows are typed: as the maker prints them. */
export const ENDS = '@ends';
export const columnsOf = (texts: Texts) =>
  texts[ENDS] === 'yes' ? (['low', 'high'] as const) : (['aim', 'half'] as const);
/** Whether it is the total of both wheels that has a window. */
export const TOTAL = '@total';

/** Angles that have a window, in the order in which they are typed. */
export const anglesOf = (texts: Texts, axle: AxleName): readonly ('caster' | 'camber' | 'toe' | 'totalToe')[] => {
  const axis = axle === 'front' && suspensionKinds[layoutOf(texts, axle) ?? '']?.steeringAxis !== undefined;
  return [...(axis ? (['caster'] as const) : []), 'camber', texts[TOTAL] === 'yes' ? 'totalToe' : 'toe'];
};

/** A cell of the windows, as the keypad goes through them; kept among the texts under its own name. */
export interface WindowCell extends Field {
  readonly where: AxleName;
  readonly column: 'aim' | 'half' | 'low' | 'high';
}
const CELL = '@cell.';
const cellOf = (column: WindowCell['column'], where: AxleName, angle: WindowCell['angle']): WindowCell => ({
  ...{ id: `${CELL}${column}.${where}.${angle}`, where, angle, column },
});
export const cellsOf = (texts: Texts): readonly WindowCell[] =>
  AXLES.flatMap((axle) =>
    anglesOf(texts, axle).flatMap((angle) => columnsOf(texts).map((column) => cellOf(column, axle, angle))),
  );

/** The windows that the cells say, as the card has them; what was in a cell that is no longer asked is not in them. */
export function windowsIn(texts: Texts): Texts {
  const said: Record<string, string> = {};
  for (const axle of AXLES) {
    for (const angle of ['caster', 'camber', 'toe', 'totalToe'] as const) {
      const at = `spec.${axle}.${angle}`;
      const asked = anglesOf(texts, axle).includes(angle);
      const cell = (column: WindowCell['column']) =>
        asked ? (texts[cellOf(column, axle, angle).id] ?? '').trim() : '';
      const [aim, half] = [cell('aim'), cell('half').replace(/^[−-]/, '')];
      Object.assign(said, { [`${at}.low`]: '', [`${at}.aim`]: '', [`${at}.high`]: '' });
      if (texts[ENDS] === 'yes') Object.assign(said, { [`${at}.low`]: cell('low'), [`${at}.high`]: cell('high') });
      else if (aim && half)
        Object.assign(said, typedWindow(texts, at, `${at}.aim`, `${aim} ± ${half}`, angle, diameterOf(texts)));
      else said[`${at}.aim`] = aim;
    }
  }
  return said;
}
