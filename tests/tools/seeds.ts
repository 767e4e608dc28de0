/**
 * How much a slow test tries. `npm test` tries the seeds that pay: those that together go into every branch of core that
 * all of them go into, and hold every kind of case that the test counts. `npm run test:long` tries them all.
 */
const isLong = process.env.CORNERWRIGHT_LONG !== undefined;

/** What a test takes in `npm test`, and what it takes in `npm run test:long`. */
export const shortOrLong = <T>(short: T, long: T): T => (isLong ? long : short);

/** Seeds 1 to `count`. */
export const upTo = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => i + 1);
