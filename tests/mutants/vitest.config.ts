/** The quick tests of one room, which `mutants.ts` names; without the browser's and the slow ones. */
import { relative } from 'node:path';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';
import everything, { everyFile } from '../vitest.config.ts';
import { ROOMS } from './rooms.ts';

const room = ROOMS[process.env.MUTANTS_ROOM ?? ''];
if (!room) throw new Error('MUTANTS_ROOM names no room of tests/mutants/rooms.ts.');

/** Quick files first: the first test that fails ends the run. */
class QuickFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const took = ({ moduleId, project: { name } }: TestSpecification): number =>
      this.ctx.cache.getFileTestResults(`${name}:${relative(this.ctx.config.root, moduleId)}`)?.duration ?? 0;
    return [...files].sort((a, b) => took(a) - took(b));
  }
}

export default defineConfig({
  ...everything,
  test: {
    ...everyFile,
    passWithNoTests: false,
    include: room.tests.map((glob) => `${glob}.test.ts`),
    // What is changed runs more slowly by itself: every change is in the code, to be switched on.
    testTimeout: 120_000,
    maxWorkers: 1,
    isolate: room.shared !== true,
    sequence: { sequencer: QuickFirst },
  },
});
