/** What a form asks and refuses, kind by kind: the unit that each figure is in, and where it begins. */
import { safeParse } from 'valibot';
import { describe, expect, it } from 'vitest';
import { adjusterKinds } from '../../../core/adjuster/catalogue.ts';
import { ruleIn } from '../../../core/adjuster/rule-text.ts';
import { wholeAdjuster } from '../../../core/adjuster/whole.ts';
import { adjusterPositions } from '../../../core/index.ts';

/** Figures far beyond any that is allowed, and the unit that the refusal must speak in. */
const UNITS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'shim-pack': { max: 'mm', reference: 'mm', 'pair.most': 'mm' },
  slide: { step: 'mm', range: 'mm', reference: 'mm' },
  'eccentric-cam': { eccentricity: 'mm', stepMarks: 'marks', range: 'degrees', reference: 'degrees' },
  'threaded-rod': {
    ...{ lead: 'mm a turn', stepTurns: 'turns', range: 'turns', reference: 'turns' },
    ...{ engaged: 'turns', leastEngaged: 'turns', length: 'mm', maxSideDifference: 'mm' },
  },
  'clamp-bolt': { step: 'degrees', range: 'degrees', reference: 'degrees', eccentricity: 'mm', spacing: 'mm' },
  'offset-sleeve': { degrees: 'degrees', reference: 'degrees' },
  'wedge-shim': { 'degrees.0': 'degrees' },
  'axle-wedge': { 'degrees.0': 'degrees', reference: 'degrees' },
  'effect-table': {
    range: 'steps',
    'perStep.camber': 'degrees',
    'perStep.caster': 'degrees',
    'perStep.toe': 'degrees',
  },
};
const HUGE = 1e6;

function refused(kind: string, path: string): { readonly unit?: string } | undefined {
  const [root, rest] = path.split('.') as [string, string?];
  const values: Readonly<Record<string, unknown>> = {
    range: [-HUGE, HUGE],
    degrees: [HUGE],
    pair: { with: 'a', most: HUGE },
  };
  const value =
    root === 'perStep' ? { [rest!]: HUGE } : (rest || root === 'range') && values[root] ? values[root] : HUGE;
  const { issues = [] } = safeParse(adjusterKinds[kind]!.schema, { [root]: value });
  const issue = issues.find((one) =>
    one.path
      ?.map(({ key }) => key)
      .join('.')
      .startsWith(path),
  );
  return issue && (ruleIn(issue.message) as { readonly unit?: string });
}

describe.each(Object.entries(UNITS))('%s', (kind, fields) => {
  it.each(Object.entries(fields))('%s is refused in the unit that it is typed in, %s', (path, unit) => {
    expect(refused(kind, path)?.unit).toBe(unit);
  });
});

/** The units that the form writes beside its own figures; lengths are in the user's. */
const ASKED: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'eccentric-cam': { marks: '', range: 'degrees', reference: 'degrees' },
  'clamp-bolt': { step: 'degrees', range: 'degrees', reference: 'degrees' },
  'effect-table': {
    'perStep.caster': 'degrees',
    'perStep.camber': 'degrees',
    'perStep.toe': 'degrees',
    range: 'steps',
  },
  'threaded-rod': { range: 'turns', reference: 'turns', engaged: 'turns', leastEngaged: 'turns' },
};

it.each(Object.entries(ASKED))('the form of a %s says the unit of each of its figures', (kind, units) => {
  const asked = adjusterKinds[kind]!.fields.filter(({ name }) => name in units);
  const said = asked.map(({ name, ask }) => [name, 'unit' in ask ? ask.unit : undefined]);
  expect(Object.fromEntries(said)).toEqual(units);
});

/** What is left to type, where the form begins with something usable for the rest. */
const TYPED: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  'shim-pack': { at: 'upperFront', sizes: [1.5, 3], max: 12 },
  slide: { at: 'strutTop' },
  'eccentric-cam': { at: 'inner1', eccentricity: 4 },
  'threaded-rod': { links: ['tieInner'], lead: 1.5 },
  'clamp-bolt': {},
};

it.each(Object.entries(TYPED))(
  'a %s needs no more than is its own: the rest begins with what most have',
  (kind, own) => {
    const whole = wholeAdjuster({ ...adjusterKinds[kind]!.start, ...own, id: 'one', kind });
    expect(whole).toBeDefined();
    const positions = adjusterPositions(whole!);
    expect(positions.length).toBeGreaterThan(4);
    expect(positions).toContain(whole!.reference);
  },
);

it('what is further than an adjuster can go is there for all that end and could be longer', () => {
  const further = Object.entries(TYPED).flatMap(([kind, own]) => {
    const whole = wholeAdjuster({ ...adjusterKinds[kind]!.start, ...own, id: 'one', kind })!;
    return (adjusterKinds[kind]!.extension?.beyond?.(whole, 1) ?? []).length > 0 ? [kind] : [];
  });
  // A cam has no beyond: its point is moved beside it.
  expect(further.sort()).toEqual(['clamp-bolt', 'shim-pack', 'slide', 'threaded-rod']);
});

it('beyond the end of a bolt that is tilted by fine steps nothing finer than a tenth of a degree is offered', () => {
  const { start, extension } = adjusterKinds['clamp-bolt']!;
  const steps = (step: number): number[] => {
    const bolt = wholeAdjuster({ ...start, step, id: 'bolt', kind: 'clamp-bolt' })!;
    return extension!.beyond!(bolt, 1).map(({ by }) => by);
  };
  expect(steps(0.01)[0]).toBeCloseTo(0.1, 9);
  expect(steps(0.5)[0]).toBeCloseTo(0.5, 9);
});

it('a chart that is printed is planned from where it is known to stand, steps by count from anywhere', () => {
  const even = adjusterKinds['effect-table']!.even!;
  expect(even({ id: 'a', kind: 'effect-table', reference: 0, perStep: { camber: 0.1 } })).toBe(true);
  expect(even({ id: 'a', kind: 'effect-table', reference: 'A', positions: [{ label: 'A' }] })).toBe(false);
});

it('every way of saying what a choice means is said in words', () => {
  for (const { fields } of Object.values(adjusterKinds)) {
    for (const { ask } of fields) {
      if (ask.as !== 'choice') continue;
      for (const [value, label] of ask.choices) {
        expect(value).not.toBe('');
        expect(label).toMatch(/\w/);
      }
    }
  }
  const zero = adjusterKinds['eccentric-cam']!.fields.find(({ name }) => name === 'zero')!.ask;
  expect(zero.as === 'choice' && zero.choices.map(([value]) => value).sort()).toEqual(['end', 'middle']);
});

it('the tables of a numbered cam and of a chart ask for a label and for three figures', () => {
  const columns = (kind: string) => {
    const { ask } = adjusterKinds[kind]!.fields.find(({ name }) => name === 'positions')!;
    return ask.as === 'table' ? ask.columns.map(({ name, as }) => [name, as]) : [];
  };
  const lengths = [0, 1, 2].map((i) => [`offset.${i}`, 'length']);
  expect(columns('indexed-cam')).toEqual([['label', 'label'], ...lengths]);
  const angles = ['caster', 'camber', 'toe'].map((angle) => [angle, 'degrees']);
  expect(columns('effect-table')).toEqual([['label', 'label'], ...angles]);
});
