/**
 * `npm run plan -- FILE.json [--json] [--least-work]`: the moves of a car file, for people or for programs.
 * The same core calls as the app's. Exit code 2 with a message where the file is no good.
 */
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { InputError } from '../../core/index.ts';
import { planMoves } from '../../core/plan/plan.ts';
import { planRequest } from '../../core/records/plan-request.ts';
import { parseCarFile } from '../../core/records/validate.ts';
import { report } from './report.ts';

const USAGE = 'Usage: npm run plan -- FILE.json [--json] [--least-work]';

function run(): string {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { json: { type: 'boolean' }, 'least-work': { type: 'boolean' } },
  });
  const [path, ...more] = positionals;
  if (!path || more.length > 0) throw new InputError('FILE.json', positionals.join(' '), 'the path of one car file');
  const file = parseCarFile(read(path));
  const request = planRequest(file, values['least-work'] ? { style: 'least-work' } : {});
  const plan = planMoves(request);
  return values.json ? JSON.stringify(plan, null, 2) : report(file.car, request, plan);
}

function read(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    throw new InputError(
      'FILE.json',
      path,
      `a file that can be read (${error instanceof Error ? error.message : error})`,
    );
  }
}

try {
  console.log(run());
} catch (error) {
  const known = error instanceof InputError || (error instanceof TypeError && 'code' in error);
  if (!known) throw error;
  console.error(`${(error as Error).message}\n${USAGE}`);
  process.exitCode = 2;
}
