/** Every tool of the bench: what it makes of figures, what it says to nonsense, and how it writes to an inch shop. */
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { InputError } from '../../core/input-error.ts';
import { USUAL_SCATTER } from '../../core/measure/instruments.ts';
import { markup } from '../parts/markup.ts';

const page = { documentElement: { dataset: {} }, addEventListener: () => undefined };
vi.stubGlobal('document', page);
vi.stubGlobal('addEventListener', page.addEventListener);
vi.stubGlobal('location', { hash: '' });
vi.mock('../../app/engine/index.ts', () => ({
  engine: { call: () => new Promise(() => undefined) },
  warmUp: () => undefined,
}));
const { At } = await import('../../app/screens/bench/tool.ts');
const { words } = await import('../../app/state/words.ts');
const { h } = await import('preact');

type Tool = import('../../app/screens/bench/tool.ts').Tool;
type Texts = import('../../app/screens/bench/tool.ts').Texts;

const MM = { length: 'mm', angle: 'degrees', decimal: '.' } as const;
const INCH = { length: 'inch', angle: 'degrees-minutes', decimal: ',' } as const;

const ROUND = Array.from({ length: 30 }, (_, i) => (1.2 + 0.02 * (i % 3)).toFixed(2)).join(' ');
/** A tool, figures in mm and degrees, and what its first line then says. */
const CASES: readonly (readonly [file: string, name: string, texts: Texts, line: string, text: string])[] = [
  // Rotation about an axis of caster 4, SAI 12 (published): camber at ±20° 1.6085 and −1.1339.
  ['sweep', 'sweep', end('1.6085', '-1.1339', { 'LF.sai': '12' }), 'LF caster', '4.00°'],
  // Toyota Supra 1997: 3 mm at an implied 573 mm is 18′.
  [
    'across',
    'across',
    { 'front.front': '1500', 'front.rear': '1503', 'front.diameter': '573' },
    'Front total toe',
    '0.30°',
  ],
  [
    'strings',
    'strings',
    { set: 'parallel', 'wheels.LF.ahead': '102', 'wheels.LF.behind': '100', diameter: '400' },
    'LF toe',
    '0.29°',
  ],
  [
    'rough',
    'rough',
    { front: '1520', rear: '1500', diameter: '600', lead: '1.5', arm: '99.9' },
    'LF rod',
    '1 turn ½ flat longer',
  ],
  ['camber', 'camber', { 'LF.above': '100', 'LF.below': '96', diameter: '400' }, 'LF camber', '−0.57°'],
  ['phone', 'phone', { 'LF.first': ROUND, 'LF.second': ROUND.replaceAll('1.', '-1.') }, 'LF camber', '1.22°'],
  ['repeat', 'repeat', { of: 'tape', 'tape.0.0': '10', 'tape.0.1': '12' }, 'Scatter of one reading', '1.41 mm'],
  ['run-out', 'runOut', { count: '2', 'LF.camber.1': '-0.5', 'LF.camber.3': '-0.9' }, 'LF camber without it', '−0.70°'],
  [
    'axle',
    'axle',
    { what: 'caster', 'frame.front': '400', 'frame.rear': '435', 'frame.between': '1000', 'LF.measured': '1' },
    'Frame, + front end down',
    '2.00°',
  ],
  ['axle', 'axle', { what: 'aside', 'gap.left': '104', 'gap.right': '96' }, 'Axle to the left of the middle', '4.0 mm'],
  [
    'axle',
    'axle',
    { what: 'pinion', 'pinion.first': '3.4', 'pinion.second': '-3' },
    'Pinion angle, + nose up',
    '3.20°',
  ],
  // US Army TM 5-4210-230-14&P-1, p. 185: specified +1°, frame 1° down in front: 0° is to be measured.
  [
    'axle',
    'axle',
    { what: 'caster', frame: 'level', 'frame.first': '1.2', 'frame.second': '-0.8', specified: '1' },
    'What the rack has to read on this frame',
    '0.00°',
  ],
  [
    'heights',
    'heights',
    { 'measured.LF': '350', 'measured.RF': '358', 'wanted.LF': '362', 'wanted.RF': '362' },
    'Front has to go up',
    '8.0 mm',
  ],
  // 1 m/km is 3.438′ (published).
  ['slip', 'slip', { slip: '1' }, 'Total toe', '0.06°'],
  ['slip', 'slip', { way: 'slip', toe: '1' }, 'Side slip', '17.5 m/km'],
  [
    'bent',
    'bent',
    { 'LF.camber': '1.8', 'RF.camber': '0', 'LF.sai': '10', 'RF.sai': '12' },
    'LF included angle',
    '11.80°',
  ],
];

function end(out: string, back: string, more: Texts): Texts {
  const at = { 'LF.first.turned': '20', 'LF.second.turned': '20' };
  return { ...at, 'LF.first.camber': out, 'LF.second.camber': back, ...more };
}

const MODULES = import.meta.glob<Record<string, Tool>>('../../app/screens/bench/*.tsx');
const tools = new Map<string, Tool>();
beforeAll(async () => {
  for (const [file, name] of CASES) {
    const module = await MODULES[`../../app/screens/bench/${file}.tsx`]!();
    tools.set(name, module[name]!);
  }
});
const at = (texts: Texts, units: typeof MM | typeof INCH = MM) =>
  new At(texts, units, USUAL_SCATTER, undefined, () => undefined);

it('all of them are here', async () => {
  const { GROUPS } = await import('../../app/screens/bench/tools.ts');
  const ids = GROUPS.flatMap(([, list]) => list.map(({ id }) => id));
  expect(new Set([...tools.values()].map(({ id }) => id))).toEqual(new Set(ids));
});

describe.each(CASES)('%s', (_, name, texts, label, text) => {
  const tool = () => tools.get(name)!;
  it(`says ${label}: ${text}`, () => {
    const outcome = tool().work(at(texts))!;
    expect(outcome.lines).toContainEqual(expect.objectContaining({ label, text }));
  });

  it('asks for nothing more than figures, and says nothing before they are there', () => {
    expect(tool().work(at({}))).toBeUndefined();
    expect(tool().steps(at({})).length).toBeGreaterThan(0);
  });

  it('has a drawing with a title', () => {
    const drawn = markup(h(tool().Drawing as never, { at: at(texts) } as never));
    expect(drawn).toMatch(/<title>.{20,}<\/title>/);
    expect(drawn).not.toMatch(/NaN|undefined/);
  });

  it('refuses nonsense in words, and never breaks', () => {
    const asked = tool()
      .steps(at(texts))
      .flatMap(({ asks = [] }) => asks.flat());
    let refusals = 0;
    for (const key of [...asked.map(({ id }) => id), ...Object.keys(texts)]) {
      for (const bad of ['-5000', '0', '99999', 'x', '1..2', 'NaN', '1e9', '−0', '9'.repeat(40)]) {
        try {
          const outcome = tool().work(at({ ...texts, [key]: bad }));
          for (const line of outcome?.lines ?? [])
            expect(`${line.text}${line.off ?? ''}`).not.toMatch(/NaN|Infinity|undefined/);
        } catch (error) {
          if (!(error instanceof InputError)) throw error;
          refusals += 1;
          const said = words.refusal({ value: error.value, rule: error.rule }, undefined, MM);
          expect(said).toMatch(/^[A-Z“0-9].*\.$/);
        }
      }
    }
    expect(refusals).toBeGreaterThan(0);
  });

  it('names the field that will not do, where it is one that is asked', () => {
    const asked = tool()
      .steps(at(texts))
      .flatMap(({ asks = [] }) => asks.flat());
    for (const { id } of asked) {
      try {
        tool().work(at({ ...texts, [id]: 'x' }));
      } catch (error) {
        expect((error as InputError).field).toBe(id);
      }
    }
  });

  it('speaks to an inch shop in its own units', () => {
    const length = (mm: string) => String(Number(mm) / 25.4).replace('.', ',');
    const asked = tool()
      .steps(at(texts))
      .flatMap(({ asks = [] }) => asks.flat());
    const own = Object.fromEntries(
      Object.entries(texts).map(([key, value]) => {
        const isLength = asked.find(({ id }) => id === key)?.is === 'length';
        return [key, isLength ? length(value) : value];
      }),
    );
    const { lines, says = [] } = tool().work(at(own, INCH))!;
    const told = [...lines.flatMap((one) => [one.label, one.text, one.off ?? '']), ...says];
    expect(told.filter((one) => /\bmm\b(?!\/m)|\d\.\d|\d,\d+\s?°/.test(one))).toEqual([]);
  });
});

it('a side of strings that stand anyhow waits for both its wheels', () => {
  const one = { diameter: '400', 'track.front': '1500', 'track.rear': '1490', 'wheelbase.left': '2600' };
  const LF = { 'wheels.LF.ahead': '102', 'wheels.LF.behind': '100' };
  const strings = tools.get('strings')!;
  expect(strings.work(at({ ...one, ...LF }))).toBeUndefined();
  const both = strings.work(at({ ...one, ...LF, 'wheels.LR.ahead': '110', 'wheels.LR.behind': '109' }))!;
  expect(both.hands!.map(({ where }) => where)).toEqual(['LF', 'LR']);
});

it('a rough first toe says at its result too what it is for, and hands the toe that it found', () => {
  const { says, hands } = tools.get('rough')!.work(at(CASES.find(([file]) => file === 'rough')![2]))!;
  expect(says![0]).toContain('For the drive to a rack and no further');
  expect(hands).toEqual([expect.objectContaining({ where: 'front', angle: 'totalToe', by: 'tape' })]);
});

it('draws the rods on the side of the axle where they are', () => {
  const { Drawing } = tools.get('rough')!;
  const drawn = (rods: string) => markup(h(Drawing as never, { at: at({ rods }) } as never));
  expect(drawn('behind')).toContain('behind the axle');
  expect(drawn('ahead')).toContain('ahead of the axle');
});

it('the thrust angle has the sign that the shop shows it with (Mercury 2004 + to the right, Subaru Impreza 2003 −)', async () => {
  const { keep, records } = await import('../../app/state/records.ts');
  const { valueText } = await import('../../app/state/units.ts');
  const rear = {
    'wheels.LR.ahead': '102',
    'wheels.LR.behind': '100',
    'wheels.RR.ahead': '100',
    'wheels.RR.behind': '100',
  };
  const shown = () => {
    const { lines } = tools.get('strings')!.work(at({ set: 'parallel', diameter: '400', ...rear }))!;
    return lines.find(({ label }) => label.startsWith('Thrust'));
  };
  expect(shown()).toMatchObject({ label: 'Thrust angle, + points to the right', text: '0.14°' });
  expect(valueText('thrustAngle', 0.14, undefined)).not.toContain('−');
  const before = records.value;
  void keep(['preferences', { id: 'units', value: { thrust: 'right-minus' }, changed: '2026-01-01' }]);
  expect(shown()).toMatchObject({ label: 'Thrust angle, − points to the right', text: '−0.14°' });
  expect(valueText('thrustAngle', 0.14, undefined)).toContain('−');
  records.value = before;
});

describe('the step under way', () => {
  const statesAt = async (texts: Texts) => {
    const { statesOf } = await import('../../app/screens/bench/guide.ts');
    const sweep = tools.get('sweep')!;
    return statesOf(texts, sweep.steps(at(texts)), sweep.work(at(texts)) !== undefined);
  };
  it('is the first that lacks a figure, and then the result', async () => {
    expect(await statesAt({})).toEqual({ steps: ['done', 'done', 'live', 'later', 'later'], result: 'later' });
    const out = { 'LF.first.turned': '20', 'LF.first.camber': '1.6' };
    expect((await statesAt(out)).steps).toEqual(['done', 'done', 'done', 'live', 'later']);
    expect(await statesAt({ ...out, 'LF.second.turned': '18', 'LF.second.camber': '-1' })).toEqual({
      ...{ steps: ['done', 'done', 'done', 'done', 'done'], result: 'live' },
    });
  });
});

it('a diameter in the wrong unit is told what it would be', () => {
  const across = tools.get('across')!;
  const refused = (texts: Texts, units: typeof MM | typeof INCH) => {
    try {
      across.work(at({ 'front.front': '1500', 'front.rear': '1503', ...texts }, units));
    } catch (error) {
      const { value, rule } = error as InputError;
      return words.refusal({ value, rule }, undefined, units);
    }
    return 'taken';
  };
  expect(refused({ 'front.diameter': '17' }, MM)).toBe(
    'Not “17” but a number from 100 to 2000 mm; 17 in would be 431.8 mm.',
  );
  expect(refused({ 'front.front': '59', 'front.rear': '59,1', 'front.diameter': '380' }, INCH)).toContain(
    '380 mm would be 14,961 in',
  );
});

it('marks the minutes of what a ride height brings', async () => {
  const { GainTable } = await import('../../app/screens/bench/heights.tsx');
  const { records } = await import('../../app/state/records.ts');
  const told = { pitch: 0.2, wheelbase: 2600, usualWheelbase: false, corners: { LF: { camber: -0.35, toe: 0.1 } } };
  const inShop = (value: object) => {
    records.value = { ...records.value, preferences: [{ id: 'units', value, changed: '2026-01-01' }] };
    return markup(h(GainTable, { told }));
  };
  expect(inShop(INCH)).toContain('>−0°21′<');
  expect(inShop(MM)).toContain('>−0.35<');
  records.value = { ...records.value, preferences: [] };
});
