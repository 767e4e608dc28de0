/** Radians live only inside a function; the brand makes degrees-for-radians a compile error. */
export type Radians = number & { readonly radians: true };

export const radians = (degrees: number): Radians => ((degrees * Math.PI) / 180) as Radians;
export const degrees = (angle: Radians): number => (angle * 180) / Math.PI;

export const sin = (angle: Radians): number => Math.sin(angle);
export const cos = (angle: Radians): number => Math.cos(angle);
export const asin = (ratio: number): Radians => Math.asin(Math.max(-1, Math.min(1, ratio))) as Radians;
export const atan2 = (y: number, x: number): Radians => Math.atan2(y, x) as Radians;
