/**
 * Stryker's runner of vitest, which takes a test file that does not load for one without tests: a mutant that breaks
 * what a file works out before its tests would survive, and a file that cannot be read at all would go unseen.
 */
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';

const packages = createRequire(new URL('../../.cache/mutants/package.json', import.meta.url));
const { strykerPlugins: own, strykerValidationSchema } = await import(
  pathToFileURL(packages.resolve('@stryker-mutator/vitest-runner')).href
);

/** What went wrong in the first file that failed without a test of its own that did. */
const whyNotLoaded = ({ ctx }) => {
  const failed = ctx.state.getFiles().find(({ result }) => result?.state === 'fail' && result.errors?.length > 0);
  return failed && `${failed.name} does not load: ${failed.result.errors[0].message}`;
};

function strictRunner(injector) {
  const runner = own[0].factory(injector);
  const dryRun = runner.dryRun.bind(runner);
  const mutantRun = runner.mutantRun.bind(runner);
  runner.dryRun = async (options) => {
    const result = await dryRun(options);
    const errorMessage = whyNotLoaded(runner);
    return errorMessage ? { status: 'error', errorMessage } : result;
  };
  runner.mutantRun = async (options) => {
    const result = await mutantRun(options);
    const failureMessage = result.status === 'survived' && whyNotLoaded(runner);
    return failureMessage ? { status: 'killed', failureMessage, killedBy: [], nrOfTests: 1 } : result;
  };
  return runner;
}
strictRunner.inject = own[0].factory.inject;

export { strykerValidationSchema };
export const strykerPlugins = [{ kind: 'TestRunner', name: 'vitest-strict', factory: strictRunner }];
