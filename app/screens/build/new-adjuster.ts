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

/** One adjuster again, at the end of a list, under an id and a name that no other there has. */
export function copyOf(texts: Texts, from: string, list: string): Texts {
  const others = indices(texts, list);
  const taken = (field: 'id' | 'name') => new Set(others.map((i) => texts[`${list}[${i}].${field}`]));
  const here = `${list}[${others.length}]`;
  const [ids, names] = [taken('id'), taken('name')];
  const [id = '', name = ''] = [texts[`${from}.id`], texts[`${from}.name`]];
  return {
    ...Object.fromEntries(entriesUnder(texts, `${from}.`, `${here}.`)),
    [`${here}.id`]: unlike(id.replace(/-\d+$/, ''), '-', ids, id),
    [`${here}.name`]: unlike(name.replace(/ \d+$/, ''), ' ', names, name),
  };
}

/** The text itself where nobody has it, else with the first number that makes it another. */
function unlike(bare: string, between: string, taken: ReadonlySet<string | undefined>, text: string): string {
  if (!taken.has(text)) return text;
  let number = 2;
  while (taken.has(`${bare}${between}${number}`)) number += 1;
  return `${bare}${between}${number}`;
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
