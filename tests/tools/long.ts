/**
 * `npm run test:long`: the tests that `npm test` runs with few seeds or leaves to this, with all of them; the screens at every
 * size, in every look; more kills of the browser, more files that were changed.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { Checks } from './checks.ts';

const SPECS = new URL('../browser/', import.meta.url);
/** Of the browser those that have more to do here. */
const specs = readdirSync(SPECS)
  .filter((name) => name.endsWith('.spec.ts') && name !== 'mutated.spec.ts')
  .filter((name) => /shortOrLong|longTest|longOf/.test(readFileSync(new URL(name, SPECS), 'utf8')));

const checks = new Checks();
checks.vitest('all seeds', { CORNERWRIGHT_LONG: 'yes' });
checks.check('build', ['npm', 'run', '--silent', 'build']);
checks.check('20 kills of the browser', ['npm', 'run', '--silent', 'bench:kill', '--', '--cycles', '20']);
checks.check('2,000 changed files', ['npm', 'run', '--silent', 'bench:mutated', '--', '--files', '2000']);
checks.playwright('browser, with all that npm test leaves', { CORNERWRIGHT_LONG: 'yes' }, specs);
checks.close();
