/** `npm test`: every check in turn, each step only as long as it pays; what is longer is in `long.ts`. */
import { Checks } from './checks.ts';
import { findOrInstallChromium } from './chromium.ts';

const checks = new Checks();
const chromium = findOrInstallChromium();
checks.check('types', ['npm', 'run', '--silent', 'types']);
checks.check('lint', ['npm', 'run', '--silent', 'lint']);
const built = checks.check('build', ['npm', 'run', '--silent', 'build']);
checks.vitest('unit, property, reference, boundary, size');
if (built) checks.playwright('browser', { CHROMIUM_PATH: chromium });
else console.log('browser: not run, as there is no build');
checks.close();
