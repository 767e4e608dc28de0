/**
 * Before every unit test: the draws of property tests are the same in every run, so that what fails, fails again.
 * `CORNERWRIGHT_SEED=7` draws others.
 */
import fc from 'fast-check';

const SEED = 20261127;

fc.configureGlobal({ seed: Number(process.env.CORNERWRIGHT_SEED ?? SEED) });
