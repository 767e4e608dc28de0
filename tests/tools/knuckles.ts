/**
 * Two knuckles that hang together by a cross rod, by solvers that know nothing of the core's: where the axes are upright
 * and all lies in one plane, the crossings of circles; else each knuckle turned about its axis by a rotation of mathjs,
 * to the angle at which its link has its length, by halving.
 */
import { matrix, multiply, rotationMatrix } from 'mathjs';
import type { Suspension, Vec3 } from '../../core/contract.ts';
import { apart } from './pose.ts';

const deg = (radians: number): number => (radians * 180) / Math.PI;
export const flip = ([x, y, z]: Vec3): Vec3 => [x, -y, z];

type Flat = readonly [x: number, y: number];
/** Where circles about two places cross; of the two the one that is nearer to where it was. */
function crossing(a: Flat, r: number, b: Flat, s: number, was: Flat): Flat {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const d = Math.hypot(dx, dy);
  const along = (r * r - s * s + d * d) / (2 * d);
  const off = Math.sqrt(r * r - along * along);
  const found = [1, -1].map(
    (k): Flat => [a[0] + (along * dx - k * off * dy) / d, a[1] + (along * dy + k * off * dx) / d],
  );
  const far = (p: Flat) => Math.hypot(p[0] - was[0], p[1] - was[1]);
  return far(found[0]!) < far(found[1]!) ? found[0]! : found[1]!;
}
const span = (a: Flat, b: Flat): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
/** Radians, anticlockwise, from one place to another as seen from a third. */
function swept(about: Flat, from: Flat, to: Flat): number {
  const [ax, ay, bx, by] = [from[0] - about[0], from[1] - about[1], to[0] - about[0], to[1] - about[1]];
  return Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
}

/** Radians, anticlockwise from above, by which the left and the right knuckle turn as the links grow by so much. */
export function turnsInPlane({ points }: Suspension, drag: number, cross: number): [left: number, right: number] {
  const at = (name: string): Flat => [points[name]![0], points[name]![1]];
  const side = Math.sign(at('dragKnuckle')[1]);
  const [near, far]: [Flat, Flat] = [
    [0, side * 700],
    [0, -side * 700],
  ];
  const pulled = crossing(
    ...([near, span(near, at('dragKnuckle'))] as const),
    ...([at('dragBody'), span(at('dragBody'), at('dragKnuckle')) + drag] as const),
    at('dragKnuckle'),
  );
  const first = swept(near, at('dragKnuckle'), pulled);
  const [x, y] = [at('crossNear')[0] - near[0], at('crossNear')[1] - near[1]];
  const [c, s] = [Math.cos(first), Math.sin(first)];
  const end: Flat = [near[0] + c * x - s * y, near[1] + s * x + c * y];
  const followed = crossing(
    ...([far, span(far, at('crossFar'))] as const),
    ...([end, span(at('crossNear'), at('crossFar')) + cross] as const),
    at('crossFar'),
  );
  const second = swept(far, at('crossFar'), followed);
  return side > 0 ? [first, second] : [second, first];
}

const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const plus = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];

/** A knuckle of the left or the right, in the left corner's frame, by the angle about its own axis. */
export function knuckle({ points, camber, toe }: Suspension, left: boolean) {
  const view = left ? (v: Vec3) => v : flip;
  const lower = view(points.lowerBall!);
  const along = minus(view(points.upperBall!), lower);
  const turned = (v: Vec3, by: number): Vec3 =>
    multiply(rotationMatrix(by, matrix([...along])), matrix([...v])).valueOf() as unknown as Vec3;
  const c = Math.cos((camber * Math.PI) / 180);
  const [t, up] = [(toe * Math.PI) / 180, -Math.sin((camber * Math.PI) / 180)];
  const spin = view([c * Math.sin(t), c * Math.cos(t), up]);
  return {
    place: (name: string, by: number) => plus(lower, turned(minus(points[name]!, lower), by)),
    angles: (by: number) => {
      const [x, y, z] = view(turned(spin, by));
      return { camber: -deg(Math.asin(z)), toe: deg(Math.atan2(x, y)) };
    },
  };
}

/** The angle at which a point of a knuckle is so far from a place, about where it was. */
export function turnFor(place: (by: number) => Vec3, from: Vec3, length: number): number {
  const off = (by: number) => apart(place(by), from) - length;
  let [low, high] = off(-0.3) < off(0.3) ? [-0.3, 0.3] : [0.3, -0.3];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (off(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

export const rodsOf = ({ points }: Suspension) =>
  Object.fromEntries(['dragBody', 'dragKnuckle', 'crossNear', 'crossFar'].map((name) => [name, points[name] as Vec3]));
export const mirroredRods = (suspension: Suspension) =>
  Object.fromEntries(Object.entries(rodsOf(suspension)).map(([name, point]) => [name, flip(point)]));

/** Degrees of toe that an even axle gains as its steering box goes up by so much, mm. */
export function steeredBy(suspension: Suspension, up: number): { readonly left: number; readonly right: number } {
  const { dragBody, dragKnuckle, crossNear, crossFar } = rodsOf(suspension) as Record<string, Vec3>;
  const sides = [knuckle(suspension, true), knuckle(suspension, false)] as const;
  const onLeft = dragKnuckle![1] > 0;
  const [first, second] = onLeft ? sides : [sides[1], sides[0]];
  const box = plus(dragBody!, [0, 0, up]);
  const a = turnFor((by) => first.place('dragKnuckle', by), box, apart(dragBody!, dragKnuckle!));
  const end = first.place('crossNear', a);
  const b = turnFor((by) => second.place('crossFar', by), end, apart(crossNear!, crossFar!));
  const [l, r] = onLeft ? [a, b] : [b, a];
  return { left: sides[0].angles(l).toe - suspension.toe, right: sides[1].angles(r).toe - suspension.toe };
}
