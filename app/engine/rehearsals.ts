/**
 * How far off its aims a car is taken to be at each rehearsal, half windows: as many as browsers take until all that a plan
 * runs through is compiled.
 */
export const REHEARSALS = [1.5, -1.5, 2.5, -2.5, 1, -1, 2, -2] as const;
