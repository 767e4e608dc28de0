/** What the commands share: reading a car file, and ending with exit code 2 where it is no good. */
import { readFileSync, statSync } from 'node:fs';
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
    // A device or a pipe may never end.
    if (!statSync(path).isFile()) throw new Error('it is no file');
    return readFileSync(path, 'utf8');
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new InputError('FILE.json', path, { is: 'readable', reason });
  }
}

/** Prints what `run` returns; bad input ends with its message, the usage and exit code 2. */
export function command(usage: string, run: () => string): void {
  try {
    console.log(harmless(run()));
  } catch (error) {
    const known = error instanceof InputError || (error instanceof TypeError && 'code' in error);
    const message = error instanceof Error ? error.message : String(error);
    console.error(
      known ? `${harmless(message)}\nUsage: ${usage}` : `This could not be worked out: ${harmless(message)}`,
    );
    process.exitCode = 2;
  }
}

/**
 * Text from a file as a terminal may show it: what would steer the terminal, or turn the order of letters round, is shown
 * by its code. In JSON such a code is the same text.
 */
export const harmless = (text: string): string =>
  text.replace(
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for; the line feed stays.
    /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]/g,
    (one) => `\\u${one.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
