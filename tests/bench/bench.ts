/**
 * `npm run bench`: how long a pose and a plan take, and how many times faster a pose is than a general-purpose
 * library on the same constraints. One run measures all, so that the ratios hold on any machine. Not a test.
 */
import { Bench } from 'tinybench';
import type { Settings, Vec3 } from '../../core/contract.ts';
import { planMoves } from '../../core/index.ts';
import { CornerModel } from '../../core/pose/corner.ts';
import { front, request } from './cars.ts';
import { generalPose } from './general-purpose.ts';

const POSES = 289;
/** Largest residual, mm, that counts as the same answer. */
const SAME = 1e-6;

const positions: Settings[] = Array.from({ length: POSES }, (_, i) => ({
  front: (i % 17) * 0.75,
  rear: Math.floor(i / 17) * 0.75,
  rod: ((i % 7) - 3) / 12,
}));
const model = new CornerModel(front.suspension, front.adjusters);
const parameters = positions.map((settings) => model.parameters(settings).slice());
const { solver } = model.linkage;

// The general-purpose library gets packs only: it moves points, which is all that these do.
const packs = positions.map(({ front: f, rear: r }) => ({
  upperFront: shifted('upperFront', Number(f) - 3),
  upperRear: shifted('upperRear', Number(r) - 3),
}));

function shifted(name: string, outboard: number): Vec3 {
  const [x, y, z] = front.suspension.points[name] as Vec3;
  return [x, y + outboard, z];
}

const worst = Math.max(...packs.map((moved) => generalPose(front.suspension, moved).residual));
if (!(worst < SAME)) throw new Error(`the general-purpose library stopped at a residual of ${worst} mm`);
if (!parameters.every((p) => solver.solve(p) && solver.residual < SAME)) throw new Error('a pose was not solved');

const bench = new Bench({ time: 1500, warmupTime: 500 });
bench.add('poses', () => {
  for (const p of parameters) solver.solve(p);
});
bench.add('general', () => {
  for (const moved of packs.slice(0, 17)) generalPose(front.suspension, moved);
});
bench.add('plan', () => {
  planMoves(request);
});
await bench.run();

/** Median, milliseconds. */
function median(name: string): number {
  const result = bench.getTask(name)?.result;
  if (!result || !('latency' in result)) throw new Error(`${name} did not run to its end`);
  return result.latency.p50;
}

const pose = (median('poses') / POSES) * 1000;
const general = (median('general') / 17) * 1000;
const plan = median('plan');
const { optimum, inWindow } = planMoves(request);

const row = (what: string, value: string, target: string) =>
  console.log(`${what.padEnd(52)}${value.padStart(12)}   ${target}`);
row('cold pose solve', `${pose.toFixed(2)} µs`, 'target 3 µs');
row('same pose, ml-levenberg-marquardt', `${general.toFixed(0)} µs`, '');
row('how many times faster', `${(general / pose).toFixed(0)} ×`, 'target 100 ×');
row(`front-axle plan, ${optimum.combinations} combinations`, `${plan.toFixed(1)} ms`, 'target 50 ms');
if (!optimum.proven || !inWindow) throw new Error('the plan is not the proven optimum in the window');
