/** An adjuster as it is put on the build card, before its own figures are typed; and taken off again. */
import { startOf } from './adjuster-fields.ts';
import { indices } from './car-texts.ts';
import type { Texts } from './numbers.ts';

export function newAdjuster(kind: string, name: string, path: string, index: number, texts: Texts): Texts {
  const here = `${path}[${index}]`;
  const ids = new Set(indices(texts, path).map((i) => texts[`${path}[${i}].id`]));
  let number = ids.size + 1;
  while (ids.has(`${kind}-${number}`)) number += 1;
  return {
    ...startOf(kind, here),
    [`${here}.id`]: `${kind}-${number}`,
    [`${here}.kind`]: kind,
    [`${here}.name`]: name,
  };
}

/** The texts under `path` without one entry, those after it moved down. */
export function withoutAdjuster(texts: Texts, path: string, index: number): Texts {
  const left = indices(texts, path).filter((i) => i !== index);
  const moved = left.flatMap((from, to) =>
    Object.entries(texts)
      .filter(([key]) => key.startsWith(`${path}[${from}].`))
      .map(([key, text]) => [`${path}[${to}].${key.slice(`${path}[${from}].`.length)}`, text]),
  );
  return Object.fromEntries(moved);
}
