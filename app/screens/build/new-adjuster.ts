/** An adjuster as it is put on the build card, before its own figures are typed; and taken off again. */
import type { Adjuster, Position } from '../../../core/contract.ts';
import { indices } from './car-texts.ts';
import type { Texts } from './numbers.ts';

/** A made-up adjuster of each kind and a move of it: for choosing by eye. */
export const SAMPLES: Readonly<
  Record<string, { readonly adjuster: Adjuster; readonly from: Position; readonly to: Position }>
> = {
  'shim-pack': sample('shim-pack', { reference: 3, sizes: [1.5], max: 9 }, 3, 4.5),
  'indexed-cam': sample('indexed-cam', { reference: '1', positions: labelled(8) }, '3', '5'),
  'eccentric-cam': sample('eccentric-cam', { reference: 0, eccentricity: 4, marks: 24, range: [-90, 90] }, 0, 45),
  'threaded-rod': sample('threaded-rod', { reference: 0, lead: 1.5, stepTurns: 1 / 12, range: [-6, 6] }, 0, 1.25),
};

function sample(kind: string, fields: { reference: Position } & Record<string, unknown>, from: Position, to: Position) {
  return { adjuster: { id: 'sample', name: '', kind, ...fields }, from, to };
}

function labelled(count: number): { label: string; offset: readonly number[] }[] {
  return Array.from({ length: count }, (_, i) => ({ label: String(i + 1), offset: [0, 0, 0] }));
}

/** What most have, so that little is left to type. */
const STARTS: Readonly<Record<string, Texts>> = {
  'shim-pack': { direction: '0 1 0', reference: '0', effort: '' },
  'indexed-cam': { reference: '', effort: '' },
  'eccentric-cam': { direction: '0 1 0', marks: '24', zero: 'middle', reference: '0', effort: '' },
  'threaded-rod': { stepTurns: String(1 / 12), 'range[0]': '−6', 'range[1]': '6', reference: '0', effort: '' },
};

export function newAdjuster(kind: string, name: string, path: string, index: number, texts: Texts): Texts {
  const here = `${path}[${index}]`;
  const ids = new Set(indices(texts, path).map((i) => texts[`${path}[${i}].id`]));
  let number = ids.size + 1;
  while (ids.has(`${kind}-${number}`)) number += 1;
  const start = Object.entries(STARTS[kind] ?? {}).map(([key, text]) => [`${here}.${key}`, text]);
  return {
    [`${here}.id`]: `${kind}-${number}`,
    [`${here}.kind`]: kind,
    [`${here}.name`]: name,
    ...Object.fromEntries(start),
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
