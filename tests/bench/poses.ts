/**
 * How long a pose takes, and how many times faster it is than by a general-purpose library on the same constraints, put
 * to it as six unknowns of a rigid body and as plain point coordinates.
 */

import { unknownsOf } from '../../core/adjuster/unknowns.ts';
import type { Settings, Vec3 } from '../../core/contract.ts';
import { ByUnknown } from '../../core/pose/by-unknown.ts';
import { Mechanism } from '../../core/pose/mechanism.ts';
import { generalPose } from '../tools/general-pose.ts';
import { front } from './cars.ts';
import { posePoints } from './point-coordinates.ts';
import type { Topic } from './topic.ts';

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
const model = Mechanism.ofCorner(suspension, adjusters);
const parameters = positions.map((settings) => model.parameters([settings]).slice());
const solver = model.linkage.bodies[0]?.solver;
if (!solver) throw new Error('a double wishbone is solved');
const byUnknown = new ByUnknown(model, unknownsOf(model.sides));
const angles = new Float64Array(model.numbers);
const moved = positions
  .filter((_, i) => i % EVERY === Math.floor(i / EVERY))
  .map((at) => ({ upperFront: shimmed('upperFront', at.front), upperRear: shimmed('upperRear', at.rear) }));

function shimmed(name: string, thickness: unknown): Vec3 {
  const [x, y, z] = suspension.points[name] as Vec3;
  return [x, y + Number(thickness) - 3, z];
}

export const poses: Topic = {
  title: 'A pose, from cold',
  add: (bench) => {
    const worst = Math.max(
      ...parameters.map((p) => (solver.solve(p) ? solver.residual : Number.POSITIVE_INFINITY)),
      ...moved.map((points) => generalPose(suspension, { moved: points }).residual),
      ...moved.map((points) => posePoints(suspension, points)),
    );
    if (!(worst < SOLVED)) throw new Error(`a pose was left with a residual of ${worst} mm`);
    bench.add('ours', () => {
      for (const p of parameters) solver.solve(p);
    });
    bench.add('gained', () => {
      for (const [i, p] of parameters.entries()) {
        if (!model.angles(p, angles)) continue;
        const gradient = model.gradient(p);
        if (gradient) byUnknown.slopes(gradient, [positions[i]!]);
      }
    });
    bench.add('rigid', () => {
      for (const points of moved) generalPose(suspension, { moved: points });
    });
    bench.add('points', () => {
      for (const points of moved) posePoints(suspension, points);
    });
  },
  rows: (median) => {
    const micro = (task: string, calls: number): number => (median(task) / calls) * 1000;
    const ours = micro('ours', parameters.length);
    const rigid = micro('rigid', moved.length);
    const points = micro('points', moved.length);
    return [
      { what: 'ours', value: `${ours.toFixed(2)} µs`, target: 'target 3 µs' },
      {
        what: 'the same with what its angles gain by every coordinate',
        value: `${micro('gained', parameters.length).toFixed(2)} µs`,
      },
      { what: 'the same by ml-levenberg-marquardt, rigid body', value: `${rigid.toFixed(0)} µs` },
      { what: 'the same by ml-levenberg-marquardt, point coordinates', value: `${points.toFixed(0)} µs` },
      { what: 'how many times faster than the library, rigid body', value: `${(rigid / ours).toFixed(0)} ×` },
      {
        what: 'how many times faster than the library, points',
        value: `${(points / ours).toFixed(0)} ×`,
        target: 'target 100 ×',
      },
    ];
  },
};
