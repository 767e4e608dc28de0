import * as v from 'valibot';
import type { Adjuster, Position, Suspension } from '../contract.ts';
import { numberField, optional, rangeField } from './ask.ts';
import { base, number, range, several, stamped } from './fields.ts';
import type { AdjusterKind } from './kind.ts';
import { ruleText } from './rule-text.ts';
import { multiples, within } from './steps.ts';

const ANGLE = number(-45, 45, 'degrees');
const angles = { camber: v.optional(ANGLE, 0), caster: v.optional(ANGLE, 0), toe: v.optional(ANGLE, 0) };

/** Either the printed table, label by label, or so many degrees a step over a range of steps. */
const schema = v.pipe(
  v.object({
    ...base('effect-table'),
    positions: v.optional(
      v.pipe(
        several(v.object({ label: stamped, ...angles }), 400, 'chart-positions'),
        v.check(
          (list) => new Set(list.map((p) => String(p.label))).size === list.length,
          ruleText({ is: 'labels-differ' }),
        ),
        v.readonly(),
      ),
    ),
    perStep: v.optional(
      v.object(angles, ruleText({ is: 'object', fields: ['camber', 'caster', 'toe'], in: 'a-step' })),
    ),
    range: v.optional(range(1000, 'steps')),
    reference: v.union([v.pipe(v.number(), v.finite()), stamped], ruleText({ is: 'chart-position' })),
  }),
  v.check(
    (table) => (table.positions === undefined) !== (table.perStep === undefined),
    ruleText({ is: 'chart-or-steps' }),
  ),
  v.forward(
    v.check(
      (table) => table.perStep === undefined || table.range !== undefined,
      ruleText({ is: 'range', unit: 'steps' }),
    ),
    ['range'],
  ),
);
/** The two ways of knowing what it does. */
const PRINTED = 'a printed chart';
const BY_STEP = 'so many degrees a step';
type EffectTable = v.InferOutput<typeof schema>;
type Row = NonNullable<EffectTable['positions']>[number];

const rowAt = (table: EffectTable, position: Position): Row | undefined =>
  table.positions?.find(({ label }) => String(label) === String(position));
const reach = (table: EffectTable): readonly [number, number] => table.range ?? [0, 0];

const CHARTED = ['camber', 'caster', 'toe'] as const;
type Charted = (typeof CHARTED)[number];
/** Degrees: what changes less is set no more exactly than that. Trade practice, no source, as the share is. */
const LEAST_CHANGE = 0.3;

const NO_GEOMETRY: Suspension = { kind: 'unknown', points: {}, camber: 0, toe: 0 };

const changeOf = (table: Adjuster, from: Position, to: Position): Readonly<Record<Charted, number>> => {
  const [a, b] = [from, to].map((position) => effectTable.effect(table, position, NO_GEOMETRY).add);
  const change = (angle: Charted): number => (b?.[angle] ?? 0) - (a?.[angle] ?? 0);
  return { camber: change('camber'), caster: change('caster'), toe: change('toe') };
};

const largestOf = (change: Readonly<Record<Charted, number>>): number =>
  Math.max(LEAST_CHANGE, ...CHARTED.map((angle) => Math.abs(change[angle])));

/** The angle that it is there for: the one that it changes most, over all of its positions. */
function mainOf({ perStep, positions = [] }: EffectTable): Charted {
  const span = (angle: Charted): number => {
    const all = positions.map((row) => row[angle] ?? 0);
    return perStep ? Math.abs(perStep[angle] ?? 0) : Math.max(...all) - Math.min(...all);
  };
  return CHARTED.reduce((most, angle) => (span(angle) > span(most) ? angle : most));
}

/** A row with each angle off by a share of its own and by one of the main angle. */
function offBy<T extends Partial<Record<Charted, number>>>(row: T, main: Charted, by: readonly number[]): T {
  const off = CHARTED.map((angle, i) => [
    angle,
    (row[angle] ?? 0) * (1 + by[i]!) + (row[main] ?? 0) * by[CHARTED.length + i]!,
  ]);
  return { ...row, ...Object.fromEntries(off) };
}

const only = (angle: Charted, off: number) => ({ add: { camber: 0, caster: 0, toe: 0, [angle]: off } });

/** The chart that came with a kit: the angles of a position are added as printed. What they do to each other is unknown. */
export const effectTable: AdjusterKind = {
  kind: 'effect-table',
  name: 'By the printed chart',
  schema,
  touches: () => ({}),
  positions: (given) => {
    const table = given as EffectTable;
    return table.positions?.map(({ label }) => label) ?? multiples(1, ...reach(table));
  },
  allowed: (given) => {
    const table = given as EffectTable;
    if (table.positions) return { is: 'one-of', of: table.positions.map(({ label }) => label) };
    const [low, high] = reach(table);
    return { is: 'place', on: 'steps', low, high };
  },
  accepts: (given, position) => {
    const table = given as EffectTable;
    return table.positions ? rowAt(table, position) !== undefined : within(position, ...reach(table));
  },
  effect: (given, position) => {
    const table = given as EffectTable;
    if (table.positions) {
      const { camber = 0, caster = 0, toe = 0 } = rowAt(table, position) ?? {};
      return { add: { camber, caster, toe } };
    }
    const { camber = 0, caster = 0, toe = 0 } = table.perStep ?? {};
    const n = position as number;
    return { add: { camber: camber * n, caster: caster * n, toe: toe * n } };
  },
  byChart: true,
  even: ({ perStep }) => perStep !== undefined,
  act: (given, from, to) => {
    if ((given as EffectTable).positions) return { act: 'go-to-chart-position', from, to };
    const [a, b] = [from as number, to as number];
    return { act: 'go-steps', by: b - a, from: a, to: b };
  },
  place: (given, position) =>
    (given as EffectTable).positions ? { as: 'chart', label: position } : { as: 'steps', steps: position as number },
  step: (given) => {
    const all = effectTable.positions(given);
    const i = all.findIndex((position) => String(position) === String(given.reference));
    const from = given.reference;
    const to = all[i + 1] ?? all[i - 1] ?? from;
    return { from, to, said: { step: 'to', from: { as: 'label', label: from }, to: { as: 'label', label: to } } };
  },
  fields: [
    {
      name: 'positions',
      label: 'The printed chart',
      hint: 'row by row, what each position adds',
      way: PRINTED,
      ask: {
        as: 'table',
        columns: [
          { name: 'label', label: 'position', as: 'label' },
          { name: 'caster', label: 'caster', as: 'degrees' },
          { name: 'camber', label: 'camber', as: 'degrees' },
          { name: 'toe', label: 'toe', as: 'degrees' },
        ],
      },
    },
    { ...optional(numberField('perStep.caster', 'One step up: caster', 'degrees')), way: BY_STEP },
    { ...optional(numberField('perStep.camber', 'One step up: camber', 'degrees')), way: BY_STEP },
    { ...optional(numberField('perStep.toe', 'One step up: toe', 'degrees')), way: BY_STEP },
    { ...rangeField('Steps that it has', 'steps'), way: BY_STEP },
    { name: 'reference', label: 'Position that the angles count from', ask: { as: 'position' } },
  ],
  start: {},
  sample: {
    adjuster: {
      reference: 'A',
      positions: ['A', 'B', 'C', 'D'].map((label, i) => ({ label, caster: i / 2, camber: -i / 4, toe: 0 })),
    },
    from: 'B',
    to: 'D',
  },
  tolerance: {
    usual: 20,
    unit: '% of the change',
    // A chart is of another car of the kind: each of its angles is off by its own share, and by as large a share of the
    // largest, whether the chart names it or not. So a chart is no surer than a car whose points a tape has given.
    error: (table, from, to, by) => {
      const change = changeOf(table, from, to);
      const largest = largestOf(change);
      return CHARTED.map((angle) => only(angle, (Math.hypot(change[angle], largest) * by) / 100));
    },
  },
  // Shares of each angle's own change and of the main angle's: what a step does is then as unsure as `tolerance` has it,
  // but for what is less than the least change and for pairs of rows that change another angle more: that stays.
  unsure: {
    of: [...CHARTED, ...CHARTED.map((angle) => `${angle} beside`)],
    sigma: (by) => by / 100,
    with: (given, by) => {
      const { perStep, positions } = given as EffectTable;
      const main = mainOf(given as EffectTable);
      return {
        ...given,
        ...(perStep && { perStep: offBy(perStep, main, by) }),
        ...(positions && { positions: positions.map((row) => offBy(row, main, by)) }),
      };
    },
    left: (given, from, to, by) => {
      const change = changeOf(given, from, to);
      const rest = largestOf(change) ** 2 - change[mainOf(given as EffectTable)] ** 2;
      return CHARTED.map((angle) => only(angle, (Math.sqrt(Math.max(0, rest)) * by) / 100));
    },
  },
  reversed: (given) => {
    const { perStep } = given as EffectTable;
    if (!perStep) return given;
    const { camber = 0, caster = 0, toe = 0 } = perStep;
    return { ...given, perStep: { camber: -camber, caster: -caster, toe: -toe } };
  },
  effort: 8,
};
