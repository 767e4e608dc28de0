/** `npm run test:long`: the tests that `npm test` runs with few seeds, with all of them. */
import { Checks } from './checks.ts';

const checks = new Checks();
checks.vitest('all seeds', { CORNERWRIGHT_LONG: 'yes' });
checks.close();
