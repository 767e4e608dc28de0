/**
 * `npm run bench`: how long a pose and a plan take, and how many times faster a pose is than a general-purpose
 * library on the same constraints, put to it as six unknowns of a rigid body and as plain point coordinates.
 * One run measures all, so that the ratios hold on any machine. Not a test: it fails on wrong answers only.
 */
import { Bench } from 'tinybench';
import type { Settings, Vec3 } from '../../core/contract.ts';
import { planMoves } from '../../core/index.ts';
import { UnitModel } from '../../core/pose/unit.ts';
import { generalPose } from '../tools/general-pose.ts';
import { front, request } from './cars.ts';
import { posePoints } from './point-coordinates.ts';

/** Every pair of positions of the two packs. */
const POSES = 17 * 17;
/** The library is measured on a part of them. */
const EVERY = 17;
/** Largest residual, mm, that counts as solved. */
const SOLVED = 1e-6;

const { suspension, adjusters } = front;
const positions: Settings[] = Array.from({ length: POSES }, (_, i) => ({
  front: (i % 17) * 0.75,
  rear: Math.floor(i / 17) * 0.75,
}));
const model = UnitModel.ofCorner(suspension, adjusters);
const parameters = positions.map((settings) => model.parameters([settings]).slice());
const { solver } = model.linkage;
if (!solver) throw new Error('a double wishbone is solved');
const moved = positions
  .filter((_, i) => i % EVERY === Math.floor(i / EVERY))
  .map((at) => ({ upperFront: shimmed('upperFront', at.front), upperRear: shimmed('upperRear', at.rear) }));

function shimmed(name: string, thickness: unknown): Vec3 {
  const [x, y, z] = suspension.points[name] as Vec3;
  return [x, y + Number(thickness) - 3, z];
}

const worst = Math.max(
  ...parameters.map((p) => (solver.solve(p) ? solver.residual : Number.POSITIVE_INFINITY)),
  ...moved.map((points) => generalPose(suspension, { moved: points }).residual),
  ...moved.map((points) => posePoints(suspension, points)),
);
if (!(worst < SOLVED)) throw new Error(`a pose was left with a residual of ${worst} mm`);
const answer = planMoves(request);
if (!answer.optimum.proven || !answer.inWindow) throw new Error('the plan is not the proven optimum in the window');

const bench = new Bench({ time: 1500, warmupTime: 500 });
bench.add('ours', () => {
  for (const p of parameters) solver.solve(p);
});
bench.add('rigid', () => {
  for (const points of moved) generalPose(suspension, { moved: points });
});
bench.add('points', () => {
  for (const points of moved) posePoints(suspension, points);
});
bench.add('plan', () => {
  planMoves(request);
});
await bench.run();

/** Median of one call, µs. */
function median(name: string, calls: number): number {
  const result = bench.getTask(name)?.result;
  if (!result || !('latency' in result)) throw new Error(`${name} did not run to its end`);
  return (result.latency.p50 / calls) * 1000;
}

const ours = median('ours', parameters.length);
const rigid = median('rigid', moved.length);
const points = median('points', moved.length);
const plan = median('plan', 1) / 1000;

const row = (what: string, value: string, target = ''): void =>
  console.log(`${what.padEnd(58)}${value.padStart(12)}   ${target}`);
row('a pose from cold', `${ours.toFixed(2)} µs`, 'target 3 µs');
row('the same by ml-levenberg-marquardt, rigid body', `${rigid.toFixed(0)} µs`);
row('the same by ml-levenberg-marquardt, point coordinates', `${points.toFixed(0)} µs`);
row('how many times faster than the library, rigid body', `${(rigid / ours).toFixed(0)} ×`);
row('how many times faster than the library, points', `${(points / ours).toFixed(0)} ×`, 'target 100 ×');
row(`front-axle plan of ${answer.optimum.combinations} combinations`, `${plan.toFixed(1)} ms`, 'target 50 ms');
