/** The quick tests of one room, which `mutants.ts` names; without the browser's and the slow ones. */
import { defineConfig } from 'vitest/config';
import everything from '../vitest.config.ts';
import { ROOMS } from './rooms.ts';

const room = ROOMS[process.env.MUTANTS_ROOM ?? ''];
if (!room) throw new Error('MUTANTS_ROOM names no room of tests/mutants/rooms.ts.');

export default defineConfig({
  ...everything,
  test: { ...everything.test, include: room.tests.map((glob) => `${glob}.test.ts`), maxWorkers: 1 },
});
