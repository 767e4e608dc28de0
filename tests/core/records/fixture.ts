import { readdirSync, readFileSync } from 'node:fs';
import type { CarFile } from '../../../core/contract.ts';
import { parseCarFile } from '../../../core/records/car-file.ts';

const folder = new URL('../../../fixtures/cars/', import.meta.url);

export const carFileNames = readdirSync(folder).filter((name) => name.endsWith('.json'));
export const carFileText = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
export const carFile = (name: string): CarFile => parseCarFile(carFileText(name));
/** Its JSON, free to be spoilt. */
export const carFileData = (name: string): unknown => JSON.parse(carFileText(name));

/** Stands for a field that is missing. */
export const DROP = Symbol('left out');

/** The Tarn GT's file with one value set or dropped. */
export function spoilt(path: string, value: unknown, name = 'tarn-gt.json'): unknown {
  const data = carFileData(name);
  const keys = path.split('.');
  const last = keys.pop() as string;
  const place = keys.reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], data) as Record<
    string,
    unknown
  >;
  if (value === DROP) delete place[last];
  else place[last] = value;
  return data;
}
