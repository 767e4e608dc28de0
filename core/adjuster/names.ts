/** What the adjusters of a car and their fields are called, for who is told of a refusal. */
import type { Adjuster, Corner } from '../contract.ts';
import { axleOf, CORNERS, isLeft } from '../corners.ts';
import type { FieldPath, Names } from '../rule.ts';
import { adjusterKinds } from './catalogue.ts';

/** What a form calls a field of a kind: by its path within the adjuster, such as `pair.with`. */
export const labelOf = (kind: unknown, path: FieldPath): string | undefined =>
  adjusterKinds[String(kind)]?.fields.find(({ name }) => name === path.join('.'))?.label;

/** What it is called: its own name, else its kind's; a car on file may have it without one. */
export const adjusterName = ({ name, kind, id }: Pick<Adjuster, 'name' | 'kind' | 'id'>): string =>
  name || adjusterKinds[kind]?.name || id;

/**
 * Names in what was refused, as it is typed or on file, by the first name of a field's path: `{ car }`,
 * `{ adjusters, suspension }`. It need not be valid. Adjusters in `settings` are those of the
 * corner of its `car`.
 */
export function namesIn(root: object): Names {
  const kindAt = (path: FieldPath) => at(root, [...path, 'kind']);
  return {
    given: (path) => {
      const [id, corner] = [...path].reverse();
      if (isAdjuster(path)) return textAt(root, [...path, 'name']) ?? adjusterKinds[String(kindAt(path))]?.name;
      const own = CORNERS.find((one) => one === corner);
      const fitted = own && fittedAt(root, own);
      const found = Array.isArray(fitted) ? fitted.findIndex((one) => at(one, ['id']) === id) : -1;
      return found < 0 ? undefined : textAt(fitted, [found, 'name']);
    },
    asked: (path) => {
      const end = path.findIndex((_, i) => isAdjuster(path.slice(0, i)));
      return end < 0 ? undefined : labelOf(kindAt(path.slice(0, end)), path.slice(end));
    },
  };
}

const isAdjuster = (path: FieldPath): boolean =>
  (path.at(-2) === 'adjusters' || path.at(-2) === 'rightAdjusters') && typeof path.at(-1) === 'number';

/** The list that a corner's adjusters stand in. */
function fittedAt(root: object, corner: Corner): unknown {
  const axle = ['car', axleOf(corner)];
  const own = isLeft(corner) ? undefined : at(root, [...axle, 'rightAdjusters']);
  return own ?? at(root, [...axle, 'adjusters']);
}

const at = (value: unknown, path: FieldPath): unknown =>
  path.reduce<unknown>((one, part) => (one as Readonly<Record<string, unknown>> | undefined | null)?.[part], value);

function textAt(value: unknown, path: FieldPath): string | undefined {
  const found = at(value, path);
  return typeof found === 'string' && found ? found : undefined;
}
