/** Before every unit test: writes beside its result what it took of the processor, and its limit, both ms. */
import { afterEach, beforeEach } from 'vitest';

let start = process.cpuUsage();

beforeEach(() => {
  start = process.cpuUsage();
});
afterEach(({ task }) => {
  const { user, system } = process.cpuUsage(start);
  Object.assign(task.meta, { cpu: (user + system) / 1000, limit: task.timeout });
});
