/** An adjuster as it is put on the build card, before its own figures are typed; and taken off again. */
import { isOnce } from '../../../core/adjuster/of-corner.ts';
import type { Adjuster, AxleName, Suspension } from '../../../core/contract.ts';
import { adjusterFrom, startOf } from './adjuster-fields.ts';
import { indices } from './car-texts.ts';
import type { Texts } from './numbers.ts';

export function newAdjuster(kind: string, name: string, path: string, index: number, texts: Texts): Texts {
  const here = `${path}[${index}]`;
  const others = indices(texts, path);
  const ids = new Set(others.map((i) => texts[`${path}[${i}].id`]));
  const names = new Set(others.map((i) => texts[`${path}[${i}].name`]));
  let number = ids.size + 1;
  while (ids.has(`${kind}-${number}`)) number += 1;
  return {
    ...startOf(kind, here),
    [`${here}.id`]: `${kind}-${number}`,
    [`${here}.kind`]: kind,
    // Two of a kind have to be told apart on the job.
    [`${here}.name`]: names.has(name) ? `${name} ${number}` : name,
  };
}

/** The right side's own list as it begins: the left one's, less what works on a part that the axle has once. */
export function rightList(texts: Texts, axle: AxleName): Texts {
  const left = `car.${axle}.adjusters`;
  const suspension = { kind: texts[`car.${axle}.suspension.kind`] ?? '' } as Suspension;
  // As far as it is typed: which part it works on is asked of each kind.
  const typed = (i: number) => adjusterFrom(texts, `${left}[${i}]`) as unknown as Adjuster;
  const twice = indices(texts, left).filter((i) => !isOnce(typed(i), { suspension }));
  const copied = twice.flatMap((from, to) =>
    entriesUnder(texts, `${left}[${from}].`, `car.${axle}.rightAdjusters[${to}].`),
  );
  return Object.fromEntries(copied);
}

/** What stands under one path, under another. */
const entriesUnder = (texts: Texts, from: string, to: string): (readonly [string, string])[] =>
  Object.entries(texts)
    .filter(([key]) => key.startsWith(from))
    .map(([key, text]) => [to + key.slice(from.length), text] as const);

/** The texts under `path` without one entry, those after it moved down. */
export function withoutAdjuster(texts: Texts, path: string, index: number): Texts {
  const left = indices(texts, path).filter((i) => i !== index);
  return Object.fromEntries(left.flatMap((from, to) => entriesUnder(texts, `${path}[${from}].`, `${path}[${to}].`)));
}
