import type { Adjuster } from '../contract.ts';

/** Whether its printed rows, or its degrees a step, say what it does to caster. Apart from its kind: on the first load. */
export const chartsCaster = ({ positions = [], perStep }: Adjuster): boolean =>
  [perStep, ...positions].some((row) => Boolean(row?.caster));
