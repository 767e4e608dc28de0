/** The process of a Chromium that Playwright has started, to be killed from outside. */
import { readFileSync } from 'node:fs';
import type { BrowserContext } from 'playwright';

/** For `process.kill`: its group, where it leads one, so that what keeps the storage is no survivor. */
export async function browserProcess(context: BrowserContext): Promise<number> {
  const devtools = await context.browser()?.newBrowserCDPSession();
  const processes = (await devtools?.send('SystemInfo.getProcessInfo'))?.processInfo ?? [];
  const id = processes.find(({ type }) => type === 'browser')?.id ?? 0;
  if (id === 0) throw new Error('Chromium does not say which process it is');
  return isLeader(id) ? -id : id;
}

function isLeader(id: number): boolean {
  try {
    const stat = readFileSync(`/proc/${id}/stat`, 'utf8');
    return Number(stat.slice(stat.lastIndexOf(')') + 2).split(' ')[2]) === id;
  } catch {
    return false;
  }
}
