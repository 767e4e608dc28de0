/**
 * `npm run bench`: how long a pose and a plan take, beside general-purpose libraries at the same task, and how long the
 * built app's worker takes on a slow phone. One run measures all, so that the ratios hold on any machine. Not a test: it
 * fails on wrong answers only.
 */
import { Bench } from 'tinybench';
import { againstHighs } from './against-highs.ts';
import { learning } from './learning.ts';
import { growth, plans } from './plans.ts';
import { poses } from './poses.ts';
import { type Median, print } from './topic.ts';
import { slowPhone } from './worker.ts';

const TOPICS = [poses, plans, learning, growth, againstHighs];

const bench = new Bench({ time: 1500, warmupTime: 500 });
for (const topic of TOPICS) topic.add(bench);
await bench.run();

const median: Median = (task) => {
  const result = bench.getTask(task)?.result;
  if (!result || !('latency' in result)) throw new Error(`${task} did not run to its end`);
  return result.latency.p50;
};
for (const { title, rows } of TOPICS) print(title, rows(median));
print('The built app, whole car', await slowPhone());
