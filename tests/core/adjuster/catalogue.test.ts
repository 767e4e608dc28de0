/** What holds of every adjuster kind: its positions, its steps, what would take it further, and what a form asks for. */
import { safeParse } from 'valibot';
import { describe, expect, it } from 'vitest';
import { adjusterKinds } from '../../../core/adjuster/catalogue.ts';
import { wholeAdjuster } from '../../../core/adjuster/whole.ts';
import type { Position } from '../../../core/contract.ts';
import { adjusterPositions } from '../../../core/index.ts';
import { randomSuspension, stream } from '../../tools/random-cars.ts';
import { FITTING, sampleAdjuster } from '../../tools/samples.ts';

/** A schema as far as a form's fields are looked up in it. */
interface Shape {
  readonly type: string;
  readonly entries?: Readonly<Record<string, Shape>>;
  readonly items?: readonly Shape[];
  readonly item?: Shape;
  readonly wrapped?: Shape;
  readonly pipe?: readonly Shape[];
}
/** Asked of every adjuster by the form itself; `live` of those that can be watched, `usual` only a file says. */
const COMMON = ['id', 'name', 'kind', 'torque', 'effort', 'tolerance', 'live', 'usual'];
const WAYS_TO_ASK = ['text', 'position', 'partner', 'length', 'lengths', 'number', 'numbers', 'point', 'links'];
const MORE_WAYS = ['direction', 'choice', 'range', 'table'];

const bare = (shape: Shape | undefined): Shape | undefined =>
  shape?.wrapped
    ? bare(shape.wrapped)
    : shape?.pipe && !shape.entries && !shape.items && !shape.item
      ? bare(shape.pipe.find(({ entries, items, item }) => entries ?? items ?? item))
      : shape;
const inside = (shape: Shape | undefined, path: string): Shape | undefined =>
  path
    .split('.')
    .reduce<Shape | undefined>(
      (at, key) => bare(at)?.entries?.[key] ?? bare(at)?.items?.[Number(key)] ?? undefined,
      shape,
    );

const samples = Object.values(adjusterKinds).map((kind) => {
  const { suspension } = FITTING.find(({ adjuster }) => adjuster === kind.kind) ?? { suspension: '' };
  const many = Array.from({ length: 12 }, (_, seed) => {
    const random = stream(seed + 40);
    return sampleAdjuster(random, kind.kind, randomSuspension(random, suspension));
  });
  const schema = kind.schema as unknown as Shape;
  return { name: kind.kind, kind, many, schema };
});
const asNumbers = (positions: readonly Position[]): number[] => positions.filter((one) => typeof one === 'number');

it.each(Object.entries(adjusterKinds))('%s is listed under its own name', (name, kind) => {
  expect(kind.kind).toBe(name);
  expect(kind.name.length).toBeGreaterThan(3);
  expect(kind.effort).toBeGreaterThan(0);
  expect(kind.tolerance.usual).toBeGreaterThan(0);
  expect(kind.tolerance.unit).not.toBe('');
});

describe.each(samples)('$name', ({ kind, many, schema }) => {
  it('has positions that it accepts, each once, numbers in order, and nothing beyond', () => {
    for (const one of many) {
      const positions = adjusterPositions(one);
      expect(positions.length).toBeGreaterThan(1);
      expect(new Set(positions.map(String)).size).toBe(positions.length);
      expect(positions.filter((position) => !kind.accepts(one, position))).toEqual([]);
      const numbers = asNumbers(positions);
      expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
      for (const strange of ['nowhere', '', Number.NaN, 1000, -1000]) expect(kind.accepts(one, strange)).toBe(false);
    }
  });

  it('has a step between two positions, one of them the reference, wherever that is', () => {
    for (const one of many) {
      const positions = adjusterPositions(one);
      for (const reference of [one.reference, positions[0]!, positions.at(-1)!]) {
        const at = { ...one, reference };
        const { from, to } = kind.step(at);
        expect(from).not.toBe(to);
        for (const position of [from, to]) expect(kind.accepts(at, position)).toBe(true);
        // A wedge and a shim are shown as fitted at all.
        if (!['axle-wedge', 'wedge-shim'].includes(kind.kind)) expect([from, to]).toContain(reference);
        if (typeof from === 'number' && typeof to === 'number' && !kind.byChart) expect(to).toBeGreaterThan(from);
      }
    }
  });

  it('goes further beyond an end by what it says, nearest first', () => {
    const { extension } = kind;
    if (!extension) return expect(['offset-sleeve', 'effect-table']).toContain(kind.kind);
    expect(['mm', 'turns', 'degrees']).toContain(extension.unit);
    expect(extension.takes).toHaveLength(2);
    for (const one of many) {
      const positions = adjusterPositions(one);
      for (const end of [1, -1] as const) {
        const more = extension.beyond?.(one, end) ?? [];
        const by = more.map((step) => step.by);
        expect(by).toEqual([...by].sort((a, b) => a - b));
        for (const { position, by } of more) {
          expect(by).toBeGreaterThan(0);
          expect(kind.accepts(one, position)).toBe(false);
          const last = end > 0 ? positions.at(-1) : positions[0];
          if (typeof position === 'number') expect(position).toBeCloseTo((last as number) + end * by, 9);
        }
      }
    }
  });

  it('can be built from what a form asks and what it starts from', () => {
    const given = { at: 'a', direction: [0, 1, 0], links: ['a'], lead: 1, ...kind.start, ...kind.sample.adjuster };
    const whole = wholeAdjuster({ ...given, id: 'sample', kind: kind.kind });
    if (!whole) throw new Error(`${kind.kind}: its start and its sample make no adjuster`);
    const { from, to } = kind.sample;
    expect(from).not.toBe(to);
    for (const position of [from, to]) expect(adjusterPositions(whole)).toContain(position);
    for (const [name, value] of Object.entries(kind.start)) {
      expect(safeParse(inside(schema, name) as never, value).success, name).toBe(true);
    }
  });

  it('asks for every field that it has, and leaves empty what a file may leave out', () => {
    const roots = new Set(kind.fields.map(({ name }) => name.split('.')[0]));
    const own = Object.keys(bare(schema)?.entries ?? {}).filter((name) => !COMMON.includes(name));
    expect([...roots].sort()).toEqual(own.sort());
    for (const { name, optional = false, way } of kind.fields) {
      const shape = inside(schema, name);
      expect(shape, name).toBeDefined();
      const root = name.split('.')[0] as string;
      const mayBeLeftOut = [shape, inside(schema, root)].some((one) => one?.type === 'optional');
      if (optional) expect(mayBeLeftOut, name).toBe(true);
      else if (mayBeLeftOut) expect(way !== undefined || root in kind.start, name).toBe(true);
    }
  });

  it('asks in a way that the forms know, by labels that differ', () => {
    const labels = kind.fields.map(({ label }) => label);
    expect(new Set(labels).size).toBe(labels.length);
    for (const { name, label, ask } of kind.fields) {
      expect(label).toMatch(/\w/);
      expect([...WAYS_TO_ASK, ...MORE_WAYS]).toContain(ask.as);
      const shape = inside(schema, name);
      if (ask.as === 'choice') {
        expect(ask.choices.length).toBeGreaterThan(1);
        for (const [value, words] of ask.choices) {
          expect(safeParse(shape as never, value).success, String(value)).toBe(true);
          expect(words).not.toBe('');
        }
      }
      if (ask.as === 'table') {
        for (const column of ask.columns) {
          expect(inside(bare(shape)?.item, column.name), column.name).toBeDefined();
          expect(column.label).not.toBe('');
          expect(['label', 'length', 'degrees']).toContain(column.as);
        }
      }
    }
  });

  it('is nothing while a field that it needs is missing', () => {
    const [one] = many;
    expect(wholeAdjuster({ ...one })).toBeDefined();
    expect(wholeAdjuster({ ...one, kind: 'magic' })).toBeUndefined();
    expect(wholeAdjuster({ ...one, id: '' })).toBeUndefined();
    expect(wholeAdjuster({ ...one, reference: 'nowhere' })).toBeUndefined();
  });
});
