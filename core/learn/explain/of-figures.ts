/** Causes that lie with a figure: read, typed or noted otherwise than the gauge showed it; and parts that are not as they were. */
import type { Angle, Corner, Reading } from '../../contract.ts';
import { AXLES, type AxleName } from '../../corners.ts';
import { placeAmong } from '../../plan/states/state-space.ts';
import { CAMBER, CASTER, TOE } from '../../pose/numbers.ts';
import type { Cause } from '../../said.ts';
import type { Compared, Told } from './compared.ts';
import { BENT, IN_READING, WILD } from './guesses.ts';
import type { Story } from './story.ts';

const ANGLES = [
  ['camber', CAMBER],
  ['caster', CASTER],
  ['toe', TOE],
] as const;
const READINGS = ['before', 'after'] as const;
type Which = (typeof READINGS)[number];
type Read = (typeof ANGLES)[number][0];

/** The readings as they were typed: front toe against the line that it was read against, the steering wheel as it stood. */
export type Typed = Readonly<Record<Which, Reading>>;

export function storiesOfFigures(all: readonly Compared[], typed: Typed): readonly Story[] {
  const axles = (['front', 'rear'] as const).flatMap((axle) => swapped(axle, all, typed));
  return [...all.flatMap((one) => ofOne(one, typed)), ...axles];
}

function ofOne(compared: Compared, typed: Typed): readonly Story[] {
  const { corners } = compared.assembly;
  return corners.flatMap((corner) => {
    const figures = ANGLES.flatMap(([angle, number]) => {
      const at = placeAmong(corners, corner, number);
      if (Number.isNaN(compared.after[at]! - compared.before[at]!)) return [];
      return [
        ...READINGS.flatMap((which) => mistyped(compared, corner, angle, at, which, typed)),
        wild(compared, corner, angle, at, typed),
      ];
    });
    return [...figures, bent(compared, corner)];
  });
}

/** By what a hand does to a figure on its way. */
function mistyped(
  compared: Compared,
  corner: Corner,
  angle: Read,
  at: number,
  which: Which,
  typed: Typed,
): readonly Story[] {
  const seen = compared[which][at]!;
  const read = typed[which][corner]?.[angle] ?? seen;
  const tell = (cause: Cause, meant: number, weight = 1): Story => ({
    said: { cause, corner, angle, reading: which, read, meant },
    weight: weight * IN_READING[which],
    told: new Map([[compared, changed(compared, which, [[at, seen + (meant - read)]])]]),
    correction: { of: 'reading', reading: which, values: [{ corner, angle, value: meant }] },
  });
  const digits = transposed(read);
  return [
    ...(Math.abs(read) > 0.02 ? [tell('sign', -read)] : []),
    ...digits.map((meant) => tell('digits', meant, 1 / digits.length)),
    ...(Math.abs(read) > 0.02 ? [tell('decimal', read * 10, 0.5), tell('decimal', read / 10, 0.5)] : []),
  ];
}

/** Figures that two neighbouring digits the other way round make, as decimals or as degrees and minutes. */
function transposed(value: number): readonly number[] {
  const size = Math.abs(value);
  const sign = Math.sign(value);
  const minutes = Math.round(size * 60);
  const isMinutes = Math.abs(size * 60 - minutes) < 1e-6 && Math.abs(size * 100 - Math.round(size * 100)) > 1e-6;
  const digits = isMinutes
    ? `${Math.floor(minutes / 60)}${String(minutes % 60).padStart(2, '0')}`
    : String(Math.round(size * 100)).padStart(3, '0');
  const turned = [...digits.slice(1)].map((_, i) => {
    const list = [...digits];
    [list[i], list[i + 1]] = [list[i + 1]!, list[i]!];
    const text = list.join('');
    const [whole, rest] = [Number(text.slice(0, -2)), Number(text.slice(-2))];
    return sign * (isMinutes ? whole + rest / 60 : whole + rest / 100);
  });
  return [...new Set(turned)].filter((one) => Math.abs(one - value) > 0.02 && Math.abs(one) < 20);
}

function changed(compared: Compared, which: Which, values: readonly (readonly [at: number, value: number])[]): Told {
  const numbers = compared[which].slice();
  for (const [at, value] of values) numbers[at] = value;
  return which === 'before' ? { before: numbers } : { after: numbers };
}

/** A figure that nothing makes plain. */
function wild(compared: Compared, corner: Corner, angle: Read, at: number, typed: Typed): Story {
  const loose = new Float64Array(compared.after.length);
  loose[at] = WILD[angle] ** 2;
  return {
    said: {
      cause: 'misread',
      corner,
      angle,
      reading: 'after',
      read: typed.after[corner]?.[angle] ?? compared.after[at]!,
    },
    weight: 1,
    told: new Map([[compared, { loose }]]),
  };
}

function bent(compared: Compared, corner: Corner): Story {
  const loose = new Float64Array(compared.after.length);
  for (const [angle, number] of ANGLES) loose[placeAmong(compared.assembly.corners, corner, number)] = BENT[angle] ** 2;
  return { said: { cause: 'bent', corner }, weight: 1, told: new Map([[compared, { loose }]]) };
}

/** Left and right noted for one another: one angle, or all. */
function swapped(axle: AxleName, all: readonly Compared[], typed: Typed): readonly Story[] {
  const corners = AXLES[axle];
  const wheels = corners.map((corner) => {
    const compared = all.find(({ assembly }) => assembly.corners.includes(corner))!;
    return { corner, compared, at: (number: number) => placeAmong(compared.assembly.corners, corner, number) };
  });
  const of = (angles: readonly (typeof ANGLES)[number][], which: Which): Story[] => {
    const value = (w: number, number: number): number => wheels[w]!.compared[which][wheels[w]!.at(number)]!;
    const both = angles.filter(([, number]) => !Number.isNaN(value(0, number) - value(1, number)));
    if (both.length < angles.length || both.length === 0) return [];
    const told = new Map<Compared, Told>();
    const shown = (w: number, [angle, number]: (typeof ANGLES)[number]): number =>
      typed[which][wheels[w]!.corner]?.[angle] ?? value(w, number);
    const values = wheels.flatMap(({ corner, compared, at }, w) => {
      const taken = both.map((one) => [at(one[1]), value(w, one[1]) + (shown(1 - w, one) - shown(w, one))] as const);
      const before = told.get(compared)?.[which];
      const next = changed(compared, which, taken);
      if (before) for (const [place, one] of taken) before[place] = one;
      else told.set(compared, next);
      return both.map((one) => ({ corner, angle: one[0] as Angle, value: shown(1 - w, one) }));
    });
    const alone = angles.length === 1 ? { angle: angles[0]![0] } : {};
    return [
      {
        said: { cause: 'swapped', corner: corners[0], reading: which, ...alone },
        weight: IN_READING[which],
        told,
        correction: { of: 'reading', reading: which, values },
      },
    ];
  };
  const measured = ANGLES.filter(([, number]) =>
    wheels.every(({ compared, at }) => !Number.isNaN(compared.after[at(number)]!)),
  );
  return READINGS.flatMap((which) => [
    ...(measured.length > 1 ? of(measured, which) : []),
    ...measured.flatMap((one) => of([one], which)),
  ]);
}
