/**
 * `npm run plan -- FILE.json [--json] [--closest | --least-work | --surest] [--live camber,toe]`: the moves of a car file, for people or for programs.
 * The same core calls as the app's. Exit code 2 with a message where the file is no good.
 */
import { parseArgs } from 'node:util';
import type { LiveAngle } from '../../core/contract.ts';
import { expectationOfFile, planOfFile } from '../../core/index.ts';
import { carFileOf, command } from './car-file.ts';
import { report } from './report.ts';

command('npm run plan -- FILE.json [--json] [--closest | --least-work | --surest] [--live camber,toe]', () => {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      json: { type: 'boolean' },
      closest: { type: 'boolean' },
      'least-work': { type: 'boolean' },
      surest: { type: 'boolean' },
      live: { type: 'string' },
    },
  });
  const file = carFileOf(positionals);
  const style = (['closest', 'least-work', 'surest'] as const).find((one) => values[one]) ?? 'practical';
  // What is no angle is refused where the options are checked.
  const live = values.live?.split(',').map((angle) => angle.trim() as LiveAngle);
  const plan = planOfFile(file, { style, ...(live && { live }) });
  return values.json ? JSON.stringify(plan, null, 2) : report(file.car, expectationOfFile(file), plan, style);
});
