import type { Instrument, Scatter } from '../../../core/measure/instruments.ts';
import { repeatability } from '../../../core/measure/repeats.ts';
import { DEFAULT_GAUGE } from '../../../core/reading/gauge.ts';
import { BENCH } from '../../../core/records/preferences.ts';
import { aboutLength, figure, fixed, partAngle } from '../../../core/units/shop.ts';
import { RepeatDrawing } from '../../parts/drawings/bench/repeat.tsx';
import { setScatter } from '../../state/bench.ts';
import { gauge, setGauge } from '../../state/preferences.ts';
import { type Ask, type At, behind, type Tool } from './tool.ts';

const RACK = ['camber', 'caster', 'toe'] as const;
type Tried = Instrument | `rack ${(typeof RACK)[number]}`;
const NAMES: readonly (readonly [Tried, string])[] = [
  ['tape', 'Tape across'],
  ['rule', 'Rule to a string'],
  ['level', 'Level, camber gauge'],
  ['plate', 'Turn plate'],
  ['slip', 'Slip plate'],
  ['rack camber', 'Rack: camber'],
  ['rack caster', 'Rack: caster'],
  ['rack toe', 'Rack: toe'],
];

const chosen = (at: At): Tried => NAMES.find(([one]) => one === at.texts.of)?.[0] ?? 'tape';
const unitOf = (of: Tried): 'mm' | 'degrees' | 'm/km' => (of in BENCH ? BENCH[of as Instrument].unit : 'degrees');
const kindOf = (of: Tried): Ask['is'] =>
  unitOf(of) === 'mm' ? 'length' : unitOf(of) === 'degrees' ? 'angle' : 'number';
/** No more fit a steady hand; a thing of two readings is one already. */
const [THINGS, READINGS] = [3, 6];

const asked = (at: At, thing: number): readonly Ask[] => {
  const of = chosen(at);
  const all = Array.from({ length: READINGS }, (_, i) => ({
    ...{
      id: `${of}.${thing}.${i}`,
      label: String(i + 1),
      is: kindOf(of),
      ...(kindOf(of) !== 'length' && { signed: true as const }),
    },
  }));
  // One more than there are.
  const there = all.filter(({ id }) => at.texts[id]).length;
  return all.slice(0, Math.max(2, Math.min(READINGS, there + 1)));
};
const readingsOf = (at: At, thing: number): number[] => asked(at, thing).flatMap((one) => at.read(one) ?? []);

function scatterText(at: At, sd: number): string {
  const unit = unitOf(chosen(at));
  if (unit === 'mm') return aboutLength(sd, 2, at.units);
  return unit === 'degrees' ? partAngle(Number(sd.toFixed(3)), at.units) : `${fixed(sd, 2, at.units)} m/km`;
}

const usedNow = (at: At): number => {
  const of = chosen(at);
  const [, angle] = of.split(' ') as [string, (typeof RACK)[number] | undefined];
  return angle ? (gauge.value ?? DEFAULT_GAUGE)[angle] : at.scatter[of as keyof Scatter];
};

function use(of: Tried, sd: number): void {
  const [, angle] = of.split(' ') as [string, (typeof RACK)[number] | undefined];
  if (angle) setGauge({ ...(gauge.value ?? DEFAULT_GAUGE), [angle]: sd });
  else setScatter(of as Instrument, sd);
}

export const repeat: Tool = {
  id: 'repeat',
  title: 'How well it repeats',
  Drawing: RepeatDrawing,
  before: [
    'The gauge off and on again for every reading',
    'Nothing on the car is moved',
    'Read as closely as it shows',
  ],
  steps: (at) => [
    { says: 'Which gauge', pick: { id: 'of', legend: 'Which gauge', of: NAMES } },
    ...Array.from({ length: THINGS }, (_, thing) => ({
      optional: thing > 0 || readingsOf(at, 0).length > 1,
      says: thing === 0 ? 'The same thing again and again' : 'Another thing, if you like',
      asks: chunks(asked(at, thing), 2),
    })).filter((_, thing) => thing === 0 || readingsOf(at, thing - 1).length > 1),
  ],
  work: (at) => {
    const things = Array.from({ length: THINGS }, (_, thing) => readingsOf(at, thing)).filter(
      ({ length }) => length > 1,
    );
    if (things.length === 0) return undefined;
    const of = chosen(at);
    const most = of in BENCH ? BENCH[of as Instrument].most : 5;
    const { sd, freedom, share } = behind('', () => repeatability(things, most));
    return {
      lines: [
        { label: 'Scatter of one reading', text: scatterText(at, sd), large: true },
        {
          label: 'Known to within',
          text: `${figure(Math.round(100 * share), at.units)} % of it, from ${freedom} differences`,
        },
        { label: 'In use until now', text: scatterText(at, usedNow(at)) },
      ],
      says: [
        'It is what stands behind the ± of every tool and the chance of every plan. Five readings or more tell it well.',
      ],
      ...(sd > 0 && { action: { label: 'Use it from now on', onPress: () => use(of, Number(sd.toPrecision(3))) } }),
    };
  },
};

const chunks = <T,>(all: readonly T[], size: number): readonly (readonly T[])[] =>
  all.length <= size ? [all] : [all.slice(0, size), ...chunks(all.slice(size), size)];
