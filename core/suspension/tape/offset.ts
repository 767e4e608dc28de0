/** mm that the hub's face stands outboard of the wheel's middle where nobody has said: a usual offset, from memory. */
export const USUAL_OFFSET = 45;
/** ± mm at most that a wheel's offset is another; from memory. */
export const USUAL_OFFSET_TOLERANCE = 10;
