/** Data as JSON text has it, changed in a few places at random: what a person, a program or a fault may make of a good file. */
import { BAD_DATES, BAD_NAMES, BAD_NUMBERS, BAD_TEXTS, type Dice } from './bad.ts';

/** What text of JSON alone can say: numbers that no program writes. Made into that number by `render`. */
const RAW = '\ue000';
const raw = (token: string): string => `${RAW}${token}${RAW}`;

/** The data as text. */
export const render = (data: unknown): string =>
  JSON.stringify(data).replaceAll(new RegExp(`"${RAW}(-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?)${RAW}"`, 'g'), '$1');

export interface Change {
  readonly data: unknown;
  /** Where and what, for whoever reads of a mutant that got through. */
  readonly says: string;
}

type Path = readonly (string | number)[];
type Fields = Readonly<Record<string, unknown>>;

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** How much there is in it. */
const sizeOf = (value: unknown): number =>
  typeof value === 'object' && value !== null
    ? Object.values(value).reduce((sum: number, one) => sum + sizeOf(one), 1)
    : 1;

/** One of the names or places, oftener the more there is under it, and none very seldom. */
function way(value: object, keys: readonly (string | number)[], dice: Dice): string | number {
  const weights = keys.map((key) => Math.log2(1 + sizeOf((value as Fields)[key])));
  let at = dice.next() * weights.reduce((sum, one) => sum + one, 0);
  for (const [i, key] of keys.entries()) {
    at -= weights[i] ?? 0;
    if (at < 0) return key;
  }
  return dice.one(keys);
}

/** A place of the data: a leaf mostly, or a branch on the way to it. */
function somewhere(data: unknown, dice: Dice): { readonly path: Path; readonly value: unknown } {
  let path: Path = [];
  let value = data;
  while (true) {
    const keys = Array.isArray(value) ? [...value.keys()] : isFields(value) ? Object.keys(value) : [];
    if (keys.length === 0 || (path.length > 0 && dice.chance(0.1))) return { path, value };
    const key = way(value as object, keys, dice);
    path = [...path, key];
    value = (value as Fields)[key];
  }
}

/** The data with something else at a place; nothing there where `made` gives none. */
function withAt(data: unknown, [key, ...rest]: Path, made: (value: unknown) => unknown): unknown {
  if (key === undefined) return made(data);
  if (Array.isArray(data)) {
    return data.flatMap((one, i) => {
      if (i !== key) return [one];
      const next = withAt(one, rest, made);
      return next === undefined ? [] : [next];
    });
  }
  // From pairs: a field may have any name, also one that an object of this language has.
  return Object.fromEntries(
    Object.entries(data as Fields).map(([name, one]) => [name, name === key ? withAt(one, rest, made) : one]),
  );
}

const nest = (levels: number, inner: unknown): unknown => {
  let value = inner;
  for (let i = 0; i < levels; i += 1) value = i % 2 === 0 ? { a: value } : [value];
  return value;
};

const manyNames = (): unknown => Object.fromEntries(Array.from({ length: 150_000 }, (_, i) => [`k${i}`, i]));

/** Something else altogether. */
function stranger(dice: Dice): unknown {
  // Seldom, as it takes long: what is far too much.
  if (dice.chance(0.003)) return dice.one([() => 'x'.repeat(3_000_000), () => Array(300_000).fill({}), manyNames])();
  return dice.one<() => unknown>([
    () => dice.one([null, true, false, [], {}, [null], [[]], [{}], { a: 1 }, { length: 3 }]),
    () => dice.one(BAD_TEXTS),
    () => dice.one(BAD_NUMBERS),
    () => raw(dice.one(['-0', '1e999', '-1e999', '1e-999', '123456789012345678901234567890', '0.1e-5'])),
    () => dice.one(BAD_NAMES),
    () => dice.one(BAD_DATES),
    () => nest(dice.one([1, 5, 20, 30, 60, 1100]), 1),
    () => 'x'.repeat(dice.one([41, 401, 4001, 4001, 100_000])),
    () => Object.fromEntries([[dice.one(BAD_NAMES), dice.one(BAD_TEXTS)]]),
  ])();
}

function ofNumber(value: number, dice: Dice): unknown {
  return dice.one<() => unknown>([
    () => -value,
    () => value * dice.one([1e-9, 1e-3, 0.5, 2, 10, 1e3, 1e6, 1e12]),
    () => value + dice.one([1, -1, 0.5, 1e-9, -1e-9, 90, 360]),
    () => Math.round(value),
    () => String(value),
    () => [value],
    () => raw(`${mantissa(value)}e${dice.one(['0', '-3', '3', '400', '-400'])}`),
  ])();
}

/** A number that was changed before may have an exponent, or be none: in a text of JSON it has room for one. */
const mantissa = (value: number): string => (Number.isFinite(value) ? String(value).replace(/e.*/, '') : '0');

function ofText(value: string, dice: Dice): unknown {
  return dice.one<() => unknown>([
    () => value + dice.one(BAD_TEXTS),
    () => value.slice(0, Math.floor(dice.next() * value.length)),
    () => value.toUpperCase(),
    () => ` ${value} `,
    () => [...value].reverse().join(''),
    () => (/^\d{4}-/.test(value) ? dice.one(BAD_DATES) : dice.one(BAD_NAMES)),
    () => Number(value),
  ])();
}

function ofList(value: readonly unknown[], dice: Dice): unknown {
  const at = Math.floor(dice.next() * (value.length + 1));
  const put = (...more: readonly unknown[]): unknown => [...value.slice(0, at), ...more, ...value.slice(at)];
  return dice.one<() => unknown>([
    () => [],
    () => [...value, ...value],
    () => put(null),
    () => put(value[at] ?? null),
    () => put(stranger(dice)),
    () => value.filter((_, i) => i !== at),
    () => [...value].reverse(),
    () => Array(dice.one([17, 65, 401])).fill(value[0] ?? null),
    () => Object.fromEntries(value.entries()),
  ])();
}

function ofFields(value: Fields, dice: Dice): unknown {
  const entries = Object.entries(value);
  const at = Math.floor(dice.next() * entries.length);
  const [key = '', own] = entries[at] ?? [];
  const rename = (name: string): unknown => Object.fromEntries(entries.map((one, i) => (i === at ? [name, own] : one)));
  return dice.one<() => unknown>([
    () => ({}),
    () => Object.fromEntries(entries.filter((_, i) => i !== at)),
    () => rename(dice.one(BAD_NAMES)),
    () => rename(`${key}${dice.one(['x', ' ', '.', '[0]', '2', '\u202e', ''])}`),
    () => rename(dice.one(entries)?.[0] ?? 'x'),
    () => Object.fromEntries([...entries, [dice.one(BAD_NAMES), dice.chance(0.5) ? own : stranger(dice)]]),
    () => Object.fromEntries([...entries, [dice.one(['chamber', 'id', 'kind', 'name', 'versions']), stranger(dice)]]),
    () => Object.values(value),
    () => entries,
  ])();
}

function turned(value: unknown, dice: Dice): unknown {
  if (dice.chance(0.35)) return stranger(dice);
  if (typeof value === 'number') return ofNumber(value, dice);
  if (typeof value === 'string') return ofText(value, dice);
  if (Array.isArray(value)) return ofList(value, dice);
  if (isFields(value)) return ofFields(value, dice);
  return value === true ? 'true' : stranger(dice);
}

/** Another value of the same name elsewhere, or any that is of its type: ids made equal, references to what is not there. */
function borrowed(data: unknown, path: Path, value: unknown, dice: Dice): unknown {
  const name = path.findLast((part) => typeof part === 'string');
  for (let i = 0; i < 30; i += 1) {
    const other = somewhere(data, dice);
    const isAlike = typeof other.value === typeof value && Array.isArray(other.value) === Array.isArray(value);
    const alsoNamed = i > 20 || other.path.findLast((part) => typeof part === 'string') === name;
    if (isAlike && alsoNamed && other.value !== value) return other.value;
  }
  return stranger(dice);
}

/** One to three changes. */
export function changed(data: unknown, dice: Dice): Change {
  const times = dice.one([1, 1, 1, 1, 2, 3]);
  let now = data;
  const says: string[] = [];
  for (let i = 0; i < times; i += 1) {
    const { path, value } = somewhere(now, dice);
    const how = dice.next();
    const isLost = how < 0.08 && path.length > 0;
    const next = isLost ? undefined : how < 0.2 ? borrowed(now, path, value, dice) : turned(value, dice);
    now = withAt(now, path, () => next) ?? null;
    says.push(`${path.join('.')} = ${JSON.stringify(next)?.slice(0, 120) ?? 'gone'}`);
  }
  return { data: now, says: says.join('; ') };
}
