import { readdirSync, readFileSync } from 'node:fs';
import type { CarFile } from '../../../core/contract.ts';
import { parseCarFile } from '../../../core/records/validate.ts';

const folder = new URL('../../../fixtures/cars/', import.meta.url);

export const carFileNames = readdirSync(folder).filter((name) => name.endsWith('.json'));
export const carFileText = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
export const carFile = (name: string): CarFile => parseCarFile(carFileText(name));
/** Its JSON, free to be spoilt. */
export const carFileData = (name: string): unknown => JSON.parse(carFileText(name));
