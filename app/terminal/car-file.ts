/** What the commands share: reading a car file, and ending with exit code 2 where it is no good. */
import { readFileSync } from 'node:fs';
import type { CarFile } from '../../core/contract.ts';
import { InputError } from '../../core/input-error.ts';
import { parseCarFile } from '../../core/records/car-file.ts';

/** The car file that the command line names. @throws InputError */
export function carFileOf(positionals: readonly string[]): CarFile {
  const [path, ...more] = positionals;
  if (!path || more.length > 0) throw new InputError('FILE.json', positionals.join(' '), { is: 'path' });
  return parseCarFile(read(path));
}

function read(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new InputError('FILE.json', path, { is: 'readable', reason });
  }
}

/** Prints what `run` returns; bad input ends with its message, the usage and exit code 2. */
export function command(usage: string, run: () => string): void {
  try {
    console.log(run());
  } catch (error) {
    const known = error instanceof InputError || (error instanceof TypeError && 'code' in error);
    if (!known) throw error;
    console.error(`${(error as Error).message}\nUsage: ${usage}`);
    process.exitCode = 2;
  }
}
