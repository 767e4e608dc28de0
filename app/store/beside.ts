/**
 * What is kept beside the database: the way back from a restore, and a copy of all records as they were before it. A browser
 * that tears the log of its databases must not take these with it, so they are files of the page's own file system, which
 * has no part in that log; where there is none, a second database.
 */
import { besideInDatabase } from './beside-database.ts';
import { besideInFiles } from './beside-files.ts';
import { explain } from './failure.ts';
import type { Beside } from './kept-beside.ts';

/** @param name of the database that it is beside */
export async function openBeside(name: string): Promise<Beside> {
  const beside = (await besideInFiles(`${name}-beside`)) ?? (await besideInDatabase(`${name}-beside`));
  return {
    ...beside,
    async keep(name, content) {
      await beside.keep(name, content).catch((error: unknown) => {
        throw explain(error);
      });
    },
  };
}
