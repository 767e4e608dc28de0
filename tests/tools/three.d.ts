/** What the tests take of three, a general-purpose library: quaternions and vectors. Its own types bring half a browser with them. */
declare module 'three' {
  export class Vector3 {
    constructor(x?: number, y?: number, z?: number);
    x: number;
    y: number;
    z: number;
    clone(): Vector3;
    add(other: Vector3): Vector3;
    sub(other: Vector3): Vector3;
    dot(other: Vector3): number;
    length(): number;
    normalize(): Vector3;
    multiplyScalar(by: number): Vector3;
    applyQuaternion(by: Quaternion): Vector3;
    crossVectors(a: Vector3, b: Vector3): Vector3;
    distanceTo(other: Vector3): number;
  }
  export class Quaternion {
    setFromAxisAngle(axis: Vector3, angle: number): Quaternion;
    multiply(other: Quaternion): Quaternion;
  }
  export class Line3 {
    constructor(start: Vector3, end: Vector3);
    closestPointToPoint(point: Vector3, clamp: boolean, target: Vector3): Vector3;
  }
}
