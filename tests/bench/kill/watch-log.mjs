/** A thread of its own that looks at nothing but the log of the browser's database, and kills the browser in its growth. */
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { workerData } from 'node:worker_threads';

const { folder, grown, process: id } = workerData;
const clock = new Int32Array(new SharedArrayBuffer(4));
const PAUSE = 0.3;

/** Size of each log, by name. */
function logs() {
  const sizes = new Map();
  // A profile that has not had a database yet.
  if (!existsSync(folder)) return sizes;
  for (const origin of readdirSync(folder)) {
    if (!origin.endsWith('.leveldb')) continue;
    for (const name of readdirSync(join(folder, origin))) {
      if (!name.endsWith('.log')) continue;
      // It may have been rolled over since it was listed.
      const size = statSync(join(folder, origin, name), { throwIfNoEntry: false })?.size;
      if (size !== undefined) sizes.set(`${origin}/${name}`, size);
    }
  }
  return sizes;
}

const before = logs();
for (;;) {
  const sizes = logs();
  // Without a growth that is waited for, it is the roll over to a new one.
  const isDue = [...sizes].some(([name, size]) =>
    grown === 0 ? before.size > 0 && !before.has(name) : size - (before.get(name) ?? 0) >= grown,
  );
  if (isDue) {
    process.kill(id, 'SIGKILL');
    break;
  }
  Atomics.wait(clock, 0, 0, PAUSE);
}
